package custody

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"example.org/rinkpane/internal/measure/unit"
)

// Measured is a reading as an event holds it.
type Measured struct {
	What  Quantity `json:"what"`
	Value float64  `json:"value_mm"`
	U     float64  `json:"uncertainty_mm"` // expanded, k = 2
	Photo string   `json:"photo,omitempty"`
}

// Seen is what was found by looking or trying.
type Seen struct {
	What  Sight  `json:"what"`
	Right bool   `json:"right"`
	Photo string `json:"photo,omitempty"`
}

// Inspected says what an inspection of a hole found.
type Inspected struct {
	Hole     string     `json:"hole"`
	Revision string     `json:"revision"` // of the document that it was judged against
	Verdict  Verdict    `json:"verdict"`
	Measured []Measured `json:"measured,omitempty"`
	Seen     []Seen     `json:"seen,omitempty"`
	Words    string     `json:"words,omitempty"`
}

func (Inspected) kind() string { return "inspection" }

// maxMeasureMM is the most that a measure of a hole may have, in mm.
const maxMeasureMM = 20_000

func (f Inspected) check() error {
	err := errors.Join(name("hole", f.Hole), checkRevision(f.Revision), text("words", f.Words, MaxWords),
		oneOf("verdict", f.Verdict, []Verdict{Accepted, Rejected, Unproved}))
	for _, m := range f.Measured {
		err = errors.Join(err, oneOf("what", m.What, Quantities()), checkMeasure(string(m.What), m.Value, m.U))
	}
	for _, s := range f.Seen {
		err = errors.Join(err, oneOf("what", s.What, Sights()))
	}
	if len(f.Measured)+len(f.Seen) > len(Quantities())+len(Sights()) {
		err = errors.Join(err, errors.New("an inspection has each finding once"))
	}
	return errors.Join(err, checkPhotos(f.Photos()))
}

func checkMeasure(what string, value, u float64) error {
	if !(value >= 0 && value <= maxMeasureMM) {
		return fmt.Errorf("%s is %g mm: give 0 to %d mm", what, value, maxMeasureMM)
	}
	if !(u > 0 && u <= maxMeasureMM) {
		return fmt.Errorf("the uncertainty of %s is %g mm: give what the instrument has, above 0", what, u)
	}
	return nil
}

// Photos returns the keys of the photos of its findings.
func (f Inspected) Photos() (keys []string) {
	for _, m := range f.Measured {
		keys = append(keys, m.Photo)
	}
	for _, s := range f.Seen {
		keys = append(keys, s.Photo)
	}
	return slices.DeleteFunc(keys, func(k string) bool { return k == "" })
}

// Attach makes a kept photo one of the finding that a name says; of the first where it
// says none of them.
func (f *Inspected) Attach(key, what string) {
	for i := range f.Measured {
		if string(f.Measured[i].What) == what {
			f.Measured[i].Photo = key
			return
		}
	}
	for i := range f.Seen {
		if string(f.Seen[i].What) == what {
			f.Seen[i].Photo = key
			return
		}
	}
	switch {
	case len(f.Measured) > 0:
		f.Measured[0].Photo = key
	case len(f.Seen) > 0:
		f.Seen[0].Photo = key
	}
}

// Readings returns what was measured as readings.
func Readings(all []Measured) []Reading {
	var out []Reading
	for _, m := range all {
		out = append(out, Reading{m.What, unit.Length(m.Value) * unit.Millimetre, unit.Length(m.U) * unit.Millimetre, m.Photo})
	}
	return out
}

// Judged is an inspection with its findings.
type Judged struct {
	Hole     string
	Findings []Finding
	Seen     []Seen
	Verdict  Verdict // refused when one finding is, accepted when all are
}

// Inspect judges readings against the limits of a drawing. A reading of what the
// drawing does not bound proves nothing and is left out.
func Inspect(hole string, limits []Limits, readings []Reading, seen []Seen) Judged {
	j := Judged{Hole: hole, Seen: seen, Verdict: Accepted}
	for _, r := range readings {
		at := slices.IndexFunc(limits, func(l Limits) bool { return l.What == r.What })
		if at < 0 {
			continue
		}
		f := Judge(r, limits[at])
		j.Findings = append(j.Findings, f)
		j.Verdict = j.Verdict.and(f.Verdict)
	}
	for _, s := range seen {
		if !s.Right {
			j.Verdict = Rejected
		}
	}
	if len(j.Findings) == 0 {
		j.Verdict = j.Verdict.and(Unproved)
	}
	return j
}

// and returns the verdict on two things together.
func (v Verdict) and(w Verdict) Verdict {
	switch {
	case v == Rejected || w == Rejected:
		return Rejected
	case v == Unproved || w == Unproved:
		return Unproved
	}
	return Accepted
}

// Due says when a hole must be inspected again, and why.
type Due struct {
	Hole string
	Last time.Time // the last inspection, zero for none
	By   time.Time // the day it is due
	Why  string    // "never inspected", "days in service", "broken pane", "changed pane"
}

// Interval is how long an inspection holds: own choice, a season with its summer;
// the rink operator's own rule governs.
const Interval = 365 * 24 * time.Hour

// InspectionsDue tells for each hole when its next inspection is due: at once when it
// never was inspected, and after a broken or changed pane; else after the interval.
func InspectionsDue(h History, holes []string, interval time.Duration) []Due {
	var out []Due
	for _, hole := range holes {
		d := Due{Hole: hole, Why: "never inspected"}
		for _, e := range h {
			switch f := e.Fact.(type) {
			case Inspected:
				if f.Hole == hole {
					d = Due{hole, e.When, e.When.Add(interval), "days in service"}
				}
			case Incident:
				if f.Hole == hole && f.What == BrokenPane {
					d.By, d.Why = e.When, "broken pane"
				}
			case Replaced:
				if f.Hole == hole {
					d.By, d.Why = e.When, "changed pane"
				}
			}
		}
		out = append(out, d)
	}
	return out
}

package custody

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
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
	Why  string    // "not cut yet", "never inspected", "refused", "days in service", "broken pane", "changed pane"
	rules.Service
}

// notCut is why a hole that was never inspected is not due yet.
const notCut = "not cut yet"

// Over reports whether it is due by now.
func (d Due) Over(now time.Time) bool { return d.Why != notCut && !d.By.After(now) }

// InspectionsDue tells for each working hole when its next inspection is due by the rules
// in force: at once when it never was inspected or was refused, and after what they name; else when the
// last one holds no longer.
func InspectionsDue(h History, a arena.Arena, force rules.Sets) []Due {
	at := map[string]int{}
	var out []Due
	on := force.On(a)
	for i, hole := range a.Working() {
		at[hole.ID] = i
		out = append(out, Due{Hole: hole.ID, Why: "never inspected", Service: on.Service(hole)})
		if hole.State != glass.Cut {
			out[i].Why = notCut
		}
	}
	for _, e := range h {
		switch f := e.Fact.(type) {
		case Inspected:
			if i, is := at[f.Hole]; is {
				out[i].Last, out[i].By, out[i].Why = e.When, e.When.Add(out[i].Every), "days in service"
				if f.Verdict == Rejected { // nothing holds that was not as drawn
					out[i].By, out[i].Why = e.When, "refused"
				}
			}
		case Incident:
			if i, is := at[f.Hole]; is && f.What == BrokenPane {
				out[i].atOnce(e.When, rules.BrokenPane)
			}
		case Replaced:
			if i, is := at[f.Hole]; is {
				out[i].atOnce(e.When, rules.ChangedPane)
			}
		}
	}
	return out
}

// atOnce makes an inspection due by what just happened, if the rules say so.
func (d *Due) atOnce(now time.Time, c rules.Cause) {
	if slices.Contains(d.After, c) && (d.By.IsZero() || now.Before(d.By)) {
		d.By, d.Why = now, strings.ReplaceAll(string(c), "-", " ")
	}
}

package recap

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"example.org/rinkpane/internal/measure/unit"
)

// Sure is how sure a match is.
type Sure string

// How sure a match is.
const (
	Certain   Sure = "certain"   // one hole it can be, well inside a stage
	Likely    Sure = "likely"    // one hole, near a stage's border
	Ambiguous Sure = "ambiguous" // several holes it can be
	Unmatched Sure = "unmatched" // no stage or no seat
)

// Matched is a frame with where and when it was taken.
type Matched struct {
	Frame
	At     time.Time // the rink's wall clock
	Stage  string    // "" outside the game
	Period int       // 0 beside play
	Hole   string    // "" when it is not known
	Who    string
	Credit string
	Sure   Sure
	Why    string
	May    []string // the holes that an ambiguous frame can be of
	// What the hole and the lens's setting make likely, by [Outlook.See].
	Zone  string  // of the ice, "" where none is likelier than all others
	Pass  float64 // the share of the light that the hole lets through, 0 to 1; 0: not known
	Smear unit.Maybe[Smear]
}

// Owner says whose a body is, and, where somebody says so, through which hole all its
// frames were taken.
type Owner struct{ Who, Hole string }

// Match places frames: by the corrected clock in a stage, by the body's owner in a seat.
// Owners are by body; the owner "" is that of all other bodies. The order is that in which
// the frames were taken by the corrected clocks.
func (e Evening) Match(frames []Frame, clocks map[string]Clock, owners map[string]Owner) []Matched {
	out := make([]Matched, len(frames))
	for i, f := range frames {
		c, checked := clocks[f.Body]
		if !checked {
			c = Clock{Spread: unchecked}
		}
		o, owned := owners[f.Body]
		if !owned {
			o = owners[""]
		}
		out[i] = e.match(f, c, o)
	}
	slices.SortStableFunc(out, func(a, b Matched) int { return a.At.Compare(b.At) })
	return out
}

func (e Evening) match(f Frame, c Clock, o Owner) Matched {
	ahead, spread := c.at(e.clock(f))
	m := Matched{Frame: f, At: e.clock(f).Add(-ahead), Sure: Certain, Hole: o.Hole, Who: o.Who}
	border := e.stage(&m, 2*spread)
	if m.Stage == "" && len(e.Stages) > 0 {
		m.Sure, m.Why, m.Hole = Unmatched, e.elsewhen(m.At), ""
		if e.Universal && !f.Zoned {
			m.Why += "; the game's times are in universal time, and the frame does not tell its zone"
		}
		return m
	}
	e.seat(&m, o)
	if m.Sure == Certain && border {
		m.Sure, m.Why = Likely, m.Why+"; so near a border of "+m.Stage+" that the clock decides"
	}
	return m
}

// elsewhen says when a frame was taken that is of no stage.
func (e Evening) elsewhen(at time.Time) string {
	for _, g := range e.Others {
		if !at.Before(g.From) && at.Before(g.To) {
			return "taken at game " + g.Name
		}
	}
	return "taken outside the game's day, on " + at.Format(time.DateOnly)
}

// stage finds the stage of a frame, and whether it was taken near its border.
func (e Evening) stage(m *Matched, near time.Duration) (border bool) {
	for _, s := range e.Stages {
		if !m.At.Before(s.From) && m.At.Before(s.To) {
			m.Stage, m.Period = s.Name, s.Period
			return m.At.Sub(s.From) < near || s.To.Sub(m.At) < near
		}
	}
	return false
}

// seat finds the hole of a frame.
func (e Evening) seat(m *Matched, o Owner) {
	if o.Hole != "" {
		m.Why = "the hole was said"
		if i := slices.IndexFunc(e.Seats, func(s Seat) bool { return s.Who == o.Who }); i >= 0 {
			m.Credit = e.Seats[i].Name
		}
		return
	}
	var may []Seat
	for _, s := range e.Seats {
		if (o.Who == "" || s.Who == o.Who) && (m.Period == 0 || s.works(m.Period)) {
			may = append(may, s)
		}
	}
	holes := distinct(may)
	switch {
	case len(holes) == 1:
		s := may[0]
		m.Hole, m.Who, m.Credit = s.Hole, s.Who, s.Name
		m.Why = fmt.Sprintf("%s works %s in %s", s.Who, s.Hole, m.Stage)
		if o.Who == "" {
			m.Why = "the only seat of " + m.Stage + " is " + s.Hole
		}
	case len(holes) == 0:
		m.Sure, m.Why = Unmatched, "no seat is given then"
	default:
		m.Sure, m.May = Ambiguous, holes
		m.Why = fmt.Sprintf("%s are worked in %s; say whose body %s is", strings.Join(holes, ", "), m.Stage, m.Body)
	}
}

func distinct(seats []Seat) (holes []string) {
	met := map[string]bool{}
	for _, s := range seats {
		if !met[s.Hole] {
			met[s.Hole], holes = true, append(holes, s.Hole)
		}
	}
	return holes
}

// Reason is frames that are matched, or are not, for one reason, with the first of them.
type Reason struct {
	Sure   Sure
	Why    string
	Frames int
	First  string
}

// Doubts lists by reason the frames whose hole is not known, ambiguous ones first.
func Doubts(frames []Matched) []Reason { return reasons(frames, Ambiguous, Unmatched) }

// Reasons lists by reason how frames are matched: those in doubt, and the certain ones.
func Reasons(frames []Matched) (doubtful, certain []Reason) {
	return reasons(frames, Ambiguous, Unmatched, Likely), reasons(frames, Certain)
}

func reasons(frames []Matched, order ...Sure) (out []Reason) {
	at := map[Reason]int{}
	for _, s := range order {
		for _, m := range frames {
			if m.Sure != s {
				continue
			}
			key := Reason{Sure: s, Why: m.Why}
			i, met := at[key]
			if !met {
				i, out = len(out), append(out, Reason{Sure: s, Why: m.Why, First: m.File})
				at[key] = i
			}
			out[i].Frames++
		}
	}
	return out
}

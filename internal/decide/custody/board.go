package custody

import (
	"cmp"
	"slices"
	"time"
)

// Window is a span of time; From belongs to it, To does not.
type Window struct{ From, To time.Time }

// Contains reports whether a time lies in the window.
func (w Window) Contains(t time.Time) bool { return !t.Before(w.From) && t.Before(w.To) }

// overlap returns how much of the span from a to b lies in the window.
func (w Window) overlap(a, b time.Time) time.Duration {
	if a.Before(w.From) {
		a = w.From
	}
	if b.After(w.To) {
		b = w.To
	}
	return max(0, b.Sub(a))
}

// dayTurns is when a new day begins, after midnight: a game that ends late belongs to its evening.
const dayTurns = 4 * time.Hour

// DayOf returns the day, from 04:00 to 04:00, that a time lies in, by its own location.
func DayOf(t time.Time) Window {
	y, m, d := t.Add(-dayTurns).Date()
	at := func(d int) time.Time { return time.Date(y, m, d, int(dayTurns/time.Hour), 0, 0, 0, t.Location()) }
	return Window{at(d), at(d + 1)}
}

// Date returns the day's date, as "2026-11-28".
func (w Window) Date() string { return w.From.Format(time.DateOnly) }

// Cover is a cover as it is now.
type Cover struct {
	ID    string
	Hole  string
	State State
	Since time.Time
	By    string // who said so last
	Last  ID     // the event that said so, which a correction names
	Words string
}

// Hole is a hole as it is now.
type Hole struct {
	ID     string
	Closed bool
	Seated string                  // who works it, "" for nobody
	Open   map[Phase]time.Duration // how long it was open in the window
	Panes  int                     // spare panes that lie ready for it
	Since  time.Time               // when it was opened or closed
}

// OpenInAll returns how long the hole was open in all phases.
func (h Hole) OpenInAll() time.Duration {
	var sum time.Duration
	for _, d := range h.Open {
		sum += d
	}
	return sum
}

// Board is how things stand.
type Board struct {
	At     time.Time
	Window Window // what open times are for
	Phase  Phase
	Began  time.Time // when the phase began
	Covers []Cover   // by hole, then id
	Holes  []Hole    // by id
	Alarms []Alarm   // the late ones first, then by when they are due
	Seq    int64     // the last event that it knows
}

// Fold tells how things stand at a time, and how long holes were open within a window.
func Fold(h History, window Window, now time.Time) Board {
	f := folding{window: window, phase: Closed, holes: map[string]*hole{}, covers: map[string]*Cover{}}
	var seq int64
	for _, e := range h {
		seq = max(seq, e.Seq)
		if e.When.After(now) {
			continue
		}
		f.pass(e.When)
		f.take(e)
	}
	f.pass(now)
	b := Board{At: now, Window: window, Phase: f.phase, Began: f.began, Seq: seq}
	for _, c := range f.covers {
		b.Covers = append(b.Covers, *c)
	}
	for _, x := range f.holes {
		b.Holes = append(b.Holes, x.Hole)
		b.Alarms = append(b.Alarms, f.alarms(x, now)...)
	}
	slices.SortFunc(b.Covers, func(a, b Cover) int { return cmp.Or(cmp.Compare(a.Hole, b.Hole), cmp.Compare(a.ID, b.ID)) })
	slices.SortFunc(b.Holes, func(a, b Hole) int { return cmp.Compare(a.ID, b.ID) })
	slices.SortFunc(b.Alarms, func(a, b Alarm) int {
		return cmp.Or(a.Due.Compare(b.Due), cmp.Compare(a.Hole, b.Hole), cmp.Compare(a.Cover, b.Cover))
	})
	return b
}

package custody

import (
	"slices"
	"time"
)

// folding is the state that events are folded into, one after the other.
type folding struct {
	window Window
	phase  Phase
	began  time.Time
	at     time.Time // up to when open times are counted
	holes  map[string]*hole
	covers map[string]*Cover
}

// hole is a hole with its covers, and since when it and they are not as the phase asks.
type hole struct {
	Hole
	covers []*Cover
	wrong  map[string]wrong // by cover, "" for the hole itself
}

type wrong struct {
	why   Reason
	since time.Time
}

func (f *folding) hole(id string) *hole {
	h := f.holes[id]
	if h == nil {
		h = &hole{Hole: Hole{ID: id, Closed: true, Open: map[Phase]time.Duration{}}, wrong: map[string]wrong{}}
		f.holes[id] = h
	}
	return h
}

// pass counts the time up to an event as open where holes are open.
func (f *folding) pass(to time.Time) {
	if d := f.window.overlap(f.at, to); d > 0 {
		for _, h := range f.holes {
			if !h.Closed {
				h.Open[f.phase] += d
			}
		}
	}
	f.at = to
}

// take makes what an event says so.
func (f *folding) take(e Entry) {
	switch t := e.Fact.(type) {
	case Issued:
		f.retire(t.Cover, e.When)
		c := &Cover{ID: t.Cover, Hole: t.Hole, State: Stored, Since: e.When, By: e.Who, Last: e.ID}
		h := f.hole(t.Hole)
		f.covers[t.Cover], h.covers = c, append(h.covers, c)
		f.settle(h, e.When)
	case Moved:
		if c := f.covers[t.Cover]; c != nil {
			c.State, c.Since, c.By, c.Last, c.Words = t.State, e.When, e.Who, e.ID, t.Words
			f.settle(f.hole(c.Hole), e.When)
		}
	case Retired:
		f.retire(t.Cover, e.When)
	case Began:
		f.begin(t.Phase, e.When)
	case Seated:
		h := f.hole(t.Hole)
		h.Seated = t.By
		f.judge(h, e.When)
	case Stocked:
		f.hole(t.Hole).Panes = t.Panes
	case Incident:
		if h := f.hole(t.Hole); t.Spare && h.Panes > 0 {
			h.Panes--
		}
	}
}

// begin starts a phase. What it allows as the one before did not stays wrong since it was.
func (f *folding) begin(p Phase, at time.Time) {
	afresh := !RuleOf(f.phase).same(RuleOf(p))
	f.phase, f.began = p, at
	for _, h := range f.holes {
		if afresh {
			clear(h.wrong)
		}
		f.judge(h, at)
	}
}

// retire takes a cover away, if it is there.
func (f *folding) retire(id string, at time.Time) {
	c := f.covers[id]
	if c == nil {
		return
	}
	h := f.hole(c.Hole)
	h.covers = slices.DeleteFunc(h.covers, func(x *Cover) bool { return x == c })
	delete(f.covers, id)
	f.settle(h, at)
}

// settle works out whether a hole is closed after a cover of it moved. One that has no
// cover was never minded, or is minded no more, and counts as closed.
func (f *folding) settle(h *hole, at time.Time) {
	closed := len(h.covers) == 0 || slices.ContainsFunc(h.covers, func(c *Cover) bool { return c.State == In })
	if h.Closed != closed || h.Since.IsZero() {
		h.Closed, h.Since = closed, at
	}
	f.judge(h, at)
}

// judge notes since when a hole and its covers are not as the phase asks.
func (f *folding) judge(h *hole, at time.Time) {
	rule, now := RuleOf(f.phase), map[string]Reason{}
	for _, c := range h.covers {
		if why := rule.against(c.State); why != "" {
			now[c.ID] = why
		}
	}
	if allowed := h.Closed || rule.Stored || rule.Seated && h.Seated != ""; !allowed {
		now[""] = OpenHole
	}
	for cover, w := range h.wrong {
		if w.why != now[cover] {
			delete(h.wrong, cover)
		}
	}
	for cover, why := range now {
		if _, already := h.wrong[cover]; !already {
			h.wrong[cover] = wrong{why, at}
		}
	}
}

func (f *folding) alarms(h *hole, now time.Time) []Alarm {
	within := RuleOf(f.phase).Within
	var out []Alarm
	for cover, w := range h.wrong {
		due := w.since.Add(within)
		out = append(out, Alarm{h.ID, cover, w.why, f.phase, w.since, due, now.After(due)})
	}
	return out
}

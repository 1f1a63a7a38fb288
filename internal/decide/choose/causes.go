package choose

import (
	"cmp"
	"slices"
)

// Cause is why panes hold no candidate.
type Cause struct {
	Cause string
	Panes []string // in station order
}

// causes counts the panes without a candidate by what is against most of their
// places, the commonest cause first.
func (l *placing) causes() []Cause {
	var out []Cause
	for _, p := range l.arena.Panes {
		t := l.tally[p.ID]
		if t[""] > 0 {
			continue
		}
		best := ""
		for cause, n := range t {
			if best == "" || n > t[best] || n == t[best] && cause < best {
				best = cause
			}
		}
		if best == "" {
			continue
		}
		k := slices.IndexFunc(out, func(c Cause) bool { return c.Cause == best })
		if k < 0 {
			k = len(out)
			out = append(out, Cause{Cause: best})
		}
		out[k].Panes = append(out[k].Panes, p.ID)
	}
	slices.SortStableFunc(out, func(a, b Cause) int { return cmp.Compare(len(b.Panes), len(a.Panes)) })
	return out
}

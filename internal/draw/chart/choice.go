package chart

import (
	"fmt"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/unit"
)

// OfChoice returns what the drawing of a chosen set shows: its holes, and the
// places that the other sets of the answer use instead. n names the set as
// [choose.Answer.Set] does.
func OfChoice(a choose.Answer, n int, sys unit.System) Content {
	set := a.Set(n)
	p := Content{
		Arena: a.With(set), Status: map[string]rules.Status{}, Notes: map[string]string{}, Names: map[string]string{},
	}
	p.Permitted, p.Undecided = a.Sets.On(a.Arena).Permitted()
	p.Arena.Units = sys
	p.Arena.Name = "The best legal holes of " + p.Arena.Name
	seen := map[string]bool{}
	for i, c := range set {
		id := c.Hole.ID
		p.Names[id], p.Status[id], seen[id] = c.Mark(sys), rules.Pass, true
		if n == 0 {
			p.Notes[id] = fmt.Sprintf("best view of %.0f %%", 100*a.Holes[i].Best)
		}
	}
	for other := range len(a.Alternatives) + 1 {
		for _, c := range a.Set(other) {
			if !seen[c.Hole.ID] {
				seen[c.Hole.ID] = true
				p.Others = append(p.Others, Spot{Label: c.Mark(sys), Station: c.Hole.Station})
			}
		}
	}
	return p
}

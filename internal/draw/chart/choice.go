package chart

import (
	"fmt"
	"slices"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/draw/sheet"
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
	if n == 0 {
		p.AsGood = AsGood(a)
	}
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

// AsGood returns the boards, pane by pane, where a hole of the best set might as well
// stand as far as the moments can tell.
func AsGood(a choose.Answer) (out []rules.Interval) {
	for _, h := range a.Holes {
		var pane string
		for _, c := range h.AsGood {
			if c.Hole.Pane == pane {
				out[len(out)-1].To = c.Hole.Station
			} else {
				out = append(out, rules.Interval{From: c.Hole.Station, To: c.Hole.Station})
			}
			pane = c.Hole.Pane
		}
	}
	return slices.DeleteFunc(out, func(v rules.Interval) bool { return v.From == v.To })
}

// AsGoodKey is a drawing of the sign of such boards alone, for the words beside a map.
func AsGoodKey() (d *sheet.Drawing, words string) {
	d = sheet.New("sign", 5, 5, Styles())
	d.Title = asGoodWords
	g, _ := d.Group("stretches", "")
	g.Add("stretch-as-good", sheet.Line{A: sheet.Pt(0, 2.5), B: sheet.Pt(5, 2.5)})
	return d, asGoodWords
}

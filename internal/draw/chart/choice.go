package chart

import (
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/words"
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
		p.Names[id], p.Notes[id] = spoken(c, sys)
		p.Status[id], seen[id] = rules.Pass, true
		if n == 0 {
			p.Notes[id] = noted(p.Notes[id], fmt.Sprintf("best for %.0f %%", 100*a.Holes[i].Best))
		}
	}
	for other := range len(a.Alternatives) + 1 {
		for _, c := range a.Set(other) {
			if !seen[c.Hole.ID] {
				seen[c.Hole.ID] = true
				name, note := spoken(c, sys)
				p.Others = append(p.Others, Spot{Label: name, Note: note, Station: c.Hole.Station})
			}
		}
	}
	return p
}

// spoken names a candidate on a drawing, where its corner is seen: a drawn hole by its
// id, a new one by its landmark, with the rest of its place to the inch or centimetre
// for the line below.
func spoken(c choose.Candidate, sys unit.System) (name, note string) {
	if !c.New {
		return c.Hole.ID, ""
	}
	name, note, _ = strings.Cut(strings.TrimPrefix(words.NearPlace(c.Place, sys), c.Corner()+" "), ", ")
	if c.Lifted {
		note = noted(note, words.Near(c.Hole.Height, sys)+" up")
	}
	return name, note
}

// noted joins what stands below a label, or a label with it; "" is nothing.
func noted(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
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

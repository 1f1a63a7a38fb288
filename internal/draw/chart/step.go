package chart

import (
	"fmt"
	"maps"
	"slices"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// Fate is what becomes of a hole at a step of a choice; the words are a
// drawing's own.
type Fate string

// The fates of a hole.
const (
	Stays   Fate = "stays"
	CutNew  Fate = "cut new"
	GivenUp Fate = "given up"
)

// Fates lists the fates of holes.
func Fates() []Fate { return []Fate{Stays, CutNew, GivenUp} }

// OfStep returns what the drawing of a step shows: the holes that stay, those that
// are cut new and those that are given up.
func OfStep(a choose.Answer, s choose.Step, sys unit.System) Content {
	all := slices.Concat(s.Holes, s.GivenUp)
	p := Content{Arena: a.With(all), Names: map[string]string{}, Notes: map[string]string{}, Fates: map[string]Fate{}}
	p.Arena.Units = sys
	p.Permitted, p.Undecided = a.Sets.On(a.Arena).Permitted()
	for i, c := range all {
		fate := CutNew
		switch {
		case i >= len(s.Holes):
			fate = GivenUp
		case c.IsCut():
			fate = Stays
		}
		name, note := spoken(c, sys)
		p.Names[c.Hole.ID], p.Notes[c.Hole.ID], p.Fates[c.Hole.ID] = name, noted(note, string(fate)), fate
	}
	return p
}

// drawFate adds the sign of a hole's fate: a full disc stays, a ring with a plus
// is cut new, a dashed square with a cross is given up.
func drawFate(g *sheet.Group, at sheet.Point, f Fate) {
	p := about(at, markSize)
	switch f {
	case Stays:
		g.Add("hole hole-stays", sheet.Circle{C: at, R: 0.9 * markSize})
	case CutNew:
		g.Add("hole", sheet.Circle{C: at, R: 1.1 * markSize})
		g.Add("fate-sign", sheet.Line{A: p(-0.6, 0), B: p(0.6, 0)})
		g.Add("fate-sign", sheet.Line{A: p(0, -0.6), B: p(0, 0.6)})
	case GivenUp:
		g.Add("hole hole-off", square(p, 0.9))
		g.Add("fate-sign", sheet.Line{A: p(-0.5, -0.5), B: p(0.5, 0.5)})
		g.Add("fate-sign", sheet.Line{A: p(-0.5, 0.5), B: p(0.5, -0.5)})
	}
}

// FateKey is a drawing of a fate's sign alone, for the words beside a map.
func FateKey(f Fate) *sheet.Drawing {
	d := sheet.New("sign", 5, 5, Styles())
	d.Title = string(f)
	g, _ := d.Group("holes", "")
	drawFate(g, sheet.Pt(2.5, 2.5), f)
	return d
}

// Frontier is the plot of what each amount of money buys, in shares of the best,
// beside the steps that keep all that is cut today.
func Frontier(a choose.Answer) Plot {
	point := func(s choose.Step) XY { return XY{float64(s.Bill.Money), 100 * s.Value / a.Value} }
	money, keep := Series{Name: "most for the money", Steps: true}, Series{Name: "all that is cut stays"}
	for _, s := range a.Frontier {
		money.Points = append(money.Points, point(s))
	}
	for _, s := range a.Ladder {
		if len(s.GivenUp) == 0 {
			keep.Points = append(keep.Points, point(s))
		}
	}
	return Plot{
		Name: "frontier", Desc: fmt.Sprintf("From %.1f %% of the best for nothing to %.1f %% for the dearest step.", money.Points[0].Y, money.Points[len(money.Points)-1].Y),
		X: Axis{Name: "cost, " + a.Costs.Currency, FromZero: true}, Y: Axis{Name: "of the best, %"}, Series: []Series{money, keep},
	}
}

// fateEntries are the signs that the plan uses, for a legend.
func (p Content) fateEntries() (out []entry) {
	used := slices.Collect(maps.Values(p.Fates))
	for _, f := range Fates() {
		if slices.Contains(used, f) {
			out = append(out, entry{string(f), 2 * markSize, func(g *sheet.Group, at sheet.Point) {
				drawFate(g, sheet.Pt(at.X+markSize, at.Y), f)
			}})
		}
	}
	return out
}

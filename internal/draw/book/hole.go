package book

import (
	"fmt"
	"strconv"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Sizes of the pictures on a hole's pages, mm.
const (
	guardShare = 0.54
	lensShare  = 0.47
	reachShare = 0.86 // of its column, so that the light table stands below
	fitHigh    = 72.0
)

// hole sets the pages of one hole: place, rules and guard; lenses, light and reach.
func (s setter) hole(h plan.Hole) chapter {
	title := "Hole " + h.ID
	place, left, right := s.columns("hole-"+h.ID, title+": place, rules, guard", guardShare)
	s.place(left, h)
	s.findings(left, h)
	s.leftOut(left)
	s.guard(right, h)
	view, left, right := s.columns("hole-"+h.ID+"-view", title+": lenses, light, reach", lensShare)
	s.lenses(left, h, left.Room().W)
	s.reach(right, h, reachShare*right.Room().W)
	s.light(right, h)
	return chapter{title: title, level: 1, pages: append(place.pages(), view.pages()...)}
}

func (s setter) units() unit.System { return s.c.Options.Units }

// place says where the hole is and what it is.
func (s setter) place(f flow, h plan.Hole) {
	sys := s.units()
	hole, _ := s.c.Arena.Hole(h.ID)
	thick := (unit.Length(h.Thick) * unit.Millimetre).Format(sys)
	if h.ThickAssumed {
		thick += " (taken, not surveyed)"
	}
	rows := [][]string{
		{"where", h.Where(sys)}, {"station", unit.Length(h.Station).Format(sys)},
		{"pane", h.Pane + ", " + s.material(h.Pane) + ", " + thick},
		{"centre above the ice", unit.Length(h.Height).Format(sys)},
		{"hole, width x height", h.Size().Format(sys)},
		{"corner radius, edge rounding", maybe(hole.Corner, sys) + ", " + maybe(hole.Rounding, sys)},
		{"state", h.State}, {"rules", string(h.Status)},
	}
	if hole.Note != "" {
		rows = append(rows, []string{"note", hole.Note})
	}
	f.Heading("Place")
	f.Table(sheet.Table{Size: tableSize, Head: []string{"", "in the plan"}, Rows: rows})
}

func (s setter) material(pane string) string {
	p, _ := s.c.Arena.Pane(pane)
	if m, ok := p.Material.Get(); ok {
		return string(m)
	}
	return "material not surveyed"
}

func maybe(l unit.Maybe[unit.Length], sys unit.System) string {
	if v, ok := l.Get(); ok {
		return v.Format(sys)
	}
	return "not surveyed"
}

// findings are the rules that name the hole, broken ones first.
func (s setter) findings(f flow, h plan.Hole) {
	f.Heading("Rules")
	found := s.c.Plan.FindingsOf(h.ID)
	if len(found) == 0 {
		f.Notes("No rule of the sets in force concerns this hole.")
		return
	}
	t := sheet.Table{Size: tableSize, Head: []string{"answer", "rule", "margin, or what to do"}}
	for _, x := range found {
		t.Rows = append(t.Rows, []string{string(x.Status), x.Rule, marginOrCure(x, s.units())})
		class := ""
		if x.Status != rules.Pass {
			class = "strong"
		}
		t.Classes = append(t.Classes, class)
	}
	f.Table(t)
}

func marginOrCure(f rules.Finding, sys unit.System) string {
	if f.Status != rules.Pass {
		return f.Say(sys)
	}
	if w := f.Spare().In(sys); w != "" {
		return w
	}
	return "kept"
}

// guard says what comes through and what must be kept clear.
func (s setter) guard(f flow, h plan.Hole) {
	g, ok := s.c.guard(h.ID)
	if !ok {
		return
	}
	f.Heading("Guard: the cover out")
	f.Table(sheet.Table{Size: tableSize, Head: []string{"", "by the model of struck pucks"}, Rows: guardRows(g, s.units())})
	if g.Sector.Passing {
		f.Drawing(named(chart.GuardMap(s.c.Arena, s.c.sectors(), h.ID, leastMap), h.ID))
	}
}

// leftOut says what the guard's model leaves out.
func (s setter) leftOut(f flow) {
	f.Heading("What the guard leaves out")
	f.Notes(puck.LeftOut()...)
}

// named gives a drawing of one hole a name of its own, for ids in a page.
func named(d *sheet.Drawing, hole string) *sheet.Drawing {
	d.Name += "-" + hole
	return d
}

// leastMap is the width of a hole's own guard map, mm.
const leastMap = 92.0

func guardRows(g puck.Guard, sys unit.System) [][]string {
	rows := [][]string{
		{"flat puck, head on", "window " + g.FlatWindow.Format(sys) + ", " + closes("closes at ", g.FlatLimit)},
		{"any orientation", closes("closes at ", g.AnyLimit)},
		{"open in play", perThousandHours(g.Game) + " pucks per 1000 hours"},
		{"open at practice", perThousandHours(g.Practice) + " pucks per 1000 hours"},
	}
	if g.MeanJ > 0 {
		rows = append(rows, []string{"energy of a puck that passes", fmt.Sprintf("mean %.0f J, most %.0f J", g.MeanJ, g.MostJ)})
	}
	if s := g.Sector; s.Passing {
		rows = append(rows, []string{"keep clear", fmt.Sprintf("%.0f to %.0f deg from the normal, to %s", s.From.Degrees(), s.To.Degrees(), plan.Far(s.Far.Metres(), sys))})
	}
	for _, r := range g.Reach {
		say := "does not pass"
		if r.Passes {
			say = r.Past.Format(sys) + " to the " + r.Toward
		}
		rows = append(rows, []string{"reach: " + r.What, say})
	}
	return rows
}

// closes says at which angle an opening closes, with what stands before the
// angle, or that it never opens.
func closes(lead string, m unit.Maybe[unit.Angle]) string {
	if q, ok := m.Get(); ok {
		return fmt.Sprintf("%s%.0f deg", lead, q.Degrees())
	}
	return "never opens"
}

// perThousandHours prints how many pucks come through in 1000 open hours, two
// digits and no powers of ten.
func perThousandHours(p puck.Passes) string {
	const least = 0.001
	switch n := 1000 * p.PerHour; {
	case n == 0:
		return "0"
	case n < least:
		return "under 0.001"
	case n < 10:
		return fmt.Sprintf("%.2g", n)
	default:
		return fmt.Sprintf("%.0f", n)
	}
}

// lenses is the fit chart of the best lens and the table of all.
func (s setter) lenses(f flow, h plan.Hole, wide float64) {
	if c, ok := s.c.Fits[h.ID]; ok {
		f.Heading("Best lens, wide open")
		f.Drawing(named(chart.FitChart(c, wide, fitHigh), h.ID))
	} else {
		f.Heading("No lens of the kit fits")
	}
	f.Heading("Lenses, degrees from straight ahead to either side")
	t := sheet.Table{
		Size: 2.3, Head: []string{"lens", "mm", "turn: clean", "half light", "touch", "tilt: clean", "half light", "frames"},
		Align: []sheet.Anchor{sheet.Start, sheet.End, sheet.End, sheet.End, sheet.End, sheet.End, sheet.End, sheet.End},
	}
	for _, l := range h.Fits {
		class := ""
		if l.Lens == h.Best && l.Focal == h.BestFocal {
			class = "strong"
		}
		mm := strconv.FormatFloat(l.Focal, 'f', -1, 64)
		if l.Fits {
			t.Rows = append(t.Rows, []string{l.Lens, mm, bare(l.PanClear), bare(l.PanUsable), bare(l.PanBody), bare(l.TiltClear), bare(l.TiltUsable),
				fmt.Sprintf("%.0f %%", 100*l.Framing)})
		} else {
			t.Rows = append(t.Rows, []string{l.Lens, mm, "too wide", "", "", "", "", ""})
		}
		t.Classes = append(t.Classes, class)
	}
	f.Table(t)
}

func bare(v *float64) string {
	if v == nil {
		return "-"
	}
	return strconv.FormatFloat(*v, 'f', 1, 64)
}

// reach is the map of the ice that lenses can be aimed at.
func (s setter) reach(f flow, h plan.Hole, wide float64) {
	f.Heading(fmt.Sprintf("Reach: %.0f %% of the ice at puck height, %.0f %% at faces", 100*h.Reach.Share, 100*h.Reach.FaceShare))
	f.Drawing(named(chart.PlanMap(chart.Plan{Arena: s.alone(h.ID), Heat: s.c.Reaches[h.ID], Picked: h.ID, Bare: true, Key: true}, wide), h.ID))
	f.Notes(fmt.Sprintf("Hidden along the near boards: %s on average.", unit.Length(h.Reach.Blind).Format(s.units())))
}

// alone returns the arena with one hole and without zones, so that its map has
// the room for the ice; the plan at the book's front has them all.
func (s setter) alone(hole string) arena.Arena {
	a := s.c.Arena
	h, _ := a.Hole(hole)
	a.Holes, a.Windows, a.Zones = []glass.Hole{h}, nil, nil
	return a
}

// light is the table of light and ISO over the ice.
func (s setter) light(f flow, h plan.Hole) {
	f.Heading("Light, wide open")
	if len(h.Light) == 0 {
		f.Notes("The survey has no light reading: add lux readings to the arena's file.")
		return
	}
	t := sheet.Table{
		Size: 2.3, Head: []string{"part of the ice", "light", "shutter", "stop", "ISO", "away", "framed at"},
		Align: []sheet.Anchor{sheet.Start, sheet.End, sheet.End, sheet.End, sheet.End, sheet.End, sheet.End},
	}
	for _, l := range h.Light {
		t.Rows = append(t.Rows, lightCells(l, s.units()))
	}
	f.Table(t)
	f.Notes(plan.ISONotes(h.Light)...)
}

func lightCells(l light.Row, sys unit.System) []string {
	framed := ""
	if l.Depth != nil {
		framed = fmt.Sprintf("%.0f mm", l.Depth.FocalMM)
	}
	return []string{
		l.Zone, unit.Illuminance(l.MedianLx).Format(sys), unit.Shutter(l.ShutterS).Format(), unit.Stop(l.Stop).Format(),
		plan.ISOWords(l), plan.Far(l.DistanceM, sys), framed,
	}
}

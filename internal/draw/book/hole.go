package book

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
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
	thick := h.Opening.Thick.Value.Format(sys)
	if !h.Opening.Thick.Surveyed() {
		thick += " (taken, not surveyed)"
	}
	t := table.New("what", "in the plan")
	for _, row := range [][]string{
		{"where", h.Place.Say(sys)}, {"station", h.Station.Format(sys)},
		{"pane", h.Pane + ", " + s.material(h.Pane) + ", " + thick},
		{"centre above the ice", h.Height.Format(sys)},
		{"hole, width x height", h.Size.Format(sys)},
		{"corner radius, edge rounding", maybe(h.Corner, sys) + ", " + maybe(h.Rounding, sys)},
		{"state", string(h.State)}, {"rules", string(h.Status)},
	} {
		t.Add(row...)
	}
	if h.Note != "" {
		t.Add("note", h.Note)
	}
	f.Heading("Place")
	f.Table(t, sheet.SizeTable)
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
	s.exceptions(f, found)
}

// exceptions tells what is broken or unknown first, with what to do, and the
// rest in one line.
func (s setter) exceptions(f flow, found []rules.Finding) {
	var open []rules.Finding
	var kept []string
	for _, x := range found {
		if x.Status != rules.Pass {
			open = append(open, x)
		} else if !slices.Contains(kept, x.Rule) {
			kept = append(kept, x.Rule)
		}
	}
	order := rules.WorstFirst()
	slices.SortStableFunc(open, func(a, b rules.Finding) int {
		return cmp.Compare(slices.Index(order, a.Status), slices.Index(order, b.Status))
	})
	if len(open) > 0 {
		f.Table(s.findingsTable(open, "rule", "holes", "status", "margin", "message"), sheet.SizeTable)
	}
	if len(kept) > 0 {
		f.Notes("Kept: " + strings.Join(kept, ", ") + ".")
	}
}

// guard says what comes through and what must be kept clear.
func (s setter) guard(f flow, h plan.Hole) {
	g, ok := s.c.guard(h.ID)
	if !ok {
		return
	}
	f.Heading("Guard: the cover out")
	f.Table(guardTable(g, s.units()), sheet.SizeTable)
	if g.Sector.Passing {
		f.Drawing(named(chart.GuardMap(s.c.Arena, s.c.Plan.Guards, h.ID, leastMap), h.ID))
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

func guardTable(g puck.Guard, sys unit.System) table.Table {
	t := table.New("what", "by the model of struck pucks")
	t.Add("flat puck, head on", "window "+g.FlatWindow.Format(sys)+", "+closes(g.FlatLimit))
	t.Add("any orientation", closes(g.AnyLimit))
	t.Add("open in play", words.PerThousandHours(g.Game)+" pucks per 1000 hours")
	t.Add("open at practice", words.PerThousandHours(g.Practice)+" pucks per 1000 hours")
	if g.MeanJ > 0 {
		t.Add("energy of a puck that passes", fmt.Sprintf("mean %.0f J, most %.0f J", g.MeanJ, g.MostJ))
	}
	if s := g.Sector; s.Passing {
		t.Add("keep clear", words.Bearings(s)+" from the normal, to "+words.Within(s.Far, sys))
	}
	for _, r := range g.Reach {
		t.Add("reach: "+r.What, words.Through(r, sys))
	}
	return t
}

// closes says at which angle an opening closes, or that it never opens.
func closes(m unit.Maybe[unit.Angle]) string {
	words := words.Closes(m)
	if _, ok := m.Get(); ok {
		return "closes at " + words
	}
	return words
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
	t := words.Fits(h).Pick("lens", "focal_mm", "pan_clear_deg", "pan_usable_deg", "pan_body_deg", "pan_camera_deg", "tilt_clear_deg", "tilt_usable_deg", "framing_share", "remark").
		Of("", h.Fits, s.units())
	for i := range h.Fits {
		t.Strong = append(t.Strong, h.IsBest(i))
	}
	f.Table(t, sheet.SizeSmall)
}

// reach is the map of the ice that lenses can be aimed at.
func (s setter) reach(f flow, h plan.Hole, wide float64) {
	f.Heading("Reach")
	f.Drawing(named(chart.PlanMap(chart.Content{Arena: s.alone(h.ID), Heat: s.c.Reaches[h.ID], Picked: h.ID, Bare: true, Key: true}, wide), h.ID))
	f.Notes("By the "+words.ReachWords(h.Reach)+".", fmt.Sprintf("Hidden along the near boards: %s on average.", h.Reach.BlindMean.Format(s.units())))
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
		f.Notes(words.NoLight)
		return
	}
	t := words.Light().Pick("zone", "median_lx", "shutter", "stop", "face_iso_nominal", "iso_nominal", "distance_m", "framed_mm").Of("", h.Light, s.units())
	f.Table(t, sheet.SizeSmall)
	f.Notes(append([]string{"ISO is for upright faces, flat by a flat meter."}, words.ISONotes(h.Light)...)...)
}

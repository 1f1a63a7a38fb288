package book

import (
	"fmt"
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

// Shares of a hole's pages: the picture's of the first's width, the lenses' of the
// second's, and what drawings take of the height at most.
const (
	viewShare  = 0.52
	lensShare  = 0.47
	mapShare   = 0.17
	fitShare   = 0.42
	reachShare = 0.44
	fitHigh    = 62.0 // mm
)

// hole is the spread of one hole: what it shows and where it is; what lenses and
// light do in it.
func (s setter) hole(h plan.Hole) chapter {
	of := func(write func(flow, plan.Hole)) part { return func(f flow) { write(f, h) } }
	title := "Hole " + h.ID
	return chapter{id: "hole-" + h.ID, title: title, level: 1, leaves: []leaf{
		{title: title + ": picture, place, verdict", columns: []column{
			{viewShare, []part{of(s.picture), of(s.glance), of(s.guard)}},
			{1 - viewShare, []part{of(s.otherPictures), of(s.place), of(s.verdict)}},
		}},
		{title: title + ": lenses, light, reach", columns: []column{
			{lensShare, []part{of(s.lenses)}},
			{1 - lensShare, []part{of(s.reach), of(s.light)}},
		}},
	}}
}

// picture is the main view through the hole.
func (s setter) picture(f flow, h plan.Hole) {
	if views := s.c.Views[h.ID]; len(views) > 0 {
		f.Photos(views[0])
		return
	}
	f.Notes("No lens of the kit takes a picture through this hole.")
}

// otherPictures are the same moment by other lenses.
func (s setter) otherPictures(f flow, h plan.Hole) {
	if views := s.c.Views[h.ID]; len(views) > 1 {
		f.Photos(views[1:]...)
	}
}

// glance is lens and light in a few words.
func (s setter) glance(f flow, h plan.Hole) {
	t := words.Holes().Pick("best_lens_focal", "pan_usable_deg", "face_iso_nominal", "reach_share").Of("", []plan.Hole{h}, s.units())
	var facts []fact
	for i, name := range []string{"lens for this hole", "degrees aside at half the light", "ISO for faces at 1/1000 s, wide open", "of the ice in reach"} {
		if cell := t.Rows[0][i].Text; cell != "" {
			facts = append(facts, fact{name, cell})
		}
	}
	f.Facts(facts...)
}

// place says where the hole is and what it is.
func (s setter) place(f flow, h plan.Hole) {
	sys := s.units()
	f.Heading("Place")
	f.Figures(figure{wide: pageChart, share: mapShare, draw: func(float64) *sheet.Drawing {
		return chart.PlaceMap("place-"+h.ID, s.c.Arena, s.c.statuses(), h.ID)
	}})
	thick := h.Opening.Thick.Value.Format(sys)
	if !h.Opening.Thick.Surveyed() {
		thick += " (taken, not surveyed)"
	}
	t := table.New("what", "in the plan")
	for _, row := range [][2]string{
		{"where", h.Place.Say(sys) + "; station " + h.Station.Format(sys)},
		{"pane", h.Pane + ", " + s.material(h.Pane) + ", " + thick},
		{"hole", h.Size.Format(sys) + ", centre " + h.Height.Format(sys) + " above the ice"},
		{"corners, edges", "radius " + maybe(h.Corner, sys) + ", rounding " + maybe(h.Rounding, sys)},
		{"state", string(h.State)}, {"note", h.Note},
	} {
		if row[1] != "" {
			t.Add(row[0], row[1])
		}
	}
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

// verdict is whether the rules that name the hole are kept, by exception.
func (s setter) verdict(f flow, h plan.Hole) {
	found := s.c.Plan.FindingsOf(h.ID)
	f.Heading("Verdict: " + verdictOf(found))
	if len(found) == 0 {
		f.Notes("No rule of the sets in force concerns this hole.")
		return
	}
	for _, x := range opened(found) {
		f.Notes(x.Rule + ": " + x.Say(s.units()))
	}
	s.kept(f, found)
}

func verdictOf(found []rules.Finding) string {
	switch worst := opened(found); {
	case len(found) == 0:
		return "no rule"
	case len(worst) == 0:
		return "keeps every rule"
	case worst[0].Status == rules.Fail:
		return "breaks a rule"
	default:
		return "not known"
	}
}

// guard is the cover, what whoever works the hole does with it, and what comes
// through while it is out.
func (s setter) guard(f flow, h plan.Hole) {
	f.Heading("Cover, and the guard while it is out")
	t := table.New("what", "in the plan, and by the model of struck pucks")
	planned, tether := coverWords(s, h.ID)
	t.Add("cover", planned+", tether "+tether+": in whenever nobody works the hole; say at once what is missing or broken")
	if g, ok := s.c.guard(h.ID); ok {
		guardRows(&t, g, s.units())
	}
	f.Table(t, sheet.SizeTable)
}

// renamed gives a drawing of one hole a name of its own, for ids in a page.
func renamed(d *sheet.Drawing, hole string) *sheet.Drawing {
	d.Name += "-" + hole
	d.Title = strings.TrimSuffix(d.Title, ".") + ": hole " + hole
	return d
}

func guardRows(t *table.Table, g puck.Guard, sys unit.System) {
	t.Add("opening", "flat puck head on: window "+g.FlatWindow.Format(sys)+", "+closes(g.FlatLimit)+"; any puck: "+closes(g.AnyLimit))
	t.Add("a puck comes through", words.OnceIn([]puck.Guard{g}))
	if g.MeanJ > 0 {
		t.Add("energy of a puck that passes", fmt.Sprintf("mean %.0f J, most %.0f J", g.MeanJ, g.MostJ))
	}
	if s := g.Sector; s.Bounded() {
		t.Add("keep clear", words.Bearings(s)+" from the normal, to "+words.Within(s.Clear, sys)+"; "+words.Seats(g, sys))
	}
	var through []string
	for _, r := range g.Reach {
		through = append(through, r.What+" "+words.Through(r, sys))
	}
	t.Add("reaches through", strings.Join(through, "; "))
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
func (s setter) lenses(f flow, h plan.Hole) {
	if c, ok := s.c.Fits[h.ID]; ok {
		f.Heading("Best lens, wide open")
		f.Figures(figure{wide: pageChart, share: fitShare, draw: func(width float64) *sheet.Drawing {
			return renamed(chart.FitChart(c, width, fitHigh), h.ID)
		}})
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
func (s setter) reach(f flow, h plan.Hole) {
	f.Heading("Reach")
	f.Figures(figure{wide: pageChart, share: reachShare, draw: func(width float64) *sheet.Drawing {
		return renamed(chart.PlanMap(chart.Content{Arena: s.alone(h.ID), Heat: s.c.Reaches[h.ID], Picked: h.ID, Bare: true, Key: true}, width), h.ID)
	}})
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

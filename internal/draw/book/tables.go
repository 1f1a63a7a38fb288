package book

import (
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// kit lists bodies and lenses.
func (s setter) kit(f flow) {
	f.Heading("Bodies")
	bodies := table.New("body", "name", "sensor", "pixels", "highest ISO").Numbers(2, 5)
	for _, b := range s.c.Plan.Kit.Bodies {
		bodies.Add(b.ID, b.Name, b.Sensor.Format(unit.Metric), fmt.Sprintf("%d x %d", b.PixelsW, b.PixelsH), fmt.Sprint(b.ISOMax))
	}
	f.Table(bodies, sheet.SizeTable)
	f.Heading("Lenses")
	lenses := table.New("lens", "name", "focal, mm", "stop", "nose", "with hood", "holes it fits").Numbers(2, 6)
	for _, l := range s.c.Plan.Kit.Lenses {
		lenses.Add(l.ID, l.Name, focal(l), stops(l), l.Nose.Format(unit.Metric), hood(l), s.fitsIn(l.ID))
	}
	f.Table(lenses, sheet.SizeTable)
	f.Notes("Lenses and bodies by class, without makers; measure your own nose before you trust a hole to take it.")
}

func focal(l kit.Lens) string {
	if l.FocalMin == l.FocalMax {
		return fmt.Sprintf("%.0f", l.FocalMin.Millimetres())
	}
	return fmt.Sprintf("%.0f-%.0f", l.FocalMin.Millimetres(), l.FocalMax.Millimetres())
}

func stops(l kit.Lens) string {
	if l.Stop == l.StopLong {
		return l.Stop.Format()
	}
	return l.Stop.Format() + "-" + strings.TrimPrefix(l.StopLong.Format(), "f/")
}

func hood(l kit.Lens) string {
	if l.NoseHood == 0 {
		return "none"
	}
	return l.NoseHood.Format(unit.Metric)
}

// fitsIn names the holes into which a lens goes.
func (s setter) fitsIn(lens string) string {
	var in []string
	for _, h := range s.c.Plan.Holes {
		i := slices.IndexFunc(h.Fits, func(f plan.LensFit) bool { return f.Lens.ID == lens })
		if i < 0 {
			return "not used here"
		}
		if h.Fits[i].Fits {
			in = append(in, h.ID)
		}
	}
	switch len(in) {
	case 0:
		return "none"
	case len(s.c.Plan.Holes):
		return "all"
	}
	return strings.Join(in, ", ")
}

// covers lists covers and tethers, with the play of each plug.
func (s setter) covers(f flow) {
	sys := s.units()
	f.Heading("A cover for every hole, in whenever nobody works it")
	t := table.New("hole", "in the plan", "material", "tether", "plug", "clearance", "least play", "greatest play", "mass").Numbers(4, 9)
	var why []string
	for _, r := range s.c.List.Rows {
		planned, tether := coverWords(s, r.Job.Hole.ID)
		if len(r.Refused) > 0 {
			t.Add(r.Job.Hole.ID, planned, "", tether, "no drawing")
			why = append(why, "Hole "+r.Job.Hole.ID+", no drawing: "+strings.Join(say.All(r.Refused, sys), "; ")+".")
			continue
		}
		c := r.Job.Cover
		low, high := c.Fits[0].Low, c.Fits[0].High
		for _, x := range c.Fits {
			low, high = min(low, x.Low), max(high, x.High)
		}
		t.Add(
			r.Job.Hole.ID, planned, string(c.Material), tether, c.Plug.Format(sys), c.Clearance.Format(unit.Metric),
			fmt.Sprintf("%.2f mm", low.Millimetres()), fmt.Sprintf("%.2f mm", high.Millimetres()), fmt.Sprintf("%.2f kg", c.Mass),
		)
	}
	f.Table(t, sheet.SizeTable)
	o := s.c.Options.Cut.Cover
	panes, covers := s.c.List.Spares()
	f.Notes(why...)
	f.Notes(
		fmt.Sprintf("Play: hole less plug, worst case over pane and cover at %.0f to %.0f deg C. Sizes to cut from stand on the shop drawings only (rinkpane cut).", o.Cold, o.Warm),
		"The flange keeps a cover from going through to the rink; what keeps it in against a puck is the rink's to choose and to try.",
		fmt.Sprintf("Spares for a season at %.3g %% certainty, all kinds together: %s, %s.", 100*s.c.Options.Spares.Certainty, say.Count(covers, "cover"), say.Count(panes, "drilled pane")))
}

func coverWords(s setter, id string) (planned, tether string) {
	h, _ := s.c.Arena.Hole(id)
	c, known := h.Cover.Get()
	if !known {
		return "not recorded", "not recorded"
	}
	planned = "yes"
	if !c.Present {
		planned = "none"
	}
	t, known := c.Tether.Get()
	switch {
	case !known:
		return planned, "not recorded"
	case t:
		return planned, "yes"
	}
	return planned, "no"
}

// rules lists every finding that is not kept, then the rules that are in a line each,
// with their margins.
func (s setter) rules(f flow) {
	f.Heading(fmt.Sprintf("Verdict: %s (%s)", words.Verdict(s.c.Plan.Findings), strings.Join(s.c.Plan.RuleSets, ", ")))
	if open := opened(s.c.Plan.Findings); len(open) > 0 {
		f.Heading("What is broken or unknown")
		s.open(f, open, "rule", "holes", "status", "margin", "message")
	} else {
		f.Notes("Nothing is broken, and nothing unknown.")
	}
	kept := slices.DeleteFunc(plan.ByRule(s.c.Plan.Findings), func(r plan.RuleSummary) bool { return r.Status != rules.Pass })
	f.Heading("What is kept, and by what margin")
	f.Table(words.Rules().Of("", kept, s.units()), sheet.SizeTable)
	f.Notes(s.c.Plan.Notes...)
	f.Notes("A league's own document always governs.")
}

// ranking lists the holes by what comes through when covers are out.
func (s setter) ranking(f flow) {
	f.Heading("The most exposed first")
	t := words.Guards().Pick("hole", "per_1000_h_game", "per_1000_h_practice", "mean_energy_j", "landing_half_m", "clear_m").
		Of("", puck.Rank(s.c.Plan.Guards), s.units())
	f.Table(t, sheet.SizeTable)
	f.Notes(t.Keys())
	f.Notes(words.GuardNotes(s.c.Plan.Guards, s.units())...)
	f.Heading("What the guard leaves out")
	f.Notes(puck.LeftOut()...)
}

// sectorsAcross is how many holes' sectors stand side by side.
const sectorsAcross = 4

// eachSector is what must be kept clear behind each hole.
func (s setter) eachSector(f flow) {
	var all []figure
	for _, g := range s.c.Plan.Guards {
		if g.Sector.Bounded() {
			all = append(all, figure{wide: pageSector, share: 0.48, draw: func(width float64) *sheet.Drawing {
				return renamed(chart.GuardMap(s.c.Arena, s.c.Plan.Guards, g.Hole, min(width, pageSector)), g.Hole)
			}})
		}
	}
	f.Notes(chart.GuardWords())
	for row := range slices.Chunk(all, sectorsAcross) {
		f.Figures(row...)
	}
}

// sectors are those of all holes on the plan.
func (s setter) sectors(f flow) {
	f.Figures(figure{wide: pageMap, draw: func(width float64) *sheet.Drawing {
		return chart.GuardMap(s.c.Arena, s.c.Plan.Guards, "", width)
	}})
}

package starter

import (
	"slices"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

func rinkGaps(a arena.Arena) []Gap {
	if a.Rink.Marked() {
		return nil
	}
	return []Gap{{Part: "rink", Field: "markings",
		Costs: "no corner and no landmark has a place: rules by corner or stretch cannot be proved, and the map shows bare ice",
		Cure:  "measure the goal line, the blue line and the end circles from the end boards"}}
}

func boardGaps(a arena.Arena) []Gap {
	var out []Gap
	if _, ok := a.Boards.Ledge.Get(); !ok {
		out = append(out, Gap{Part: "boards", Field: "ledge",
			Costs: "the boards count as having no depth: the blind strip along the near boards comes out too narrow",
			Cure:  "measure the depth of the boards' top, from the rink's face to the spectators'"})
	}
	if _, ok := a.Boards.Setback.Get(); !ok {
		out = append(out, Gap{Part: "boards", Field: "setback",
			Costs: "the glass counts as flush with the boards' face: distances and the blind strip are off by as much",
			Cure:  "measure how far the glass stands behind the boards' face"})
	}
	return out
}

// lack is a gap that things of a kind may have.
type lack[T any] struct {
	field, costs, cure string
	in                 func(T) bool // reports whether a thing has it
}

// lacking returns the gaps of a part of the file that some of its things have.
func lacking[T any](part string, things []T, id func(T) string, all []lack[T]) []Gap {
	var out []Gap
	for _, l := range all {
		g := Gap{Part: part, Field: l.field, Costs: l.costs, Cure: l.cure}
		for _, t := range things {
			if l.in(t) {
				g.Of = append(g.Of, id(t))
			}
		}
		if len(g.Of) > 0 {
			out = append(out, g)
		}
	}
	return out
}

func paneGaps(a arena.Arena) []Gap {
	gaps := lacking("panes", a.Panes, func(p glass.Pane) string { return p.ID }, []lack[glass.Pane]{
		{"thickness",
			"lenses, reach and pucks are reckoned with a usual 5/8 in or not at all, and no drawing can be cut from",
			"measure with callipers at a hole or a pane's edge; the sheet's sticker often tells",
			func(p glass.Pane) bool { return p.Thickness.IsZero() }},
		{"material",
			"not known whether these panes may be cut at all, nor what they weigh or how a cover must fit",
			"ask the operator or look for the mark in the pane's corner; tempered glass says so there",
			func(p glass.Pane) bool { return p.Material.IsZero() }},
	})
	for i := range gaps {
		for _, pane := range gaps[i].Of {
			for _, h := range a.Working() {
				if h.Pane == pane {
					gaps[i].Holes = append(gaps[i].Holes, h.ID)
				}
			}
		}
	}
	return gaps
}

func holeGaps(a arena.Arena) []Gap {
	cover := func(h glass.Hole) glass.Cover { return h.Cover.Or(glass.Cover{}) }
	return lacking("holes", a.Working(), func(h glass.Hole) string { return h.ID }, []lack[glass.Hole]{
		{"corner-radius",
			"the corners count as square: rules on them are unknown, and no drawing can be cut from",
			"lay a coin or a radius gauge into the hole's corner",
			func(h glass.Hole) bool { return h.Corner.IsZero() }},
		{"rounding",
			"rules on rounded edges are unknown, and the drawing cannot say the edge's finish",
			"look at both faces: how much of the edge is taken off?",
			func(h glass.Hole) bool { return h.Rounding.IsZero() }},
		{"cover",
			"rules on covers are unknown; an uncovered hole lets pucks through",
			"write cover: none, or what the cover is made of and whether it hangs on a tether",
			func(h glass.Hole) bool { return h.Cover.IsZero() }},
		{"cover.material",
			"the cover's play in heat and cold cannot be told",
			"ask who made the cover",
			func(h glass.Hole) bool { return cover(h).Present && cover(h).Material == "" }},
		{"cover.tether",
			"a rule that asks for a tether is unknown",
			"look whether the cover hangs on something when it is out",
			func(h glass.Hole) bool { return cover(h).Present && cover(h).Tether.IsZero() }},
	})
}

func windowGaps(a arena.Arena) []Gap {
	return lacking("low-windows", a.Windows, func(w glass.Window) string { return w.ID }, []lack[glass.Window]{
		{"thickness",
			"the clear patch that the lens needs in a printed film cannot be told, nor the light lost",
			"measure the panel's edge",
			func(w glass.Window) bool { return !w.Open && w.Thick.IsZero() }},
		{"material",
			"the panel's refraction is not known, so neither is the clear patch or the light lost",
			"ask who fitted the panel",
			func(w glass.Window) bool { return !w.Open && w.Material == "" }},
		{"rounding",
			"rules on rounded edges of an opening are unknown",
			"look at both faces: how much of the edge is taken off?",
			func(w glass.Window) bool { return w.Open && w.Rounding.IsZero() }},
		{"cover",
			"rules on covers are unknown; an uncovered opening lets pucks through",
			"write cover: none, or what the cover is made of and whether it hangs on a tether",
			func(w glass.Window) bool { return w.Open && w.Cover.IsZero() }},
	})
}

// zonesDue are the zones that every rink has.
var zonesDue = []struct{ kind, cure string }{
	{"bench", "mark where the players' benches begin and end"},
	{"penalty-box", "mark where the penalty boxes begin and end"},
	{"gate", "mark the ice machine's gate and the other doors"},
}

func zoneGaps(a arena.Arena) []Gap {
	var out []Gap
	costs := "a hole there would pass the rules unseen"
	if !a.ZonesSurveyed() {
		costs = "rules on zones are unknown for every hole; write zones: [] where the rink has none"
	}
	for _, due := range zonesDue {
		there := slices.ContainsFunc(a.Zones, func(z arena.Zone) bool { return z.Kind == due.kind })
		if !there {
			out = append(out, Gap{Part: "zones", Field: due.kind,
				Costs: costs, Cure: due.cure})
		}
	}
	return out
}

// readingsDue is the least number of light readings from which the light between
// them can be told: three along the ice by three across.
const readingsDue = 9

func lightGaps(a arena.Arena) []Gap {
	var out []Gap
	if _, ok := a.Light.Mains.Get(); !ok {
		out = append(out, Gap{Part: "light", Field: "mains",
			Costs: "shutter times without flicker cannot be told",
			Cure:  "write the country's mains: 50 Hz or 60 Hz"})
	}
	if n := len(a.Light.Readings); n < readingsDue {
		costs := "light between and beyond the readings is guessed from too few"
		if n == 0 {
			costs = "no light table: shutter, stop and ISO are not told for any hole"
		}
		out = append(out, Gap{Part: "light", Field: "readings", Costs: costs,
			Cure: "take nine readings or more, three along the ice by three across, at faces' height"})
	}
	return out
}

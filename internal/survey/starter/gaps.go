package starter

import (
	"slices"

	"example.org/rinkpane/internal/survey/arena"
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

func paneGaps(a arena.Arena) []Gap {
	thick := Gap{Part: "panes", Field: "thickness",
		Costs: "lenses, reach and pucks are reckoned with a usual 5/8 in or not at all, and no drawing can be cut from",
		Cure:  "measure with callipers at a hole or a pane's edge; the sheet's sticker often tells"}
	material := Gap{Part: "panes", Field: "material",
		Costs: "not known whether these panes may be cut at all, nor what they weigh or how a cover must fit",
		Cure:  "ask the operator or look for the mark in the pane's corner; tempered glass says so there"}
	for _, p := range a.Panes {
		if _, ok := p.Thickness.Get(); !ok {
			thick.Of = append(thick.Of, p.ID)
			thick.Holes = append(thick.Holes, holesIn(a, p.ID)...)
		}
		if _, ok := p.Material.Get(); !ok {
			material.Of = append(material.Of, p.ID)
			material.Holes = append(material.Holes, holesIn(a, p.ID)...)
		}
	}
	return found(thick, material)
}

func holesIn(a arena.Arena, pane string) []string {
	var out []string
	for _, h := range a.Working() {
		if h.Pane == pane {
			out = append(out, h.ID)
		}
	}
	return out
}

func holeGaps(a arena.Arena) []Gap {
	corner := Gap{Part: "holes", Field: "corner-radius",
		Costs: "the corners count as square: rules on them are unknown, and no drawing can be cut from",
		Cure:  "lay a coin or a radius gauge into the hole's corner"}
	rounding := Gap{Part: "holes", Field: "rounding",
		Costs: "rules on rounded edges are unknown, and the drawing cannot say the edge's finish",
		Cure:  "look at both faces: how much of the edge is taken off?"}
	cover := Gap{Part: "holes", Field: "cover",
		Costs: "rules on covers are unknown; an uncovered hole lets pucks through",
		Cure:  "write cover: none, or what the cover is made of and whether it hangs on a tether"}
	stuff := Gap{Part: "holes", Field: "cover.material",
		Costs: "the cover's play in heat and cold cannot be told",
		Cure:  "ask who made the cover"}
	tether := Gap{Part: "holes", Field: "cover.tether",
		Costs: "a rule that asks for a tether is unknown",
		Cure:  "look whether the cover hangs on something when it is out"}
	for _, h := range a.Working() {
		if _, ok := h.Corner.Get(); !ok {
			corner.Of = append(corner.Of, h.ID)
		}
		if _, ok := h.Rounding.Get(); !ok {
			rounding.Of = append(rounding.Of, h.ID)
		}
		c, ok := h.Cover.Get()
		if !ok {
			cover.Of = append(cover.Of, h.ID)
		}
		if _, told := c.Tether.Get(); c.Present && !told {
			tether.Of = append(tether.Of, h.ID)
		}
		if c.Present && c.Material == "" {
			stuff.Of = append(stuff.Of, h.ID)
		}
	}
	return found(corner, rounding, cover, stuff, tether)
}

func windowGaps(a arena.Arena) []Gap {
	thick := Gap{Part: "low-windows", Field: "thickness",
		Costs: "the clear patch that the lens needs in a printed film cannot be told, nor the light lost",
		Cure:  "measure the panel's edge"}
	material := Gap{Part: "low-windows", Field: "material",
		Costs: "the panel's refraction is not known, so neither is the clear patch or the light lost",
		Cure:  "ask who fitted the panel"}
	rounding := Gap{Part: "low-windows", Field: "rounding",
		Costs: "rules on rounded edges of an opening are unknown",
		Cure:  "look at both faces: how much of the edge is taken off?"}
	cover := Gap{Part: "low-windows", Field: "cover",
		Costs: "rules on covers are unknown; an uncovered opening lets pucks through",
		Cure:  "write cover: none, or what the cover is made of and whether it hangs on a tether"}
	for _, w := range a.Windows {
		if w.Open {
			if _, ok := w.Rounding.Get(); !ok {
				rounding.Of = append(rounding.Of, w.ID)
			}
			if _, ok := w.Cover.Get(); !ok {
				cover.Of = append(cover.Of, w.ID)
			}
			continue
		}
		if _, ok := w.Thick.Get(); !ok {
			thick.Of = append(thick.Of, w.ID)
		}
		if w.Material == "" {
			material.Of = append(material.Of, w.ID)
		}
	}
	return found(thick, material, rounding, cover)
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

// found keeps the gaps that something lacks.
func found(gaps ...Gap) []Gap {
	return slices.DeleteFunc(gaps, func(g Gap) bool { return len(g.Of) == 0 })
}

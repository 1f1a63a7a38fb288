package glass

import (
	"math"
	"strings"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// Limit is one distance that a hole must keep, with what it keeps.
type Limit struct {
	Of     string // kind of distance: one of [TradeDistances]
	What   string // "rim to the left edge" ...
	Have   unit.Length
	Bound  unit.Length // the least, or the most when AtMost is set
	AtMost bool
	Source string
}

// The kinds of distances that the trade asks for, as rules name them.
const (
	rimToEdge   = "rim-to-edge"
	rimToCorner = "rim-to-corner"
	// HoleToHole is the one that concerns two holes.
	HoleToHole   = "hole-to-hole"
	fillet       = "fillet"
	holeDiameter = "hole-diameter"
	cutOutShare  = "cut-out-share"
)

// TradeDistances lists the kinds of distances.
func TradeDistances() []string {
	return []string{rimToEdge, rimToCorner, HoleToHole, fillet, holeDiameter, cutOutShare}
}

// Asks reports whether the trade asks for a kind of distance at all.
func (t Trade) Asks(of string) bool {
	switch of {
	case rimToEdge:
		return t.Edge.Asked()
	case rimToCorner:
		return t.Corner.Asked()
	case HoleToHole:
		return t.Apart.Asked()
	case fillet:
		return t.Fillet.Asked()
	case holeDiameter:
		return t.Size.Asked()
	}
	return t.Share > 0
}

// slack is what a distance may fall short of its limit by, for rounding in
// the survey's own numbers.
const slack = 1e-6 * unit.Metre

// Spare returns by how much the limit is kept, negative when it is missed.
func (l Limit) Spare() unit.Length {
	if l.AtMost {
		return l.Bound - l.Have
	}
	return l.Have - l.Bound
}

// Kept reports whether the limit is kept.
func (l Limit) Kept() bool { return l.Spare() >= -slack }

// Say tells the limit and by how much it is missed. A rim beyond an edge is past it.
func (l Limit) Say() say.Sentence {
	if edge, ok := strings.CutPrefix(l.What, "rim to "); ok && l.Have < 0 {
		return say.Make("rim is %s past %s, at least %s inside it (short by %s)", say.Fine(-l.Have), edge, say.Fine(l.Bound), say.Fine(-l.Spare()))
	}
	word, way := "at least", "short"
	if l.AtMost {
		word, way = "at most", "over"
	}
	return say.Make("%s is %s, %s %s (%s by %s)", l.What, say.Fine(l.Have), word, say.Fine(l.Bound), way, say.Fine(-l.Spare()))
}

// Limits returns what the trade asks of a hole with a corner radius, at its
// place on a pane of thickness t, beside the pane's other holes. The rim is
// nearest to a pane's corner on the hole's own rounded corner:
//
//	sqrt((dx + r)^2 + (dy + r)^2) - r
//
// with dx, dy the rim's distances to the two edges and r the corner radius. A
// neighbour's corner radius that is not recorded counts 0, the safe side.
func (t Trade) Limits(on Face, thick unit.Length, h Hole, corner unit.Length, others []Neighbour) []Limit {
	var out []Limit
	least := func(of, what string, have unit.Length, d Distance, side unit.Length) {
		if d.Asked() {
			out = append(out, Limit{Of: of, What: what, Have: have, Bound: d.Of(thick, side), Source: d.Source})
		}
	}
	w, high := h.Size.W/2, h.Size.H/2
	least(rimToEdge, "rim to the left edge", on.Left-w, t.Edge, h.Size.W)
	least(rimToEdge, "rim to the right edge", on.Right()-w, t.Edge, h.Size.W)
	least(rimToEdge, "rim to the bottom edge at the boards", on.Up-high, t.Edge, h.Size.H)
	least(rimToEdge, "rim to the top edge", on.Down()-high, t.Edge, h.Size.H)
	dx, dy := min(on.Left, on.Right())-w+corner, min(on.Up, on.Down())-high+corner
	least(rimToCorner, "rim to the nearest corner", unit.Length(math.Hypot(float64(dx), float64(dy)))-corner, t.Corner, 0)
	least(fillet, "corner radius", corner, t.Fillet, 0)
	smaller := min(h.Size.W, h.Size.H)
	least(holeDiameter, "smaller side of the hole", smaller, t.Size, 0)
	if share := unit.Length(t.Share); share > 0 {
		out = append(out,
			Limit{Of: cutOutShare, What: "hole's width", Have: h.Size.W, Bound: on.Width * share, AtMost: true, Source: t.ShareSource},
			Limit{Of: cutOutShare, What: "hole's height", Have: h.Size.H, Bound: on.Height * share, AtMost: true, Source: t.ShareSource})
	}
	for _, k := range others {
		gap := RimOf(h, corner).Gap(RimOf(k.Hole, k.Hole.Corner.Or(0)), k.Left-on.Left)
		least(HoleToHole, "rim to the rim of hole "+k.Hole.ID, max(0, gap), t.Apart, smaller)
	}
	return out
}

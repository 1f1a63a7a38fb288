package rules

import (
	"math"

	"example.org/rinkpane/glass"
	"example.org/rinkpane/unit"
)

// outline is a hole's rim on the pane laid flat: a rectangle shrunk by the
// corner radius, then grown by it. All in metres; a point has no size.
type outline struct {
	y            float64 // height of the centre
	halfW, halfH float64 // of the core
	radius       float64
}

// rim returns a hole's outline for a corner radius, which is at most half the
// smaller side.
func rim(h glass.Hole, radius unit.Length) outline {
	r := min(radius, h.Size.W/2, h.Size.H/2)
	return outline{
		y:     h.Height.Metres(),
		halfW: (h.Size.W/2 - r).Metres(), halfH: (h.Size.H/2 - r).Metres(), radius: r.Metres(),
	}
}

// rims returns the outlines for the least and the greatest corner radius that
// the survey leaves open: the same twice when the radius is recorded.
func rims(h glass.Hole) [2]outline {
	if r, known := h.Corner.Get(); known {
		return [2]outline{rim(h, r), rim(h, r)}
	}
	return [2]outline{rim(h, 0), rim(h, min(h.Size.W, h.Size.H)/2)}
}

// gap returns the distance in metres between two outlines; dx is the way along
// the boards from o to p. It is exact for outlines apart (the distance between
// the cores less both radii) and negative or zero for outlines that meet.
func (o outline) gap(p outline, dx float64) float64 {
	across := max(0, math.Abs(dx)-o.halfW-p.halfW)
	up := max(0, math.Abs(p.y-o.y)-o.halfH-p.halfH)
	return math.Hypot(across, up) - o.radius - p.radius
}

// edges returns how far the hole's outline, taken as a sharp rectangle, stands
// inside its pane.
func (c *court) edges(p glass.Pane, h glass.Hole) glass.Edges {
	return glass.EdgesOf(c.arena.Boards, p, h, c.arena.Rink.Perimeter())
}

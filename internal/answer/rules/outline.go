package rules

import (
	"example.org/rinkpane/internal/survey/glass"
)

// rims returns a hole's rims for the least and the greatest corner radius that
// the survey leaves open: the same twice when the radius is recorded.
func rims(h glass.Hole) [2]glass.Rim {
	if r, known := h.Corner.Get(); known {
		return [2]glass.Rim{glass.RimOf(h, r), glass.RimOf(h, r)}
	}
	return [2]glass.Rim{glass.RimOf(h, 0), glass.RimOf(h, min(h.Size.W, h.Size.H)/2)}
}

// edges returns how far the hole's outline, taken as a sharp rectangle, stands
// inside its pane.
func (c *court) edges(p glass.Pane, h glass.Hole) glass.Edges {
	return glass.EdgesOf(c.arena.Boards, p, h, c.arena.Rink.Perimeter())
}

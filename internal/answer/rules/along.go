package rules

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// heading names the way along the boards from a station, toward rising or
// falling stations, as rink people say it.
func (c *court) heading(at unit.Length, rising bool) string {
	if corner := c.arena.Rink.Corner(at); corner != rink.NoCorner {
		if rising == (corner.TowardCentre() > 0) {
			return "toward centre ice"
		}
		return "toward the middle of the end boards"
	}
	t := c.arena.Rink.Tangent(at)
	if !rising {
		t = t.Scale(-1)
	}
	switch {
	case t.Y > max(t.X, -t.X):
		return "toward the box side"
	case -t.Y > max(t.X, -t.X):
		return "toward the bench side"
	case t.X > 0:
		return "toward end B"
	}
	return "toward end A"
}

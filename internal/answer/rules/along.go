package rules

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// apart returns the way along the boards from station a to station b, the
// shorter way round: positive toward rising stations.
func apart(r rink.Rink, a, b unit.Length) unit.Length {
	d := r.Wrap(b - a)
	if per := r.Perimeter(); d > per/2 {
		d -= per
	}
	return d
}

// towardCentre returns +1 in a corner where rising stations lead toward centre
// ice, -1 where they lead toward the middle of the end boards. Stations run
// counter-clockwise from the bench-side end of the red line, first toward end B.
func towardCentre(c rink.Corner) unit.Length {
	if c == rink.BBox || c == rink.ABench {
		return 1
	}
	return -1
}

// heading names the way along the boards from a station, toward rising or
// falling stations, as rink people say it.
func (c *court) heading(at unit.Length, rising bool) string {
	if corner := c.arena.Rink.Corner(at); corner != rink.NoCorner {
		if rising == (towardCentre(corner) > 0) {
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

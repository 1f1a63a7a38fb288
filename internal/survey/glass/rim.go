package glass

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Rim is a hole's outline on the pane laid flat: a rectangle, the core, grown
// by the corner radius. The zero value is a point at the ice.
//
//	 .--------.
//	( +------+ )   core 2 HalfW x 2 HalfH, its centre Y above the ice
//	| |      | |
//	( +------+ )   grown by Radius
//	 '--------'
type Rim struct {
	Y            unit.Length
	HalfW, HalfH unit.Length // of the core
	Radius       unit.Length
}

// RimOf returns a hole's rim with a corner radius, which is taken as at most
// half the smaller side.
func RimOf(h Hole, radius unit.Length) Rim {
	r := min(radius, h.Size.W/2, h.Size.H/2)
	return Rim{Y: h.Height, HalfW: h.Size.W/2 - r, HalfH: h.Size.H/2 - r, Radius: r}
}

// Gap returns the distance between two rims, in metres; along is the way along
// the pane from r to q. It is exact for rims apart (the distance between the
// cores less both radii) and zero or negative for rims that meet.
func (r Rim) Gap(q Rim, along unit.Length) unit.Length {
	across := max(0, math.Abs(along.Metres())-(r.HalfW+q.HalfW).Metres())
	up := max(0, math.Abs((q.Y-r.Y).Metres())-(r.HalfH+q.HalfH).Metres())
	return unit.Length(math.Hypot(across, up)) - r.Radius - q.Radius
}

// Area returns the area of the hole in square metres: the rectangle less its
// four rounded corners, (4 - pi) r^2; an unknown radius counts 0.
func (h Hole) Area() float64 {
	r := h.Corner.Or(0).Metres()
	return h.Size.W.Metres()*h.Size.H.Metres() - (4-math.Pi)*r*r
}

package rink

import (
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// LandmarkPlace is a landmark of one corner on the boards' rink face.
type LandmarkPlace struct {
	Corner   Corner
	Landmark Landmark
	Station  unit.Length
	At       geom.Vec2 // metres
}

// LandmarkPlaces returns every landmark that the rink has, by corner in station
// order and in each corner from the end boards toward centre ice.
func (r Rink) LandmarkPlaces() []LandmarkPlace {
	var out []LandmarkPlace
	for _, c := range Corners() {
		for _, l := range Landmarks() {
			if at, ok := r.Landmark(c, l); ok {
				p, _ := r.LandmarkPoint(c, l)
				out = append(out, LandmarkPlace{c, l, at, p})
			}
		}
	}
	return out
}

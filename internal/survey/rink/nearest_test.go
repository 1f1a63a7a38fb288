package rink

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/unit"
)

// TestNearestLandmarkLeadsBack goes from a station to its landmark and offset
// and back by [Rink.FromLandmark].
func TestNearestLandmarkLeadsBack(t *testing.T) {
	for _, name := range Standards() {
		r, err := Standard(name)
		if err != nil {
			t.Fatal(err)
		}
		rapid.Check(t, func(t *rapid.T) {
			station := unit.Length(rapid.Float64Range(0, r.Perimeter().Metres()).Draw(t, "station"))
			corner, landmark, offset, ok := r.NearestLandmark(station)
			if corner == NoCorner {
				if ok || landmark != "" {
					t.Fatalf("between the blue lines, but near %s", landmark)
				}
				return
			}
			back, err := r.FromLandmark(corner, landmark, offset)
			if err != nil {
				t.Fatal(err)
			}
			if gap := r.Apart(station, back).Metres(); math.Abs(gap) > 1e-9 {
				t.Fatalf("station %g: %s %s %+g leads to %g", station, corner, landmark, offset, back)
			}
			for _, l := range Landmarks() {
				at, marked := r.Landmark(corner, l)
				if marked && math.Abs(r.Apart(at, station).Metres()) < math.Abs(offset.Metres())-1e-9 {
					t.Fatalf("station %g: %s is nearer than %g m", station, l, offset)
				}
			}
		})
	}
}

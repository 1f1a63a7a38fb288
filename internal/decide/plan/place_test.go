package plan

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// TestNearestLandmarkLeadsBack goes from a station to its landmark and offset
// and back by the rink's own way.
func TestNearestLandmarkLeadsBack(t *testing.T) {
	for _, name := range rink.Standards() {
		r, err := rink.Standard(name)
		if err != nil {
			t.Fatal(err)
		}
		rapid.Check(t, func(t *rapid.T) {
			station := unit.Length(rapid.Float64Range(0, r.Perimeter().Metres()).Draw(t, "station"))
			landmark, offset := nearestLandmark(r, station)
			corner := r.Corner(station)
			if corner == rink.NoCorner {
				if landmark != "" {
					t.Fatalf("between the blue lines, but near %s", landmark)
				}
				return
			}
			back, err := r.FromLandmark(corner, landmark, offset)
			if err != nil {
				t.Fatal(err)
			}
			if gap := between(r, station, back); math.Abs(gap) > 1e-9 {
				t.Fatalf("station %g: %s %s %+g leads to %g", station, corner, landmark, offset, back)
			}
			checkNearest(t, r, corner, station, math.Abs(offset.Metres()))
		})
	}
}

func checkNearest(t *rapid.T, r rink.Rink, corner rink.Corner, station unit.Length, offset float64) {
	for _, l := range rink.Landmarks() {
		at, ok := r.Landmark(corner, l)
		if ok && math.Abs(between(r, at, station)) < offset-1e-9 {
			t.Fatalf("station %g: %s is nearer than %g m", station, l, offset)
		}
	}
}

func TestNearSlotIsOfTheOwnEnd(t *testing.T) {
	r, err := rink.Standard(rink.International)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range rink.Corners() {
		at, ok := r.Landmark(c, rink.GoalLine)
		if got := nearSlot(r, at); !ok || got != "slot-"+c.End() {
			t.Errorf("corner %s looks at %s", c, got)
		}
	}
}

package rink

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

func TestCornerOfStation(t *testing.T) {
	r := standard(t, International)
	per := r.Perimeter()
	for _, c := range []struct {
		s    unit.Length
		want Corner
	}{
		{0, NoCorner}, {7.13, NoCorner}, {7.14, BBench}, {20, BBench}, {per/4 - 1, BBench}, {per/4 + 1, BBox},
		{per/2 - 7.14, BBox}, {per/2 - 7, NoCorner}, {per / 2, NoCorner}, {per/2 + 8, ABox}, {3*per/4 - 1, ABox}, {3*per/4 + 1, ABench},
		{per - 7.14, ABench}, {per - 7, NoCorner}, {-20, ABench},
	} {
		if got := r.Corner(c.s); got != c.want {
			t.Errorf("station %v lies in %q, want %q", c.s, got, c.want)
		}
	}
	bare, err := New(Dimensions{Length: 60, Width: 30, CornerRadius: 8.5, Markings: Markings{GoalLine: 4}})
	if err != nil {
		t.Fatal(err)
	}
	if got := bare.Corner(20); got != NoCorner {
		t.Errorf("a rink without blue lines has the corner %q", got)
	}
}

// On both standards every landmark and every small offset lies in its corner.
func TestLandmarksLieInTheirCorner(t *testing.T) {
	met := 0
	for _, name := range Standards() {
		r := standard(t, name)
		for _, c := range Corners() {
			for _, l := range Landmarks() {
				met++
				s, ok := r.Landmark(c, l)
				if !ok || r.Corner(s) != c {
					t.Errorf("%s: %s of %s at %v lies in %q", name, l, c, s, r.Corner(s))
				}
				back, err := r.FromLandmark(c, l, -5*unit.Foot)
				if err != nil || r.Corner(back) != c {
					t.Errorf("%s: 5 ft back of %s of %s: %v %v", name, l, c, back, err)
				}
			}
		}
	}
	if met != 32 {
		t.Errorf("met %d landmarks", met)
	}
}

// Five feet back of the goal line, in the corner's arc: 5 ft less or more along the boards.
func TestFromLandmarkByHand(t *testing.T) {
	r := standard(t, NorthAmerican)
	for c, sign := range map[Corner]unit.Length{BBench: -1, BBox: 1, ABox: -1, ABench: 1} {
		at, ok := r.Landmark(c, GoalLine)
		if !ok || !r.Curved(at) {
			t.Fatalf("%s: the goal line meets the boards at %v, not on the arc", c, at)
		}
		got, err := r.FromLandmark(c, GoalLine, 5*unit.Foot)
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.String(), (got - at).Feet(), float64(5*sign), 1e-9)
	}
}

func TestFromLandmarkRefuses(t *testing.T) {
	r := standard(t, NorthAmerican)
	bare, err := New(Dimensions{Length: 60, Width: 30, CornerRadius: 8.5})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		r      Rink
		corner Corner
		l      Landmark
		off    unit.Length
		says   string
	}{
		{r, NoCorner, GoalLine, 0, "no corner given"},
		{bare, ABox, GoalLine, 0, "no goal-line marking"},
		{r, ABox, "red-line", 0, "no red-line marking"},
		{r, ABox, GoalLine, 45, "leaves the corner"},
		{r, ABox, GoalLine, unit.Length(math.NaN()), "leaves the corner"},
	} {
		if s, err := c.r.FromLandmark(c.corner, c.l, c.off); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v %v: %v %v", c.corner, c.l, s, err)
		}
	}
}

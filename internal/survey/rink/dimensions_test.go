package rink

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

func TestNewRefuses(t *testing.T) {
	nan, inf := unit.Length(math.NaN()), unit.Length(math.Inf(1))
	cases := []struct {
		spoil func(*Dimensions)
		says  string
	}{
		{func(d *Dimensions) { d.Length = 0 }, "rink length 0 mm (0 in): must lie between 5 m"},
		{func(d *Dimensions) { d.Length = nan }, "rink length that is not finite"},
		{func(d *Dimensions) { d.Length = inf }, "rink length that is not finite"},
		{func(d *Dimensions) { d.Length = 151 }, "rink length 151 m"},
		{func(d *Dimensions) { d.Width = -30 }, "rink width -30 m"},
		{func(d *Dimensions) { d.Width = nan }, "rink width"},
		{func(d *Dimensions) { d.CornerRadius = 15.001 }, "half the smaller side, 15 m"},
		{func(d *Dimensions) { d.CornerRadius = -0.001 }, "corner radius"},
		{func(d *Dimensions) { d.CornerRadius = nan }, "corner radius that is not finite"},
		{func(d *Dimensions) { d.Markings.GoalLine = 30 }, "goal line 30 m"},
		{func(d *Dimensions) { d.Markings.GoalLine = -4 }, "goal line -4 m (-13 ft 1 1/2 in): must be 0 or more"},
		{func(d *Dimensions) { d.Markings.GoalLine = nan }, "goal line that is not finite"},
		{func(d *Dimensions) { d.Markings.GoalLine = 0 }, "without a goal line"},
		{func(d *Dimensions) { d.Markings.BlueLine = 3.9 }, "must lie beyond the goal line"},
		{func(d *Dimensions) { d.Markings.BlueLine = 31 }, "does not fit the half rink"},
		{func(d *Dimensions) { d.Markings.CircleRadius = 10.1 }, "about a spot 10 m (32 ft 9 3/4 in) from the end boards: does not fit its half"},
		{func(d *Dimensions) { d.Markings.CircleRadius = inf }, "circle radius that is not finite"},
		{func(d *Dimensions) { d.Markings.SpotFromGoal = 0 }, "without the spot's distance"},
		{func(d *Dimensions) { d.Markings.SpotFromGoal = 22 }, "does not fit its half"},
		{func(d *Dimensions) { d.Markings.SpotFromAxis = 11 }, "does not fit between the side boards"},
		{func(d *Dimensions) { d.Markings.CreaseRadius = nan }, "crease radius"},
	}
	for _, c := range cases {
		d := international()
		c.spoil(&d)
		if r, err := New(d); err == nil {
			t.Errorf("%q: took %+v", c.says, r)
		} else if !strings.Contains(err.Error(), c.says) {
			t.Errorf("message %q lacks %q", err, c.says)
		}
	}
}

// The widest corners there are: half circles at the ends, and none at all.
func TestRoundAndSquareEnds(t *testing.T) {
	round, err := New(Dimensions{Length: 60, Width: 30, CornerRadius: 15})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "perimeter", round.Perimeter().Metres(), 2*30+30*math.Pi, 1e-12)
	near(t, "area", round.Area(), 30*30+15*15*math.Pi, 1e-12)
	near(t, "half-width at the end", round.HalfWidth(30), 0, 0)
	square, err := New(Dimensions{Length: 60, Width: 30})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "perimeter", square.Perimeter().Metres(), 180, 0)
	near(t, "area", square.Area(), 1800, 0)
	if square.Curved(30) || !round.Curved(16) {
		t.Error("arcs in the wrong place")
	}
	if n := square.Normal(30.5); n.X != -1 || n.Y != 0 {
		t.Errorf("normal on the end boards %v", n)
	}
}

func TestStandardByName(t *testing.T) {
	for _, name := range Standards() {
		r, err := Standard(name)
		if err != nil || !r.Marked() {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := Standard("olympic"); err == nil || !strings.Contains(err.Error(), "north-american or international") {
		t.Error(err)
	}
}

func TestNamesReadBack(t *testing.T) {
	for _, c := range Corners() {
		if got, err := ParseCorner(c.String()); err != nil || got != c {
			t.Errorf("%v: %v %v", c, got, err)
		}
	}
	for _, s := range []string{"", "a-bench", "C-box", "A-bench "} {
		if _, err := ParseCorner(s); err == nil || !strings.Contains(err.Error(), "A-bench, A-box, B-bench or B-box") {
			t.Errorf("%q: %v", s, err)
		}
	}
	if NoCorner.String() != "" || Corner(9).String() != "" || Corner(-1).String() != "" {
		t.Error("corners that are none have names")
	}
}

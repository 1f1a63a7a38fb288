package play

import (
	"math"
	"slices"
	"testing"
)

const foot = 0.3048

// shotDistances returns the sampler's shot distances in feet, from the middle of the goal line, ascending.
func shotDistances(t *testing.T) []float64 {
	t.Helper()
	s := sample(t, standard(t, "north-american"), DefaultAssumptions(), 1, 100_000)
	var d []float64
	for _, sh := range s.Shots(1) {
		d = append(d, math.Hypot(float64(sh.End)*s.Layout.GoalX-sh.X, sh.Y)/foot)
	}
	slices.Sort(d)
	if len(d) < 10_000 {
		t.Fatalf("only %d shots among 100,000 moments", len(d))
	}
	return d
}

// The average distance of a shot in a professional season: 35 ft at even
// strength, 34 ft on the power play (T. Awad, "A Shot Quality Primer", 2009,
// from the league's scoring system, season 2008-09). The sampler's shots are
// set to fall within 2 ft of it.
func TestMeanShotDistance(t *testing.T) {
	var sum float64
	d := shotDistances(t)
	for _, x := range d {
		sum += x
	}
	if mean := sum / float64(len(d)); math.Abs(mean-35) > 2 {
		t.Errorf("mean shot distance %.1f ft, want 35 within 2", mean)
	}
}

// Five shots of an open data set of one cup (feet, origin at centre ice; the
// goal line at 89 ft): (61,-32) (-65,19) (-60,-4) (63,4) and one from the
// neutral zone, (-8,-27). Four must lie in the sampler's middle nine tenths;
// the fifth, a clearing shot, lies past all of them, as the docs say.
func TestOpenDataShotsLieInTheSamplersRange(t *testing.T) {
	d := shotDistances(t)
	low, high := d[len(d)/20], d[len(d)-len(d)/20]
	inside := 0
	for _, p := range [][2]float64{{61, -32}, {-65, 19}, {-60, -4}, {63, 4}, {-8, -27}} {
		if dist := math.Hypot(89-math.Abs(p[0]), p[1]); dist >= low && dist <= high {
			inside++
		}
	}
	if inside != 4 {
		t.Errorf("%d of five open-data shots lie between %.1f and %.1f ft, want 4", inside, low, high)
	}
}

// Published peaks: slap shots 29.14 m/s on average (Woo et al.), 33.3 m/s (J
// Appl Biomech 22(3)).
func TestShotSpeeds(t *testing.T) {
	s := sample(t, standard(t, "north-american"), DefaultAssumptions(), 1, 20_000)
	shots := s.Shots(9)
	over, aimed := 0, 0
	for _, sh := range shots {
		if sh.Speed > 33.3 {
			over++
		}
		if sh.Speed < minSpeed || sh.Speed > maxSpeed || sh.Elevation < 0 {
			t.Fatalf("shot %+v", sh)
		}
		// Most are aimed at the goal's mouth, whichever end it stands at.
		x := float64(sh.End)*s.Layout.GoalX - sh.X
		y := sh.Y + x*math.Tan(sh.Azimuth)
		if math.Abs(y) < 3*s.Layout.GoalHalf && x*math.Cos(sh.Azimuth) > 0 {
			aimed++
		}
	}
	if share := float64(over) / float64(len(shots)); share > 0.01 {
		t.Errorf("%.3f of the shots beat the published peak", share)
	}
	if share := float64(aimed) / float64(len(shots)); share < 0.8 {
		t.Errorf("only %.2f of the shots go near the goal", share)
	}
	if again := s.Shots(9); !slices.Equal(again, shots) {
		t.Error("the same seed gives other shots")
	}
}

package glass_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

func near(a, b unit.Length, tol float64) bool { return math.Abs(float64(a-b)) <= tol }

// By hand: 4 ft along boards of 28 ft radius turn 1/7 rad; on glass 1.5 in
// behind, at 28.125 ft, that is 4.017857 ft bent; flat 2 x 28.125 sin(1/14) =
// 4.0144415 ft, its middle 28.125 (1 - cos(1/14)) = 0.860603 in nearer to the ice.
func TestBendByHand(t *testing.T) {
	b := glass.Boards{Setback: unit.Known(1.5 * unit.Inch)}
	p := glass.Pane{Width: 4 * unit.Foot, Curved: true}
	r := 28 * unit.Foot
	bent := glass.BendOf(p, b, r)
	if !near(bent.Sheet, 4.0178571*unit.Foot, 1e-7) || bent.Sagitta != 0 || math.Abs(bent.Angle.Radians()-1./7) > 1e-12 {
		t.Errorf("bent: %+v", bent)
	}
	p.Curved = false
	flat := glass.BendOf(p, b, r)
	if !near(flat.Sheet, 4.0144415*unit.Foot, 1e-7) || !near(flat.Sagitta, 0.860603*unit.Inch, 1e-7) {
		t.Errorf("flat: sheet %.7f ft, sagitta %.6f in", flat.Sheet.Feet(), flat.Sagitta.Inches())
	}
	if got := flat.BeforeBoards(r); !near(got, flat.Sagitta-1.5*unit.Inch, 1e-12) || got > 0 {
		t.Errorf("reaches %v before the boards", got)
	}
	if straight := glass.BendOf(p, b, 0); straight.Sheet != p.Width || straight.Along(0.3, 0) != 0.3 || straight.BeforeBoards(0) != 0 {
		t.Errorf("straight: %+v", straight)
	}
}

// Chord and arc agree with points on the circle, computed another way.
func TestBendAgainstPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := unit.Length(rapid.Float64Range(2, 12).Draw(t, "radius"))
		set := unit.Length(rapid.Float64Range(0, 0.2).Draw(t, "setback"))
		p := glass.Pane{Width: unit.Length(rapid.Float64Range(0.2, 2.5).Draw(t, "width"))}
		b := glass.BendOf(p, glass.Boards{Setback: unit.Known(set)}, r)
		R, half := float64(r+set), float64(p.Width/r)/2
		ax, ay := R*math.Cos(-half), R*math.Sin(-half)
		bx, by := R*math.Cos(half), R*math.Sin(half)
		if got := math.Hypot(bx-ax, by-ay); !near(b.Sheet, unit.Length(got), 1e-9) {
			t.Fatalf("chord %v, points are %g apart", b.Sheet, got)
		}
		if got := R - (ax+bx)/2; !near(b.Sagitta, unit.Length(got), 1e-9) {
			t.Fatalf("sagitta %v, points say %g", b.Sagitta, got)
		}
		// The ray of a station meets the chord x = const at Along.
		turn := rapid.Float64Range(-half, half).Draw(t, "turn")
		want := ax * math.Tan(turn)
		if got := b.Along(unit.Length(turn)*r, r); !near(got, unit.Length(want), 1e-9) {
			t.Fatalf("along %v, the ray meets the chord at %g", got, want)
		}
		if end := b.Along(p.Width/2, r); !near(end, b.Sheet/2, 1e-9) {
			t.Fatalf("the pane's edge lies at %v of a sheet %v wide", end, b.Sheet)
		}
		p.Curved = true
		bent := glass.BendOf(p, glass.Boards{Setback: unit.Known(set)}, r)
		if end := bent.Along(p.Width/2, r); !near(end, bent.Sheet/2, 1e-9) || bent.Sheet < b.Sheet {
			t.Fatalf("bent sheet %v, flat %v", bent.Sheet, b.Sheet)
		}
	})
}

func TestEdgesByHand(t *testing.T) {
	b := glass.Boards{Height: 42 * unit.Inch}
	p := glass.Pane{From: 10 * unit.Foot, Width: 4 * unit.Foot, Height: 6 * unit.Foot}
	h := glass.Hole{Station: 11 * unit.Foot, Height: 58 * unit.Inch, Size: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}}
	e := glass.EdgesOf(b, p, h, 500*unit.Foot)
	want := glass.Edges{Left: 9.25 * unit.Inch, Right: 33.25 * unit.Inch, Bottom: 13.75 * unit.Inch, Top: 53.75 * unit.Inch}
	for name, pair := range map[string][2]unit.Length{"left": {e.Left, want.Left}, "right": {e.Right, want.Right}, "top": {e.Top, want.Top}, "bottom": {e.Bottom, want.Bottom}, "least": {e.Least(), want.Left}} {
		if !near(pair[0], pair[1], 1e-12) {
			t.Errorf("%s %v in, want %v in", name, pair[0].Inches(), pair[1].Inches())
		}
	}
}

// Where the stations begin anew changes nothing, and what lies left of the pane
// is told as negative, not as a lap.
func TestEdgesTurnWithTheStations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		per := unit.Length(rapid.Float64Range(50, 200).Draw(t, "perimeter"))
		p := glass.Pane{From: unit.Length(rapid.Float64Range(0, 0.99).Draw(t, "from")) * per, Width: unit.Length(rapid.Float64Range(0.3, 3).Draw(t, "width")), Height: 2}
		off := unit.Length(rapid.Float64Range(-1, 4).Draw(t, "off"))
		h := glass.Hole{Station: p.From + off, Height: 1.5, Size: unit.Size{W: 0.14, H: 0.11}}
		want := glass.Edges{Left: off - 0.07, Right: p.Width - off - 0.07}
		for _, lap := range []unit.Length{-per, 0, per} {
			h2 := h
			h2.Station += lap
			e := glass.EdgesOf(glass.Boards{Height: 1}, p, h2, per)
			if !near(e.Left, want.Left, 1e-9) || !near(e.Right, want.Right, 1e-9) {
				t.Fatalf("lap %v: %+v, want %+v", lap, e, want)
			}
		}
	})
}

func ExampleBendOf() {
	boards := glass.Boards{Setback: unit.Known(30 * unit.Millimetre)}
	pane := glass.Pane{Width: 1.2 * unit.Metre} // flat
	b := glass.BendOf(pane, boards, 8.5*unit.Metre)
	fmt.Println("sheet", b.Sheet.FormatFine(unit.Metric), "sagitta", b.Sagitta.FormatFine(unit.Metric))
	// Output:
	// sheet 1203.2 mm sagitta 21.2 mm
}

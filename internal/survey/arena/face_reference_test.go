package arena

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

func standardArena(t testing.TB) Arena {
	t.Helper()
	r, err := rink.Standard("north-american")
	if err != nil {
		t.Fatal(err)
	}
	return Arena{Name: "Test Rink", Rink: r, Boards: glass.Boards{Height: 42 * unit.Inch, Setback: unit.Known(1.5 * unit.Inch)}}
}

// On the straight the glass measures as the boards do.
func TestFaceOnTheStraight(t *testing.T) {
	a := standardArena(t)
	f := a.Face(glass.Pane{From: 10, Width: 1.2, Height: 2}, glass.Hole{Station: 10.5, Height: 1.5, Size: unit.Size{W: 0.14, H: 0.1}}, a.Setback().Value)
	for name, d := range map[string]unit.Length{"width": f.Width - 1.2, "left": f.Left - 0.5, "right": f.Right() - 0.7, "up": f.Up - 1.5 + 42*unit.Inch, "radius": f.Radius} {
		if math.Abs(float64(d)) > 1e-9 {
			t.Errorf("%s is off by %g m", name, float64(d))
		}
	}
}

// On the arc of 28 ft a curved pane 1.5 in back is longer by 337.5/336; a flat
// one is the chord 2 (R + b) sin(w / 2R).
func TestFaceInTheCorner(t *testing.T) {
	a := standardArena(t)
	from := 100*unit.Foot - 28*unit.Foot + 1 // one metre into the corner
	p := glass.Pane{From: from, Width: 4 * unit.Foot, Height: 2, Curved: true}
	h := glass.Hole{Station: from + 2*unit.Foot, Height: 1.5, Size: unit.Size{W: 0.14, H: 0.1}}
	f := a.Face(p, h, a.Setback().Value)
	if want := 48.0 * 337.5 / 336; math.Abs(f.Width.Inches()-want) > 1e-9 || math.Abs(f.Left.Inches()-want/2) > 1e-9 {
		t.Errorf("width %.6f in, hole at %.6f in, want %.6f and half", f.Width.Inches(), f.Left.Inches(), want)
	}
	if math.Abs(f.Radius.Inches()-337.5) > 1e-9 {
		t.Errorf("radius %.4f in", f.Radius.Inches())
	}
	p.Curved = false
	h.Station = from + unit.Foot
	f = a.Face(p, h, a.Setback().Value)
	chord := 2 * 337.5 * math.Sin(48.0/2/336)
	if math.Abs(f.Width.Inches()-chord) > 1e-9 {
		t.Errorf("chord %.6f in, want %.6f", f.Width.Inches(), chord)
	}
	left := chord/2 - 337.5*math.Cos(48.0/2/336)*math.Tan(12.0/336)
	if math.Abs(f.Left.Inches()-left) > 1e-6 {
		t.Errorf("hole at %.6f in on the chord, want %.6f", f.Left.Inches(), left)
	}
}

// A pane across the tangent point: only its curved part grows. Checked by
// laying many short straight pieces along the glass.
func TestFaceAcrossTheTangent(t *testing.T) {
	a := standardArena(t)
	from := 100*unit.Foot - 28*unit.Foot - 0.5
	p := glass.Pane{From: from, Width: 1.2, Height: 2, Curved: true}
	h := glass.Hole{Station: from + 0.8, Height: 1.5, Size: unit.Size{W: 0.14, H: 0.1}}
	f := a.Face(p, h, a.Setback().Value)
	if sum := walk(a, from, from+1.2); math.Abs(f.Width.Metres()-sum) > 1e-6 {
		t.Errorf("width %.7f m, walked %.7f", f.Width.Metres(), sum)
	}
	if sum := walk(a, from, from+0.8); math.Abs(f.Left.Metres()-sum) > 1e-6 {
		t.Errorf("left %.7f m, walked %.7f", f.Left.Metres(), sum)
	}
}

func walk(a Arena, from, to unit.Length) float64 {
	const n = 20000
	sum := 0.0
	last := geom.Vec2{}
	for i := range n + 1 {
		p := onGlass(a, from+(to-from)*unit.Length(i)/n, a.Boards.Setback.Or(0))
		if i > 0 {
			sum += p.Sub(last).Len()
		}
		last = p
	}
	return sum
}

// A pane that passes the perimeter's end.
func TestFaceAcrossTheStart(t *testing.T) {
	a := standardArena(t)
	per := a.Rink.Perimeter()
	f := a.Face(glass.Pane{From: per - 0.4, Width: 1.2, Height: 2}, glass.Hole{Station: 0.1, Height: 1.5, Size: unit.Size{W: 0.14, H: 0.1}}, a.Setback().Value)
	if math.Abs(f.Left.Metres()-0.5) > 1e-9 {
		t.Errorf("left %.6f m, want 0.5", f.Left.Metres())
	}
}

package geom

import (
	"math"
	"testing"
)

// An ellipse that touches the region from within, at a corner between two arcs,
// shares all of it. Rounding makes it stick out there by a hair, and once that
// hair was all that was left.
func TestEllipseInscribedIsWhole(t *testing.T) {
	for _, turn := range []float64{0, 1e-16, 1.4901161193847656e-08, 3e-8, -1.4901161193847656e-08} {
		for _, x := range []float64{0, 8.881784197001252e-16, -8.881784197001252e-16, 4.44e-16, 1e-9, -1e-9} {
			for _, r := range []RoundRect{{2, 1, 1}, {2, 1, 0}, {2, 1, 0.8}} {
				for _, b := range []float64{1, 0.5} {
					sin, cos := math.Sincos(turn)
					e := Ellipse{Centre: Vec2{X: x}, A: Vec2{2 * cos, 2 * sin}, B: Vec2{-b * sin, b * cos}}
					o := r.Outline()
					if got, _ := o.Overlap(e); math.Abs(got-e.Area()) > 1e-10 {
						t.Errorf("%+v, turned by %g and moved by %g: area %.12g of %.12g", r, turn, x, got, e.Area())
					}
				}
			}
		}
	}
}

// A piece of the outline no longer than rounding shuts nothing out.
func TestShortPiecesShutNothingOut(t *testing.T) {
	r := RoundRect{HalfW: 0.28125, HalfH: 1, Radius: 0.28125}
	for _, d := range []Vec2{{1.1175870895385742e-08, 1.1102230246251565e-16}, {1e-8, 1e-15}, {-1e-8, 1e-16}, {1e-16, 1e-8}, {1e-12, 1e-13}} {
		o := r.Shared(d)
		for i := range 64 {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / 64)
			if p := (Vec2{0.28 * cos, 0.28 * sin}); !o.Contains(p) {
				t.Errorf("moved by %v: %v counts as outside", d, p)
			}
		}
		small := Ellipse{Centre: Vec2{X: 0.1, Y: 0.2}, A: Vec2{X: 0.05}, B: Vec2{Y: 0.03}}
		if got, _ := o.Overlap(small); math.Abs(got-small.Area()) > 1e-15 {
			t.Errorf("moved by %v: a small ellipse well inside shares %g of %g", d, got, small.Area())
		}
	}
}

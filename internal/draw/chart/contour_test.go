package chart

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
)

// The line at a value of a cone is a circle about its top: linear between cell
// middles it leaves the circle by the sagitta of a cell's diagonal at most.
func TestAContourOfAConeIsACircle(t *testing.T) {
	h := &Heat{Corner: geom.Vec2{X: -10, Y: -10}, Step: 0.5, Cols: 40, Rows: 40}
	for row := range h.Rows {
		for col := range h.Cols {
			h.Values = append(h.Values, h.middle(row, col).Len())
		}
	}
	for _, r := range []float64{3, 5.25, 8} {
		line := h.isoline(r)
		long := 0.0
		for _, s := range line {
			long += s[1].Sub(s[0]).Len()
			for _, p := range s {
				if off := math.Abs(p.Len() - r); off > 0.5*0.5*2/(8*r)*2 {
					t.Errorf("radius %g: off by %.4f m", r, off)
				}
			}
		}
		if want := 2 * math.Pi * r; math.Abs(long-want) > 0.01*want {
			t.Errorf("radius %g: %.3f m long, want %.3f", r, long, want)
		}
	}
	if n := len(h.isoline(99)); n != 0 {
		t.Errorf("%d pieces at a value that is nowhere", n)
	}
}

// Through a saddle the two pieces do not cross, whichever way the mean falls.
func TestASaddleHasTwoPieces(t *testing.T) {
	for _, at := range []float64{0.4, 0.6} {
		h := &Heat{Step: 1, Cols: 2, Rows: 2, Values: []float64{1, 0, 0, 1}}
		line := h.isoline(at)
		if len(line) != 2 {
			t.Fatalf("%d pieces", len(line))
		}
		a, b := line[0][1].Sub(line[0][0]), line[1][1].Sub(line[1][0])
		if cross := a.X*b.Y - a.Y*b.X; math.Abs(cross) > 1e-9 {
			t.Errorf("at %g the pieces are not parallel: %v", at, line)
		}
	}
}

// No line leads through a cell whose value is a guess.
func TestNoLineThroughGuesses(t *testing.T) {
	h := &Heat{Step: 1, Cols: 4, Rows: 2, Values: []float64{0, 0, 0, 0, 1, 1, 1, 1}, Guessed: make([]bool, 8)}
	if n := len(h.isoline(0.5)); n != 3 {
		t.Fatalf("%d pieces", n)
	}
	h.Guessed[3] = true
	if n := len(h.isoline(0.5)); n != 2 {
		t.Errorf("%d pieces beside a guess, want 2", n)
	}
}

package geom

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestApart: no shift against the direction found makes the two touch.
func TestApart(t *testing.T) {
	told := 0
	rapid.Check(t, func(t *rapid.T) {
		r, e := genRect(t), genEllipse(t)
		o := r.Shared(genVec(t, "d", 1))
		area, _ := o.Overlap(e)
		n, ok := Apart(e, &o)
		if area > 0 || o.Empty() || o.Area() == 0 {
			return
		}
		if !ok {
			t.Fatalf("no direction found though they share no area")
		}
		told++
		n = n.Unit()
		for i := range 60 {
			q := math.Pi * (float64(i) + 0.5) / 60
			for _, far := range []float64{0.01, 0.1, 0.5, 1, 2, 4} {
				// Every direction with n . d < 0.
				d := Vec2{-n.Y, n.X}.Scale(far * math.Cos(q)).Sub(n.Scale(far * math.Sin(q)))
				moved := e
				moved.Centre = e.Centre.Add(d)
				if a, _ := o.Overlap(moved); a > 1e-9 {
					t.Fatalf("shift %v against %v makes them share %g", d, n, a)
				}
			}
		}
	})
	if least := 4; told < least && !testing.Short() {
		t.Errorf("only %d pairs lay apart", told)
	}
}

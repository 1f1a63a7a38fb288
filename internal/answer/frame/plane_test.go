package frame

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// TestPlanesLieAtTheirDepth: the middle of each piece of the lines on the ice,
// looked back to the ice, lies as deep along the axis as the focus or a limit of
// the depth of field.
func TestPlanesLieAtTheirDepth(t *testing.T) {
	s := shot(t, func(q *Request) { q.Planes, q.Focus = true, unit.Known(9*unit.Metre) })
	d, err := s.DepthOfField()
	if err != nil {
		t.Fatal(err)
	}
	st := newStage(s.Camera, 1200, 800)
	met := map[float64]int{}
	for _, sh := range st.planes(s) {
		var mid geom.Vec2
		for _, p := range sh.outline {
			mid = mid.Add(p.Scale(1 / float64(len(sh.outline))))
		}
		u := s.Camera.ray(2*mid.X/1200-1, 1-2*mid.Y/800)
		depth := -s.Camera.Eye.Z / u.Z * u.Dot(s.Camera.Forward)
		for _, want := range []unit.Length{d.Near, s.Focus, d.Far} {
			if math.Abs(depth-want.Metres()) < 0.02 {
				met[want.Metres()]++
			}
		}
	}
	if met[9] != 1 || met[d.Near.Metres()] < 2 || met[d.Far.Metres()] < 2 {
		t.Errorf("pieces at their depths: %v, want one at 9 m and several at %.2f and %.2f m", met, d.Near.Metres(), d.Far.Metres())
	}
}

func TestChordOfASquare(t *testing.T) {
	square := []geom.Vec2{{X: -1, Y: -1}, {X: 1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}}
	for _, c := range []struct {
		p, along  geom.Vec2
		from, end float64
	}{
		{geom.Vec2{}, geom.Vec2{X: 1}, -1, 1},
		{geom.Vec2{X: 0.5, Y: 3}, geom.Vec2{Y: -1}, 2, 4},
		{geom.Vec2{X: 5}, geom.Vec2{Y: 1}, 0, 0},
	} {
		if from, end := chord(square, c.p, c.along); math.Abs(from-c.from) > 1e-12 || math.Abs(end-c.end) > 1e-12 {
			t.Errorf("from %v along %v: %g to %g, want %g to %g", c.p, c.along, from, end, c.from, c.end)
		}
	}
}

package frame

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
)

// What a pane mirrors is the stands behind the camera: uneven, on average as bright as the
// numbers say, and from the middle of a picture that is square on straight behind the hole.
func TestThePaneMirrorsTheStandsBehind(t *testing.T) {
	s := shot(t, byPane(0.02, 0.3))
	const w, h = 240, 160
	m := s.mirrored(w, h, newKernels())
	rows, sc := m.rows(w), s.scatter(m.im)
	sum, squares := 0.0, 0.0
	for y := range h {
		at := rows(y)
		for x := range 3 * w {
			v := float64(at(sc, 4*(x/3)+x%3))
			sum, squares = sum+v, squares+v*v
		}
	}
	const n = 3 * w * h
	mean := sum / n
	if spread := math.Sqrt(squares/n - mean*mean); math.Abs(mean-1) > 0.05 || spread < 0.1 {
		t.Errorf("mean %.3f of what is told, spread %.3f", mean, spread)
	}
	if (*mirror)(nil).rows(w)(3)(nil, 5) != 1 {
		t.Error("without a picture of the stands they are not even")
	}
}

// The scuffs before the lens take light softly: from no place more than all of them do, more of
// a worn pane than of a new one, and none of what the numbers tell.
func TestScuffsBeforeTheLens(t *testing.T) {
	if s := shot(t, byPane(0.01, 0.1)); len(s.marks) != 0 || s.unmarked(0, 0) != 1 {
		t.Errorf("a new pane has %d scuffs", len(s.marks))
	}
	s := shot(t, byPane(0.1, 0.1))
	if len(s.marks) != mostMarks {
		t.Errorf("a worn pane has %d scuffs", len(s.marks))
	}
	// One across the whole pupil's middle takes at least the part that its bar covers.
	u, nose := s.ray(0, 0), s.View.Pose.Nose
	foot := nose.Add(u.Scale((-s.Case.Thick - nose.Z) / u.Z))
	s.marks = []mark{{geom.Vec2{X: foot.X, Y: foot.Y}, geom.Vec2{X: 1}}}
	if got := s.unmarked(0, 0); got >= 1 || got < 1-markTakes {
		t.Errorf("behind a scuff %g of the light", got)
	}
	if far := s.unmarked(0, 0.9); far < s.unmarked(0, 0) {
		t.Errorf("beside it %g", far)
	}
}

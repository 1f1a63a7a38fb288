package puck

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// clearBehind is the share that passes and the sector behind a common hole in
// the middle of a flat pane there.
func clearBehind(t testing.TB, a arena.Arena, shots []Shot, at, height unit.Length) (float64, Sector) {
	t.Helper()
	open := usual(t)
	p := glass.Pane{From: at - 2*unit.Foot, Width: 4 * unit.Foot, Height: 2}
	sum := newTally(open, NewOrientations(orientations))
	sum.add(shots, facing(a, arena.Opening{Pane: unit.Known(p)})(at, height), goals(a.Rink))
	return sum.share, sum.sector(height, 0, open.AnyLimit())
}

// apart is by how much two sectors differ, in degrees and in metres.
func apart(a, b Sector) (deg, m float64) {
	deg = max(math.Abs((a.From - b.From).Degrees()), math.Abs((a.To - b.To).Degrees()))
	for _, l := range [][2]unit.Length{{a.Typical, b.Typical}, {a.Far, b.Far}, {a.Farthest, b.Farthest}} {
		m = max(m, math.Abs((l[0] - l[1]).Metres()))
	}
	return deg, m
}

// The shots have no side: a hole mirrored along the rink has the mirrored
// sector and the same share. One moved by an inch has nearly the same sector;
// what moves it most is a goal's frame that comes into a place's way.
func TestSectorOfMirroredAndMovedHoles(t *testing.T) {
	a := demo(t)
	shots, err := DefaultShots(a.Rink)
	if err != nil {
		t.Fatal(err)
	}
	per := a.Rink.Perimeter()
	const places = 60
	worstDeg, worstM := 0.0, 0.0
	for i := range places {
		at, height := per*unit.Length((float64(i)+0.37)/places), 1.3+0.5*unit.Length(i%7)/6
		share, s := clearBehind(t, a, shots, at, height)
		back, m := clearBehind(t, a, shots, per-at, height)
		m.From, m.To = -m.To, -m.From
		if deg, far := apart(s, m); !s.Passing || math.Abs(share/back-1) > 1e-6 || deg > 1e-6 || far > 1e-6 {
			t.Errorf("at %.2f m: share %g, %+v; of its mirror image %g, %+v", at.Metres(), share, s, back, m)
		}
		_, next := clearBehind(t, a, shots, at+unit.Inch, height)
		deg, far := apart(s, next)
		if deg > 2 || far > 1 {
			t.Errorf("at %.2f m: %+v; an inch on %+v", at.Metres(), s, next)
		}
		worstDeg, worstM = max(worstDeg, deg), max(worstM, far)
	}
	t.Logf("an inch moves the sector by %.2f deg and %.2f m at most", worstDeg, worstM)
}

// A quantile stands between the values' middles and does not jump.
func TestQuantileByHand(t *testing.T) {
	v := merged([]weighted{{3, 1}, {1, 2}, {1 + 1e-12, 1}, {2, 4}}) // 3 of 8 at 1, 4 at 2, 1 at 3
	for q, want := range map[float64]float64{1.5 / 8: 1, 3.25 / 8: 1.5, 5.0 / 8: 2, 6.25 / 8: 2.5, 7.5 / 8: 3, 1: 3} {
		if got := quantile(v, q); math.Abs(got-want) > 1e-9 {
			t.Errorf("quantile %g: %g, want %g", q, got, want)
		}
	}
}

package puck

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// clearBehind is what passes, and the sector behind a common hole in the middle
// of a flat pane there.
func clearBehind(t testing.TB, a arena.Arena, shots []Shot, at, height unit.Length) (*tally, Sector) {
	t.Helper()
	open := usual(t)
	p := glass.Pane{From: at - 2*unit.Foot, Width: 4 * unit.Foot, Height: 2}
	sum := newTally(open, NewOrientations(orientations))
	sum.add(shots, facing(a, arena.Opening{Pane: unit.Known(p)})(at, height), goals(a))
	return sum, sum.sector(height, 0, open.AnyLimit())
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
// sector and the same share. One moved by an inch has nearly the same: the bounds
// of the one hold the shares of the other to a hundredth. (In degrees they may
// differ by more where a goal's frame leaves a gap between two groups of bearings.)
func TestSectorOfMirroredAndMovedHoles(t *testing.T) {
	a := demo(t)
	shots, err := DefaultShots(t.Context(), a.Rink, a.Game)
	if err != nil {
		t.Fatal(err)
	}
	per := a.Rink.Perimeter()
	const places = 60
	worstShare, worstM := 0.0, 0.0
	for i := range places {
		at, height := per*unit.Length((float64(i)+0.37)/places), 1.3+0.5*unit.Length(i%7)/6
		sum, s := clearBehind(t, a, shots, at, height)
		back, m := clearBehind(t, a, shots, per-at, height)
		m.From, m.To = -m.To, -m.From
		if deg, far := apart(s, m); !s.Passing || math.Abs(sum.share/back.share-1) > 1e-6 || deg > 1e-6 || far > 1e-6 {
			t.Errorf("at %.2f m: share %g, %+v; of its mirror image %g, %+v", at.Metres(), sum.share, s, back.share, m)
		}
		beside, next := clearBehind(t, a, shots, at+unit.Inch, height)
		_, far := apart(s, next)
		v := beside.bearings()
		share := func(x unit.Angle) float64 { return below(v, x.Radians()) / below(v, math.Inf(1)) }
		off := max(math.Abs(share(s.From)-lowTail), math.Abs(share(s.To)-highTail))
		if off > 0.01 || far > 0.5 {
			t.Errorf("at %.2f m: %+v; an inch on %+v: shares off by %.3f", at.Metres(), s, next, off)
		}
		worstShare, worstM = max(worstShare, off), max(worstM, far)
	}
	t.Logf("an inch moves the shares by %.4f and the distances by %.2f m at most", worstShare, worstM)
}

// By hand: 2 of 8 spread from 0 to 2, 4 from 1 to 3, 2 at 4.
func TestQuantileByHand(t *testing.T) {
	v := []weighted{{4, 2, 0}, {1, 2, 1}, {2, 4, 1}}
	for q, want := range map[float64]float64{0.5 / 8: 0.5, 1.0 / 8: 1, 2.5 / 8: 1.5, 4.0 / 8: 2, 5.0 / 8: 2.5, 7.0 / 8: 4, 1: 4} {
		if got := quantile(v, q); math.Abs(got-want) > 1e-9 {
			t.Errorf("quantile %g: %g, want %g", q, got, want)
		}
	}
}

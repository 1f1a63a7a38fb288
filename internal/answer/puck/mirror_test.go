package puck

import (
	"math"
	"testing"

	"pgregory.net/rapid"

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
	return sum, sum.sector(height, 0, open.AnyLimit(), DefaultOptions().GameShots)
}

// apart is by how much two sectors differ, in degrees and in metres.
func apart(a, b Sector) (deg, m float64) {
	deg = max(math.Abs((a.From - b.From).Degrees()), math.Abs((a.To - b.To).Degrees()))
	for _, l := range [][2]unit.Length{{a.Clear, b.Clear}, {a.Typical, b.Typical}, {a.Far, b.Far}, {a.Farthest, b.Farthest}} {
		m = max(m, math.Abs((l[0] - l[1]).Metres()))
	}
	return deg, m
}

// The shots have no side: a hole mirrored along the rink has the mirrored sector and the
// same share. One moved by an inch has nearly the same: an inch turns the way from a shot 3 m
// off by half a degree and shifts shares between two groups of bearings by another half. Past
// a bound fewer come than once in so many games.
func TestSectorOfMirroredAndMovedHoles(t *testing.T) {
	a := demo(t)
	shots, err := DefaultShots(t.Context(), a.Rink, a.Game)
	if err != nil {
		t.Fatal(err)
	}
	per := a.Rink.Perimeter()
	const places, mostDegrees = 60, 1.1
	worstShare, worstDeg, worstM := 0.0, 0.0, 0.0
	for i := range places {
		at, height := per*unit.Length((float64(i)+0.37)/places), 1.3+0.5*unit.Length(i%7)/6
		sum, s := clearBehind(t, a, shots, at, height)
		back, m := clearBehind(t, a, shots, per-at, height)
		m.From, m.To = -m.To, -m.From
		if deg, far := apart(s, m); !s.Passing || math.Abs(sum.share/back.share-1) > 1e-6 || deg > 1e-6 || far > 1e-6 {
			t.Errorf("at %.2f m: share %g, %+v; of its mirror image %g, %+v", at.Metres(), sum.share, s, back.share, m)
		}
		beside, next := clearBehind(t, a, shots, at+unit.Inch, height)
		deg, far := apart(s, next)
		off := max(math.Abs(part(sum, s.From)-part(beside, s.From)), math.Abs(part(sum, s.To)-part(beside, s.To)))
		if off > 0.01 || deg > mostDegrees || far > 0.5 {
			t.Errorf("at %.2f m: %+v; an inch on %+v: shares off by %.3f", at.Metres(), s, next, off)
		}
		if low, high := rates(sum, s); s.Bounded() && max(low, high) > (1+1e-9)/GamesClear {
			t.Errorf("at %.2f m: %+v leaves out %.3g and %.3g an hour", at.Metres(), s, low, high)
		}
		worstShare, worstDeg, worstM = max(worstShare, off), max(worstDeg, deg), max(worstM, far)
	}
	t.Logf("an inch moves the shares by %.4f, the bounds by %.2f deg and the distances by %.2f m at most", worstShare, worstDeg, worstM)
}

// part is the share of the passes below a bearing.
func part(sum *tally, x unit.Angle) float64 {
	v := sum.bearings(1)
	return below(v, x.Radians()) / below(v, math.Inf(1))
}

// rates are the pucks in an hour of play past the two bearings of a sector.
func rates(sum *tally, s Sector) (low, high float64) {
	v := sum.bearings(DefaultOptions().GameShots)
	return below(v, s.From.Radians()), below(v, math.Inf(1)) - below(v, s.To.Radians())
}

// Where the demo's sector once leapt by 8 to 10 degrees from one inch to the next: just
// before the side boards at which pucks are cleared, and at the red line. A hole moved twelve
// times by an inch turns the bounds by no more than twelve inches of it, each its own part.
func TestSectorFollowsTheHole(t *testing.T) {
	a := demo(t)
	shots, err := DefaultShots(t.Context(), a.Rink, a.Game)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ from, most float64 }{{23.03, 1.1}, {0.49, 0.2}, {31, 0.2}} {
		_, last := clearBehind(t, a, shots, unit.Length(c.from), 1.5)
		for k := 1; k <= 12; k++ {
			_, next := clearBehind(t, a, shots, unit.Length(c.from)+unit.Length(k)*unit.Inch, 1.5)
			if deg, _ := apart(last, next); deg > c.most {
				t.Errorf("inch %d from %g m on: %.2f deg, want %g at most", k, c.from, deg, c.most)
			}
			last = next
		}
	}
}

// By hand: the outermost eighth of 2 spread from 0 to 2 and 6 from 1 to 3 is 1 of the 6,
// from 8/3 to 3: its mean is 17/6; on the other side half of the 2, from 0 to 1.
func TestOutermostByHand(t *testing.T) {
	v := []weighted{{1, 2, 1}, {2, 6, 1}}
	if got := outermost(v, 1, -9); math.Abs(got-17.0/6) > 1e-9 {
		t.Errorf("highest eighth: mean %g, want %g", got, 17.0/6)
	}
	if got := -outermost(turned(v), 1, -9); math.Abs(got-0.5) > 1e-9 {
		t.Errorf("lowest eighth: mean %g, want 0.5", got)
	}
	// 2 at 1 and 6 at 2 on average; 4 are lacking, and count -9.
	if got := outermost(v, 12, -9); math.Abs(got-(2+12-36)/12.0) > 1e-9 {
		t.Errorf("with 4 of 12 lacking: mean %g, want -22/12", got)
	}
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

// larger is a place on the glass, a hole there, and how much wider and higher another is.
type larger struct{ at, height, w, h, wider, higher float64 }

// holes draws them: all round the rink, but most where pucks fly; sizes in millimetres.
var holes = rapid.Custom(func(t *rapid.T) larger {
	draw := func(from, to float64, name string) float64 { return rapid.Float64Range(from, to).Draw(t, name) }
	part := float64(rapid.SampledFrom([]int{2, 9, 12, 15, 18, 22, 25, 28, 35, 40, 61, 66, 70, 77, 83, 88, 92, 97}).Draw(t, "hundredth")) / 100
	return larger{min(1, part+draw(0, 0.02, "station")), draw(1.2, 2.2, "height"), draw(100, 220, "width"), draw(70, 200, "tall"), draw(0, 80, "wider"), draw(0, 80, "higher")}
})

// A larger hole never has a smaller guard: no less of what is struck passes, no limit is
// narrower, and its sector holds the smaller one's.
func TestLargerHoleIsNoLessGuarded(t *testing.T) {
	a := demo(t)
	shots, err := DefaultShots(t.Context(), a.Rink, a.Game)
	if err != nil {
		t.Fatal(err)
	}
	axes, per, bounded := NewOrientations(orientations), a.Rink.Perimeter(), 0
	const pairs, slack = 60, 1e-8 // radians and metres
	for seed := range pairs {
		c := holes.Example(seed)
		at := per * unit.Length(c.at)
		p := glass.Pane{From: at - 2*unit.Foot, Width: 4 * unit.Foot, Height: 2}
		way := facing(a, arena.Opening{Pane: unit.Known(p)})(at, unit.Length(c.height))
		guard := func(w, h float64) (*tally, Sector) {
			open := opening(t, w, h, 12.7)
			sum := newTally(open, axes)
			sum.add(shots, way, goals(a))
			return sum, sum.sector(way.height, 0, open.AnyLimit(), DefaultOptions().GameShots)
		}
		small, s := guard(c.w, c.h)
		large, l := guard(c.w+c.wider, c.h+c.higher)
		if large.share < small.share || large.touching < small.touching || l.HalfAngle.Or(0) < s.HalfAngle.Or(0) {
			t.Errorf("%+v: share %g, limit %v; the smaller %g, %v", c, large.share, l.HalfAngle, small.share, s.HalfAngle)
		}
		if l.Clear < s.Clear-slack || s.Bounded() && (l.From > s.From+slack || l.To < s.To-slack) {
			t.Errorf("%+v: sector %+v, of the smaller hole %+v", c, l, s)
		}
		if s.Bounded() {
			bounded++
		}
	}
	if bounded < pairs/2 {
		t.Errorf("%d of %d holes have a sector", bounded, pairs)
	}
}

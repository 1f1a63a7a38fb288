package sight

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

// A goal of the North American book at end B: posts 0.9144 m off the axis,
// crossbar at 1.2192 m, net 1 m deep behind the line at 27 m.
func goalByHand() goalBox {
	l := play.Layout{GoalX: 27, GoalDepth: 1, GoalHalf: 0.9144, GoalHeight: 1.2192}
	return goalBoxes(l)[0]
}

func TestNetByHand(t *testing.T) {
	g := goalByHand()
	for _, c := range []struct {
		name  string
		eye   Eye
		x, y  float64
		z     float64
		layer int
	}{
		{"from behind through the back, out of the mouth", Eye{At: geom.Vec2{X: 30}, Z: 1}, 25, 0, 1, 1},
		{"from behind over the net", Eye{At: geom.Vec2{X: 30}, Z: 3}, 20, 0, 2.5, 0},
		{"in by the top, out of the mouth", Eye{At: geom.Vec2{X: 29}, Z: 2}, 26, 0, 0.5, 1},
		{"through both sides", Eye{At: geom.Vec2{X: 27.5, Y: 5}, Z: 1}, 27.5, -5, 1, 2},
		{"in by a side, out of the mouth", Eye{At: geom.Vec2{X: 28, Y: 2}, Z: 1}, 25, -1.5, 1, 1},
		{"past the goal", Eye{At: geom.Vec2{X: 30, Y: 5}, Z: 1}, 20, 5, 1, 0},
		{"from the front, subject before the goal", Eye{At: geom.Vec2{X: 10}, Z: 1}, 25, 0, 1, 0},
	} {
		got := g.net(&c.eye, &subject{x: c.x, y: c.y}, c.z, 0.75)
		if want := math.Pow(0.75, float64(c.layer)); math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: %g is left, want %g", c.name, got, want)
		}
	}
}

func TestCrossbarByHand(t *testing.T) {
	g := goalByHand()
	// Looking along -x from 3 m behind the line at a subject 6 m before it, from
	// 1.5 m: the bar is seen on the subject's plane at 1.5 + (1.2192 - 1.5) * 3.
	eye := Eye{At: geom.Vec2{X: 30}, Z: 1.5}
	bar := g.bar(&eye, &subject{x: 21}, -1, 0)
	if want := 1.5 + (1.2192-1.5)*3; !bar.ok || math.Abs(bar.mid-want) > 1e-12 {
		t.Fatalf("the bar hides %+v, want it at %g", bar, want)
	}
	if math.Abs(barRadius-rink.PostRadius.Metres()) > 1e-4 {
		t.Errorf("pipes of %g m here, of %v in the rink", barRadius, rink.PostRadius)
	}
	if math.Abs(bar.half-3*barRadius) > 1e-12 || math.Abs(bar.u2-3*0.9144) > 1e-12 || math.Abs(bar.u1+3*0.9144) > 1e-12 {
		t.Errorf("the bar's shadow is %+v", bar)
	}
	// On a rectangle 0.5 wide from 0.5 to 1: 6 radii of its half metre.
	if got, want := bar.covers(0.25, 0.5, 1), 6*barRadius/0.5; math.Abs(got-want) > 1e-12 {
		t.Errorf("covers %g, want %g", got, want)
	}
	if got := bar.covers(0.25, 1.5, 2); got != 0 {
		t.Errorf("covers %g of what is above it", got)
	}
	if g.bar(&eye, &subject{x: 28}, -1, 0).ok {
		t.Error("a bar behind the subject hides it")
	}
}

// Both reach the score: a subject before the goal, seen from behind it on the
// rink's axis, and with the goal's frame taken away.
func TestGoalLowersWhatIsSeenThroughIt(t *testing.T) {
	a, k, _ := ring(t, 4)
	s := scorer(t, a, k)
	lay := play.LayoutOf(a.Rink)
	eye := Eye{At: geom.Vec2{X: lay.HalfLength, Y: 0.3}, Z: 1.2, In: geom.Vec2{X: -1}, Along: geom.Vec2{Y: 1}}
	b := newBlock(s, scene(lay, lay.GoalX-3, 0.3, 0, 1.8))
	b.load(0, 1)
	d := eye.At.X - b.subject[0].x
	seen := b.open(&view{eye: eye}, 0, -1, 0, d)
	// The trunk is seen through the back of the net, the head over the bar.
	head := 1.0
	trunk := s.judge.NetPass * (1 - b.goals[0].bar(&eye, &b.subject[0], -1, 0).covers(trunkHalf, trunkLow*1.8, 1.8-headHigh))
	if z := (1.8 - headHigh + 1.8) / 2; b.goals[0].net(&eye, &b.subject[0], z, 0.5) != 1 {
		t.Fatal("the head is not seen over the net")
	}
	if want := (head + trunk) / 2; math.Abs(seen-want) > 1e-6 {
		t.Errorf("through the goal %g is seen, want %g", seen, want)
	}
	b.goals = nil
	if free := b.open(&view{eye: eye}, 0, -1, 0, d); free != 1 {
		t.Errorf("without the goal %g is seen, want 1", free)
	}
}

// A net at the side boards hides what one at the end does, a quarter turn on.
func TestNetsOfGamesAcrossTheIce(t *testing.T) {
	end := goalByHand()
	l := play.Layout{GoalX: 27, Across: 20, GoalDepth: 1, GoalHalf: 0.9144, GoalHeight: 1.2192}
	var side goalBox
	for _, g := range goalBoxes(l) {
		if g.Line == (geom.Vec2{X: 20, Y: 27}) {
			side = g
		}
	}
	turned := func(x, y float64) geom.Vec2 { return geom.Vec2{X: 20 - y, Y: x} }
	for _, c := range [][4]float64{{30, 0.2, 25, 0.1}, {28, 2, 25, -1.5}, {27.5, 5, 27.4, -5}, {30, 1, 21, 0}} {
		eye, to := Eye{At: geom.Vec2{X: c[0], Y: c[1]}, Z: 1.1}, &subject{x: c[2], y: c[3]}
		eye2, at := Eye{At: turned(c[0], c[1]), Z: 1.1}, turned(c[2], c[3])
		to2 := &subject{x: at.X, y: at.Y}
		if got, want := side.net(&eye2, to2, 0.9, 0.75), end.net(&eye, to, 0.9, 0.75); math.Abs(got-want) > 1e-12 {
			t.Errorf("from %v to %v the net at the side leaves %g, that at the end %g", c[:2], c[2:], got, want)
		}
		u := geom.Vec2{X: c[2] - c[0], Y: c[3] - c[1]}.Unit()
		got, want := side.bar(&eye2, to2, -u.Y, u.X), end.bar(&eye, to, u.X, u.Y)
		if got.ok != want.ok || math.Abs(got.mid-want.mid) > 1e-9 || math.Abs(got.u1-want.u1) > 1e-9 || math.Abs(got.u2-want.u2) > 1e-9 {
			t.Errorf("from %v to %v the bar at the side hides %+v, that at the end %+v", c[:2], c[2:], got, want)
		}
	}
}

package sight

import (
	"context"
	"math"
	"runtime"
	"slices"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/play"
)

func scored(t testing.TB, s *Scorer, holes []glass.Hole, set *play.Set) Scores {
	t.Helper()
	out, err := s.Score(context.Background(), holes, set, nil)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestScoresLieInRange(t *testing.T) {
	a, k, holes := ring(t, 30)
	got := scored(t, scorer(t, a, k), holes, momentsOf(t, a, 1, 3000))
	some := 0
	for _, v := range got.Value {
		if !(v >= 0 && v <= 1) {
			t.Fatalf("score %g", v)
		}
		if v > 0.5 {
			some++
		}
	}
	if some < 1000 {
		t.Errorf("only %d of %d scores above 0.5", some, len(got.Value))
	}
}

func TestScoresDoNotDependOnCores(t *testing.T) {
	a, k, holes := ring(t, 12)
	set := momentsOf(t, a, 2, 2100) // no whole number of blocks
	many := scored(t, scorer(t, a, k), holes, set)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	one := scored(t, scorer(t, a, k), holes, set)
	if !slices.Equal(one.Value, many.Value) {
		t.Error("one core and several give different scores")
	}
}

func TestScoringAllocatesNothing(t *testing.T) {
	a, k, holes := ring(t, 4)
	set, s := momentsOf(t, a, 3, blockSize), scorer(t, a, k)
	openings := make([]arena.Opening, len(holes))
	for i, h := range holes {
		var err error
		if openings[i], err = a.OpeningOf(h); err != nil {
			t.Fatal(err)
		}
	}
	views, err := s.views(openings)
	if err != nil {
		t.Fatal(err)
	}
	b, out := newBlock(s, set), make([]float32, blockSize)
	b.load(0, blockSize)
	if n := testing.AllocsPerRun(20, func() { b.score(&views[1], out) }); n != 0 {
		t.Errorf("%g allocations for each hole and block", n)
	}
}

// Half a turn of the rink, hole and moments alike, changes nothing.
func TestScoresTurnWithTheRink(t *testing.T) {
	a, k, holes := ring(t, 40)
	set := momentsOf(t, a, 4, 1500)
	turned := play.NewSet(set.Layout, set.Len())
	for i := range set.Len() {
		m := set.At(i)
		m.Puck.X, m.Puck.Y = -m.Puck.X, -m.Puck.Y
		for p := range m.People {
			q := &m.People[p]
			q.X, q.Y, q.Heading = -q.X, -q.Y, math.Remainder(q.Heading+math.Pi, 2*math.Pi)
		}
		turned.Put(i, m)
	}
	s := scorer(t, a, k)
	here, there := scored(t, s, holes, set), scored(t, s, holes, turned)
	n := 0
	for h := range holes {
		for m, v := range here.Row(h) {
			if w := there.Row((h + 20) % 40)[m]; math.Abs(float64(v-w)) > 2e-4 {
				t.Fatalf("hole %d, moment %d: %g here, %g turned", h, m, v, w)
			}
			n++
		}
	}
	if n < 60_000 {
		t.Fatal("too few compared")
	}
}

func TestOpenIceNeverLowersAScore(t *testing.T) {
	a, k, holes := ring(t, 20)
	set := momentsOf(t, a, 6, 800)
	alone := play.NewSet(set.Layout, set.Len())
	for i := range set.Len() {
		m := set.At(i)
		for p := range m.People {
			if p != m.Subject {
				m.People[p].X, m.People[p].Y = 500, 500 // sent off
			}
		}
		alone.Put(i, m)
	}
	s := scorer(t, a, k)
	crowd, free := scored(t, s, holes, set), scored(t, s, holes, alone)
	hidden := 0
	for i, v := range crowd.Value {
		if v > free.Value[i]+1e-6 {
			t.Fatalf("score %g with people in the way, %g without", v, free.Value[i])
		}
		if v < free.Value[i]-0.05 {
			hidden++
		}
	}
	if hidden < 1000 {
		t.Errorf("people hid only %d of %d views", hidden, len(crowd.Value))
	}
}

// scene makes one moment with everybody but the subject out of the way.
func scene(r play.Layout, x, y, heading, height float64) *play.Set {
	set := play.NewSet(r, 1)
	m := play.Moment{End: 1, Weight: 1}
	for p := range m.People {
		m.People[p] = play.Person{X: 500, Y: 500, Height: 1.8}
	}
	m.People[0] = play.Person{X: x, Y: y, Heading: heading, Height: height}
	set.Put(0, m)
	return set
}

// The factors one by one, from the middle of the side boards (a hole on the
// red line, looking along +y).
func TestFactorsByHand(t *testing.T) {
	a, k, _ := ring(t, 4)
	h := glass.Hole{ID: "M", Pane: "M", Station: 0, Height: 1.5, Size: unit.Size{W: 0.1397, H: 0.1143}}
	a.Panes = append([]glass.Pane{}, glass.Pane{ID: "M", From: -0.5, Width: 1, Height: 2, Thickness: unit.Known[unit.Length](0.0127)})
	s := scorer(t, a, k)
	lay := play.LayoutOf(a.Rink)
	score := func(x, y, heading, height float64) float64 {
		return float64(scored(t, s, []glass.Hole{h}, scene(lay, x, y, heading, height)).Value[0])
	}
	near := -lay.HalfWidth + 8 // 8 m from the boards, straight ahead
	if got := score(0, near, -math.Pi/2, 1.8); got != 1 {
		t.Errorf("facing the lens at 8 m: %g, want 1", got)
	}
	if got := score(0, near, math.Pi/2, 1.8); got != 0 {
		t.Errorf("seen from behind: %g, want 0", got)
	}
	// A quarter turn: (cos 90 - cos 100) / (cos 30 - cos 100).
	want := math.Cos(100*math.Pi/180) / (math.Cos(100*math.Pi/180) - math.Cos(30*math.Pi/180))
	if got := score(0, near, 0, 1.8); math.Abs(got-want) > 1e-3 {
		t.Errorf("in profile: %g, want %g", got, want)
	}
	if got := score(20, -lay.HalfWidth+0.5, math.Pi, 1.8); got != 0 {
		t.Errorf("along the boards, outside every lens's reach: %g, want 0", got)
	}
	// The tele zoom alone at 200 mm, 60 m away, would fill 1.8 * .2 / (60 * .024) = 0.25.
	a.Lenses = []string{"70-200"}
	tele := scorer(t, a, k)
	b := newBlock(tele, scene(lay, 0, 0, 0, 1.8))
	o, err := a.OpeningOf(h)
	if err != nil {
		t.Fatal(err)
	}
	aims, err := tele.tracer.trace(o)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := b.size(aims, geom.Vec3{Z: 1}, 1.8, 60), (0.25-0.10)/(0.35-0.10); math.Abs(got-want) > 1e-9 {
		t.Errorf("size factor %g, want %g", got, want)
	}
	// At 2 m the wide end, upright: 1.8 * .07 / (2 * .036) = 1.75 frames: 1/1.75 is left.
	if got, want := b.size(aims, geom.Vec3{Z: 1}, 1.8, 2), 1/1.75; math.Abs(got-want) > 1e-9 {
		t.Errorf("size factor near %g, want %g", got, want)
	}
	if got := b.size(aims, geom.Vec3{Z: 1}, 1.8, 1); got != 0 {
		t.Errorf("nearer than the lens focuses: %g, want 0", got)
	}
}

// One body before another, by hand: the near one's sides cast on the far plane.
func TestShadowByHand(t *testing.T) {
	var s shadows
	s.cast(5, 0, 0.3, 1.0, 1.5, 10) // axis on the sight line, half way
	side := 10 * 0.3 / math.Sqrt(25-0.09)
	if math.Abs(s.u1[0]+side) > 1e-12 || math.Abs(s.u2[0]-side) > 1e-12 {
		t.Errorf("sides %g, %g, want +-%g", s.u1[0], s.u2[0], side)
	}
	if math.Abs(s.v[0]-0.5) > 1e-12 { // 1.5 + (1.0 - 1.5) * 2
		t.Errorf("top %g, want 0.5", s.v[0])
	}
	// A rectangle 2 wide, 0..1 high: the shadow covers 2 side by 0.5 of it.
	if got, want := s.left(1, 0, 1, math.Inf(-1)), 1-side*0.5; math.Abs(got-want) > 1e-12 {
		t.Errorf("left %g, want %g", got, want)
	}
	if got := s.left(1, 0, 1, 1.2); got != 0 {
		t.Errorf("below the boards' edge: %g, want 0", got)
	}
}

func TestScorerRefuses(t *testing.T) {
	a, k, holes := ring(t, 2)
	bad := DefaultJudgement()
	bad.FaceFull = bad.FaceMost
	if _, err := NewScorer(a, k, bad); err == nil {
		t.Error("equal face angles: no error")
	}
	b := a
	b.Lenses = []string{"no such lens"}
	if _, err := NewScorer(b, k, DefaultJudgement()); err == nil {
		t.Error("no lens in use: no error")
	}
	lost := holes[0]
	lost.Pane, lost.Station = "nowhere", holes[0].Station+5
	if _, err := scorer(t, a, k).Score(context.Background(), []glass.Hole{lost}, momentsOf(t, a, 1, 10), nil); err == nil {
		t.Error("a hole in no pane: no error")
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := scorer(t, a, k).Score(ctx, holes, momentsOf(t, a, 1, 1000), nil); err == nil {
		t.Error("ended at once: no error")
	}
}

// A wider hole never sees less: its aims hold those of the narrower one.
func TestWiderHoleNeverScoresLess(t *testing.T) {
	a, k, holes := ring(t, 10)
	wide := slices.Clone(holes)
	for i := range wide {
		wide[i].Size.W += 2 * unit.Inch
		wide[i].Size.H += 1 * unit.Inch
	}
	s, set := scorer(t, a, k), momentsOf(t, a, 8, 1000)
	narrow, more := scored(t, s, holes, set), scored(t, s, wide, set)
	grown := 0
	for i, v := range narrow.Value {
		if more.Value[i] < v-1e-6 {
			t.Fatalf("view %d: %g through the wider hole, %g through the narrower", i, more.Value[i], v)
		}
		if more.Value[i] > v {
			grown++
		}
	}
	if grown == 0 {
		t.Error("the wider hole never helped")
	}
}

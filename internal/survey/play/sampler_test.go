package play

import (
	"context"
	"errors"
	"math"
	"runtime"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

func standard(t testing.TB, name string) rink.Rink {
	t.Helper()
	r, err := rink.Standard(name)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func sample(t testing.TB, r rink.Rink, a Assumptions, seed uint64, n int) *Set {
	t.Helper()
	s, err := Sample(t.Context(), r, a, seed, n)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// sound fails the test when a moment breaks what the sampler promises.
func sound(t interface{ Fatalf(string, ...any) }, lay Layout, m Moment) {
	if !(m.Weight > 0) || m.Subject < 0 || m.Subject >= People || (m.End != 1 && m.End != -1) {
		t.Fatalf("%s: weight %v, subject %d, end %d", m.Phase, m.Weight, m.Subject, m.End)
	}
	if lay.Clearance(m.Puck.X, m.Puck.Y) < 0 {
		t.Fatalf("%s: puck off the ice at (%.2f, %.2f)", m.Phase, m.Puck.X, m.Puck.Y)
	}
	for a, p := range m.People {
		if lay.Clearance(p.X, p.Y) < Radius(a) {
			t.Fatalf("%s: person %d touches the boards at (%.2f, %.2f)", m.Phase, a, p.X, p.Y)
		}
		if lay.inGoal(p.X, p.Y, Radius(a)-1e-3) {
			t.Fatalf("%s: person %d stands in a goal at (%.2f, %.2f)", m.Phase, a, p.X, p.Y)
		}
		if !(p.Height > 0.6 && p.Height < 2.3) || math.Abs(p.Heading) > math.Pi+1e-6 {
			t.Fatalf("%s: person %d has height %.2f, heading %.2f", m.Phase, a, p.Height, p.Heading)
		}
		for b := range a {
			q := m.People[b]
			if d := math.Hypot(p.X-q.X, p.Y-q.Y); d < Radius(a)+Radius(b) {
				t.Fatalf("%s: persons %d and %d overlap, %.3f m apart", m.Phase, a, b, d)
			}
		}
	}
}

func TestMomentsAreSound(t *testing.T) {
	for _, name := range []string{"north-american", "international"} {
		r := standard(t, name)
		s := sample(t, r, DefaultAssumptions(), 7, 20_000)
		for i := range s.Len() {
			sound(t, s.Layout, s.At(i))
		}
	}
}

// No rush is whistled off: while the puck is short of the blue line, nobody of
// the attacking team is past it.
func TestNoRushIsOffside(t *testing.T) {
	s := sample(t, standard(t, "north-american"), DefaultAssumptions(), 3, 20_000)
	before := 0
	for i := range s.Len() {
		m := s.At(i)
		end := float64(m.End)
		if m.Phase != Rush || m.Puck.X*end >= s.Layout.BlueX {
			continue
		}
		before++
		for k := Attackers; k < Defenders; k++ {
			if x := m.People[k].X*end - s.Layout.BlueX; x > 0 {
				t.Fatalf("moment %d: attacker %d stands %.2f m past the blue line, the puck %.2f m short of it", i, k, x, s.Layout.BlueX-m.Puck.X*end)
			}
		}
	}
	if before < 300 {
		t.Errorf("only %d rushes short of the line", before)
	}
}

// Who is pinned where the boards turn into the end boards often faces these: a
// hole behind the goal line then sees the face.
func TestAPinnedCarrierFacesTheEndBoards(t *testing.T) {
	s := sample(t, standard(t, "north-american"), DefaultAssumptions(), 4, 50_000)
	carriers, facing := 0, 0
	for i := range s.Len() {
		m := s.At(i)
		x, y := m.Puck.X*float64(m.End), m.Puck.Y*float64(m.End)
		if m.Phase != ZonePlay || x < s.Layout.GoalX-3 || s.Layout.Clearance(x, y) >= 1 || math.Cos(s.Layout.outward(x, y)) < 0.7 || math.Abs(y) < 4 {
			continue
		}
		carriers++
		if float64(m.End)*math.Cos(float64(m.People[0].Heading)) > 0.9 {
			facing++
		}
	}
	if carriers < 300 || float64(facing) < 0.08*float64(carriers) {
		t.Errorf("of %d pinned carriers %d face the end boards", carriers, facing)
	}
}

// The way to the nearest boards, from places one metre along a normal inside them.
func TestOutwardMatchesTheRink(t *testing.T) {
	for _, name := range []string{"north-american", "international"} {
		r := standard(t, name)
		l := LayoutOf(r)
		for i := range 200 {
			at := r.Perimeter() * unit.Length(i) / 200
			n := r.Normal(at)
			p := r.Point(at).Add(n)
			if a := l.outward(p.X, p.Y); math.Abs(math.Cos(a)+n.X) > 1e-6 || math.Abs(math.Sin(a)+n.Y) > 1e-6 {
				t.Fatalf("%s, station %v: outward %.4f rad, normal %v", name, at, a, n)
			}
		}
	}
}

func TestMomentsAreSoundOnAnyRink(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := rapid.Float64Range(26, 70).Draw(t, "length")
		w := rapid.Float64Range(14, min(l, 34)).Draw(t, "width")
		c := rapid.Float64Range(1, w/2).Draw(t, "radius")
		r, err := rink.New(rink.Dimensions{Length: unit.Length(l), Width: unit.Length(w), CornerRadius: unit.Length(c)})
		if err != nil {
			t.Fatal(err)
		}
		s, err := Sample(t.Context(), r, DefaultAssumptions(), rapid.Uint64().Draw(t, "seed"), 60)
		if err != nil {
			t.Fatal(err)
		}
		for i := range s.Len() {
			sound(t, s.Layout, s.At(i))
		}
	})
}

func TestSameSeedSameMomentsOnAnyNumberOfCores(t *testing.T) {
	r := standard(t, "north-american")
	many := sample(t, r, DefaultAssumptions(), 3, 1000)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	one := sample(t, r, DefaultAssumptions(), 3, 1000)
	for i := range one.Len() {
		if one.At(i) != many.At(i) {
			t.Fatalf("moment %d differs between one core and several", i)
		}
	}
	more := sample(t, r, DefaultAssumptions(), 3, 1500)
	if more.At(999) != one.At(999) {
		t.Error("a longer list changes its first moments")
	}
	if other := sample(t, r, DefaultAssumptions(), 4, 1000); other.At(0) == one.At(0) && other.At(1) == one.At(1) {
		t.Error("another seed gives the same moments")
	}
}

func TestSharesAreKept(t *testing.T) {
	a := DefaultAssumptions()
	a.Share = [phases]float64{Rush: 1, ZonePlay: 0, NetFront: 3, FaceOff: 0, Celebration: 0, Bench: 1}
	s := sample(t, standard(t, "international"), a, 11, 50_000)
	var got [phases]float64
	for _, p := range s.Phase {
		got[p] += 1 / float64(s.Len())
	}
	for p, want := range [phases]float64{Rush: .2, NetFront: .6, Bench: .2} {
		// Four standard errors of a share at 50,000 draws are below 0.01.
		if math.Abs(got[p]-want) > 0.01 {
			t.Errorf("%s: share %.3f, want %.3f", Phase(p), got[p], want)
		}
	}
}

func TestEndsAlternateByPeriod(t *testing.T) {
	for period, home := range map[int]int{1: 1, 2: -1, 3: 1} {
		if got := (Ends{}).Attacks(0, period); got != home {
			t.Errorf("home, period %d: end %d, want %d", period, got, home)
		}
		if got := (Ends{}).Attacks(1, period); got != -home {
			t.Errorf("away, period %d: end %d, want %d", period, got, -home)
		}
	}
	s := sample(t, standard(t, "north-american"), DefaultAssumptions(), 5, 20_000)
	var b int
	for i := range s.Len() {
		if int(s.End[i]) != (Ends{}).Attacks(int(s.Team[i]), int(s.Period[i])) {
			t.Fatalf("moment %d: end does not follow from team and period", i)
		}
		if s.End[i] > 0 {
			b++
		}
	}
	if share := float64(b) / float64(s.Len()); math.Abs(share-0.5) > 0.02 {
		t.Errorf("end B has %.3f of the moments, want about half", share)
	}
}

func TestHomeWeight(t *testing.T) {
	a := DefaultAssumptions()
	a.HomeWeight, a.HomeShare = 3, 0.25
	s := sample(t, standard(t, "north-american"), a, 5, 8000)
	home := 0
	for i := range s.Len() {
		want := a.Weight[s.Phase[i]]
		if s.Team[i] == 0 {
			home++
			want *= 3
		}
		if math.Abs(float64(s.Weight[i])-want) > 1e-6 {
			t.Fatalf("moment %d: weight %v, want %v", i, s.Weight[i], want)
		}
	}
	if share := float64(home) / 8000; math.Abs(share-0.25) > 0.03 {
		t.Errorf("home share %.3f, want 0.25", share)
	}
}

func TestSampleRefuses(t *testing.T) {
	na := standard(t, "north-american")
	small, err := rink.New(rink.Dimensions{Length: 15, Width: 8, CornerRadius: 1})
	if err != nil {
		t.Fatal(err)
	}
	bad := DefaultAssumptions()
	bad.Share = [phases]float64{}
	for name, c := range map[string]struct {
		r rink.Rink
		a Assumptions
		n int
	}{
		"no moments":  {na, DefaultAssumptions(), 0},
		"too many":    {na, DefaultAssumptions(), MaxMoments + 1},
		"small rink":  {small, DefaultAssumptions(), 10},
		"zero shares": {na, bad, 10},
	} {
		if _, err := Sample(t.Context(), c.r, c.a, 1, c.n); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func TestClearanceMatchesTheRink(t *testing.T) {
	r := standard(t, "international")
	lay := LayoutOf(r)
	n := 0
	for s := unit.Length(0); s < r.Perimeter(); s += 0.37 {
		p, in := r.Point(s), r.Normal(s)
		for _, d := range []float64{0, 0.5, 3} {
			if got := lay.Clearance(p.X+d*in.X, p.Y+d*in.Y); math.Abs(got-d) > 1e-9 {
				t.Fatalf("station %.2f, %g m in: clearance %g", s.Metres(), d, got)
			}
			n++
		}
	}
	if n < 900 {
		t.Fatalf("only %d places compared", n)
	}
}

func TestPhasesHaveNames(t *testing.T) {
	var names []string
	for _, p := range Phases() {
		if q, ok := phaseNamed(p.String()); !ok || q != p {
			t.Errorf("%s does not read back", p)
		}
		names = append(names, p.String())
	}
	if len(slices.Compact(slices.Sorted(slices.Values(names)))) != int(phases) {
		t.Error("two phases share a name")
	}
}

func BenchmarkSample(b *testing.B) {
	r := standard(b, "north-american")
	for b.Loop() {
		if _, err := Sample(b.Context(), r, DefaultAssumptions(), 1, 20_000); err != nil {
			b.Fatal(err)
		}
	}
}

// Whoever gives up does not wait until all moments are made.
func TestSampleEndsWithItsContext(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	set, err := Sample(ctx, standard(t, "north-american"), DefaultAssumptions(), 1, 100_000)
	if !errors.Is(err, context.Canceled) || set != nil {
		t.Errorf("%v, %v", set, err)
	}
}

package choose_test

import (
	"bytes"
	"context"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// read reads one of the examples.
func read(t testing.TB, name string) *arena.Document {
	t.Helper()
	f, err := examples.Files.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := arena.Read(name, f)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// demo returns the demo arena, common practice and the built-in kit.
func demo(t testing.TB) (arena.Arena, rules.Sets, kit.Kit) {
	t.Helper()
	a, err := read(t, examples.Demo).Check()
	if err != nil {
		t.Fatal(err)
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	return a, sets, k
}

// few returns options for a quick answer.
func few() choose.Options {
	o := choose.DefaultOptions()
	o.Moments, o.Step, o.Plain, o.Alternatives = 700, 0.4, true, 0
	return o
}

func answer(t testing.TB, a arena.Arena, sets rules.Sets, k kit.Kit, o choose.Options) (*choose.Study, choose.Answer) {
	t.Helper()
	s, err := choose.Prepare(context.Background(), a, sets, k, o)
	if err != nil {
		t.Fatal(err)
	}
	return s, s.Answer(context.Background())
}

func TestTheAnswerIsLegalAndBeatsToday(t *testing.T) {
	a, sets, k := demo(t)
	_, ans := answer(t, a, sets, k, few())
	if ans.Status != solve.Optimal || len(ans.Holes) != 8 || ans.Gap() > 1e-6 {
		t.Fatalf("%s, %d holes, gap %g", ans.Status, len(ans.Holes), ans.Gap())
	}
	if v := sets.Check(ans.With(ans.Set(0))).Verdict; v != rules.Pass {
		t.Errorf("the chosen holes: %s", v)
	}
	if ans.Drawn.Verdict == rules.Pass && ans.Value < ans.Drawn.Value {
		t.Errorf("value %.4f, the drawn holes %.4f", ans.Value, ans.Drawn.Value)
	}
	panes := map[string]bool{}
	for _, h := range ans.Holes {
		if panes[h.Hole.Pane] {
			t.Errorf("pane %s holds two", h.Hole.Pane)
		}
		panes[h.Hole.Pane] = true
		if h.Worth <= 0 || h.Best <= 0 || !strings.Contains(h.Why.In(unit.Metric), "Best view of") {
			t.Errorf("hole %s: worth %g, why %q", h.Hole.ID, h.Worth, h.Why)
		}
	}
	if len(ans.Excluded) == 0 {
		t.Error("no pane is excluded, though gates are")
	}
}

func TestWishes(t *testing.T) {
	a, sets, k := demo(t)
	o := few()
	o.Count, o.Keep, o.Forbid, o.NewCuts = 6, []string{"B4"}, []string{"P018", "A1"}, unit.Known(2)
	_, ans := answer(t, a, sets, k, o)
	if ans.Status != solve.Optimal || len(ans.Holes) != 6 {
		t.Fatalf("%s, %d holes, clash %q", ans.Status, len(ans.Holes), ans.Clash)
	}
	news, kept := 0, false
	for _, h := range ans.Holes {
		if h.State() != "cut" {
			news++
		}
		kept = kept || h.Hole.ID == "B4"
		if h.Hole.Pane == "P018" || h.Hole.ID == "A1" {
			t.Errorf("hole %s in pane %s was forbidden", h.Hole.ID, h.Hole.Pane)
		}
	}
	if !kept || news > 2 {
		t.Errorf("B4 kept: %v; %d new cuts, at most 2", kept, news)
	}
	if v := sets.Check(ans.With(ans.Set(0))).Verdict; v != rules.Pass {
		t.Errorf("the chosen holes: %s", v)
	}
}

func TestClashIsNamed(t *testing.T) {
	a, sets, k := demo(t)
	o := few()
	o.Count = 9
	_, ans := answer(t, a, sets, k, o)
	want := []string{"choose exactly 9", "common-practice/most-in-all: at most 8 on the whole rink"}
	if ans.Status != solve.Infeasible || !slices.Equal(say.All(ans.Clash, unit.Metric), want) {
		t.Errorf("%s, clash %q, want %q", ans.Status, ans.Clash, want)
	}
	o.Count, o.Keep, o.Forbid = 0, []string{"B1"}, []string{"B1"}
	_, ans = answer(t, a, sets, k, o)
	if want := []string{"keep B1", "forbid B1"}; !slices.Equal(say.All(ans.Clash, unit.Metric), want) {
		t.Errorf("clash %q, want %q", ans.Clash, want)
	}
}

func TestNoPlaceAtAllIsExplained(t *testing.T) {
	a, _, k := demo(t)
	set, err := rules.Shipped("international-2014")
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	_, ans := answer(t, a, sets, k, few())
	if ans.Status != solve.Infeasible || ans.Candidates != 0 {
		t.Fatalf("%s with %d candidates", ans.Status, ans.Candidates)
	}
	n := 0
	for _, c := range ans.Excluded {
		n += len(c.Panes)
		if c.Cause == "" {
			t.Errorf("cause %+v", c)
		}
	}
	if n != len(a.Panes) {
		t.Errorf("%d panes explained, the arena has %d", n, len(a.Panes))
	}
}

func TestMaterialsAndEdgesExclude(t *testing.T) {
	a, sets, k := demo(t)
	o := few()
	o.Materials = []glass.Material{glass.Tempered}
	if _, ans := answer(t, a, sets, k, o); ans.Candidates > len(a.Holes) || ans.Excluded[0].Cause != "the material is not to be cut or ordered: acrylic" {
		t.Errorf("%d candidates, first cause %q", ans.Candidates, ans.Excluded[0].Cause)
	}
	o = few()
	o.Edge = 0.7
	if _, ans := answer(t, a, sets, k, o); !strings.Contains(ans.Excluded[0].Cause, "too narrow") {
		t.Errorf("first cause %q", ans.Excluded[0].Cause)
	}
	o.Edge, o.Heights = 0.1, []unit.Length{0.2}
	if _, ans := answer(t, a, sets, k, o); !strings.Contains(ans.Excluded[0].Cause, "height") {
		t.Errorf("first cause %q", ans.Excluded[0].Cause)
	}
}

// A hole that is only planned is a new cut: it stands in a pane that may be cut.
func TestPlannedHolesKeepToTheMaterials(t *testing.T) {
	a, sets, k := demo(t)
	o := few()
	o.Materials = []glass.Material{glass.Tempered}
	_, ans := answer(t, a, sets, k, o)
	if len(ans.Holes) == 0 {
		t.Fatal("no hole at all")
	}
	for _, h := range ans.Holes {
		if pane, _ := a.Pane(h.Hole.Pane); h.State() != "cut" && pane.Material.Or("") != glass.Tempered {
			t.Errorf("hole %s, %s, in a pane of %s", h.Hole.ID, h.State(), pane.Material.Or("unknown"))
		}
	}
	o.Keep = []string{"B4"}
	_, ans = answer(t, a, sets, k, o)
	if want := []string{"keep B4", "materials: the pane of B4 is not to be cut or ordered"}; !slices.Equal(say.All(ans.Clash, unit.Metric), want) {
		t.Errorf("clash %q, want %q", ans.Clash, want)
	}
}

// A hole that is kept against the best set's will says what it costs.
func TestAKeptHoleHasAPrice(t *testing.T) {
	if testing.Short() {
		t.Skip("computes much, step after step; make test runs it without the race detector")
	}
	a, sets, k := demo(t)
	o := few()
	o.Plain = false
	_, free := answer(t, a, sets, k, o)
	o.Keep = []string{"B4"}
	_, kept := answer(t, a, sets, k, o)
	at := slices.IndexFunc(kept.Prices, func(p choose.Price) bool { return p.Rule == "keep B4" })
	if at < 0 {
		t.Fatalf("no price of keeping B4 among %v", kept.Prices)
	}
	if got := kept.Prices[at]; math.Abs(got.Value-free.Value) > solve.Tolerance || got.Gain <= 0 {
		t.Errorf("without keeping: value %.9f, gain %.9f; the free choice is worth %.9f", got.Value, got.Gain, free.Value)
	}
	at = slices.IndexFunc(kept.Holes, func(c choose.Choice) bool { return c.Hole.ID == "B4" })
	if loss := kept.Holes[at].Loss; loss.Or(0) >= 0 {
		t.Errorf("loss of B4 %v: another set is better without it", loss)
	}
	if len(kept.Unfinished) != 0 {
		t.Errorf("unfinished: %q", kept.Unfinished)
	}
}

// What an end after the proof leaves undone is named.
func TestWhatIsLeftUndoneIsNamed(t *testing.T) {
	a, sets, k := demo(t)
	o := few()
	o.Plain, o.Alternatives = false, 2
	ctx, cancel := context.WithCancel(context.Background())
	o.Tell = func(r choose.Report) {
		if r.Stage == "prices" {
			cancel()
		}
	}
	s, err := choose.Prepare(ctx, a, sets, k, o)
	if err != nil {
		t.Fatal(err)
	}
	ans := s.Answer(ctx)
	if want := []string{"prices", "losses", "other samples"}; ans.Status != solve.Optimal || !slices.Equal(ans.Unfinished, want) || len(ans.Alternatives) != 2 {
		t.Errorf("%s, unfinished %q, want %q; %d alternatives", ans.Status, ans.Unfinished, want, len(ans.Alternatives))
	}
}

func TestSameAnswerEveryTime(t *testing.T) {
	a, sets, k := demo(t)
	o := few()
	o.Alternatives, o.Plain = 2, false
	_, one := answer(t, a, sets, k, o)
	_, two := answer(t, a, sets, k, o)
	if len(one.Alternatives) != 2 || len(one.Prices) == 0 || one.Holes[0].Loss.IsZero() {
		t.Fatalf("%d alternatives, %d prices", len(one.Alternatives), len(one.Prices))
	}
	if one.Value != two.Value || one.Alternatives[1].Value != two.Alternatives[1].Value || one.Holes[7].Hole.ID != two.Holes[7].Hole.ID || one.Nodes != two.Nodes {
		t.Error("the same seed gives another answer")
	}
	for k, alt := range one.Alternatives {
		if alt.Value > one.Value+solve.Tolerance || alt.Lost < -solve.Tolerance {
			t.Errorf("alternative %d worth %.6f, the best %.6f", k, alt.Value, one.Value)
		}
	}
	for _, p := range one.Prices {
		if p.Gain < 0 || p.Bound < p.Value-solve.Tolerance {
			t.Errorf("price %+v", p)
		}
	}
}

func TestAStoppedSearchKeepsItsPromise(t *testing.T) {
	a, sets, k := demo(t)
	s, best := answer(t, a, sets, k, few())
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	cut := s.Answer(ctx)
	if cut.Status == solve.Optimal || cut.Bound < best.Value-solve.Tolerance || math.IsInf(cut.Bound, 0) {
		t.Errorf("stopped at once: %s, value %.4f, bound %.4f; the best is worth %.4f", cut.Status, cut.Value, cut.Bound, best.Value)
	}
}

func TestHeightsMakeMoreCandidates(t *testing.T) {
	a, sets, k := demo(t)
	o := few()
	_, one := answer(t, a, sets, k, o)
	o.Heights = []unit.Length{1.4, 1.6}
	_, two := answer(t, a, sets, k, o)
	if two.Candidates <= one.Candidates || !strings.Contains(two.Holes[0].Hole.ID+two.Holes[1].Hole.ID, "@") {
		t.Errorf("%d candidates at two heights, %d at one; holes %s, %s", two.Candidates, one.Candidates, two.Holes[0].Hole.ID, two.Holes[1].Hole.ID)
	}
}

func TestUnknownWishesAreRefused(t *testing.T) {
	a, sets, k := demo(t)
	for _, c := range []struct {
		set  func(o *choose.Options)
		want string
	}{
		{func(o *choose.Options) { o.Keep = []string{"B11"} }, `keep: "B11" is no candidate; did you mean`},
		{func(o *choose.Options) { o.Forbid = []string{"nonsense"} }, `forbid: "nonsense" is no candidate`},
		{func(o *choose.Options) { o.Moments = 0 }, "moments: 0"},
		{func(o *choose.Options) { o.Second = 1 }, "second: 1"},
		{func(o *choose.Options) { o.Step = 0 }, "step"},
		{func(o *choose.Options) { o.Edge = -1 }, "edge"},
		{func(o *choose.Options) { o.Count = -1 }, "count: -1"},
		{func(o *choose.Options) { o.NewCuts = unit.Known(-2) }, "new cuts: -2"},
		{func(o *choose.Options) { o.Alternatives = 1000 }, "alternatives: 1000"},
	} {
		o := few()
		c.set(&o)
		_, err := choose.Prepare(context.Background(), a, sets, k, o)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("error %v, want %q", err, c.want)
		}
	}
}

func TestModelHoldsTheProblem(t *testing.T) {
	a, sets, k := demo(t)
	o := few()
	o.Moments, o.Step = 50, 0.5
	s, _ := answer(t, a, sets, k, o)
	var text bytes.Buffer
	if err := s.WriteLP(&text); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Maximize", "Subject To", "\\ common-practice/most-in-all the whole rink", "Binaries", "End"} {
		if !strings.Contains(text.String(), want) {
			t.Errorf("the model lacks %q", want)
		}
	}
	for _, line := range strings.Split(text.String(), "\n") {
		if len(line) > 560 {
			t.Fatalf("a line of %d characters", len(line))
		}
	}
}

// A rule on pairs holds within a pane too, and its groups are few: one for
// each place along the boards at most.
func TestPairsAreStatedBriefly(t *testing.T) {
	a, _, k := demo(t)
	set, err := rules.Shipped("example-loose")
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	o := few()
	o.Nodes = 3 // holes may stand almost anywhere: a proof would take long
	s, ans := answer(t, a, sets, k, o)
	if len(ans.Holes) == 0 {
		t.Fatalf("%s without a set", ans.Status)
	}
	var text bytes.Buffer
	if err := s.WriteLP(&text); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(text.String(), "\\ example-loose/least-separation"); n == 0 || n > ans.Candidates {
		t.Errorf("%d groups for the least separation, %d candidates", n, ans.Candidates)
	}
	if v := sets.Check(ans.With(ans.Set(0))).Verdict; v != rules.Pass {
		t.Errorf("the chosen holes: %s", v)
	}
}

// Six holes are compared with the best six of the eight that are drawn.
func TestLikeIsComparedWithLike(t *testing.T) {
	a, sets, k := demo(t)
	o := few()
	o.Count = 6
	_, ans := answer(t, a, sets, k, o)
	if ans.Drawn.Of != 8 || len(ans.Drawn.Holes) != 6 || ans.Drawn.Verdict != rules.Pass || ans.Drawn.Value > ans.Value+solve.Tolerance {
		t.Errorf("drawn: %+v, the best six are worth %.4f", ans.Drawn, ans.Value)
	}
	o.Count = 0
	_, all := answer(t, a, sets, k, o)
	if all.Drawn.Of != 8 || len(all.Drawn.Holes) != 8 || all.Drawn.Value < ans.Drawn.Value {
		t.Errorf("all that are drawn: %+v, the best six of them %.4f", all.Drawn, ans.Drawn.Value)
	}
	if ans.Today.Of != 5 || len(ans.Today.Holes) != 5 {
		t.Errorf("cut today: %+v", ans.Today)
	}
}

package choose

import (
	"context"
	"math"
	"slices"
	"testing"

	"example.org/rinkpane/internal/decide/solve"
)

// The margin of a value, and of the difference of two sets by the same moments, is
// what other seeds show: 1.96 times the spread of 150 samples, within 15 % (the
// spread of 150 is itself known to 6 %, one standard error).
func TestMarginIsTheSpreadOfOtherSeeds(t *testing.T) {
	if testing.Short() {
		t.Skip("computes much, step after step; make test runs it without the race detector")
	}
	var a, b []int
	var values, lost []float64
	var ofValue, ofLost float64
	const seeds = 150
	for seed := range uint64(seeds) {
		s := demoSeed(t, 500, 300, seed+1)
		if a == nil {
			a = s.solver.Solve(context.Background(), 0, nil).Set
			b = slices.Clone(a)
			b[0] = s.today()[0]
			slices.Sort(b)
			b = slices.Compact(b)
		}
		values, lost = append(values, s.solver.Value(a)), append(lost, s.solver.Value(a)-s.solver.Value(b))
		ofValue, ofLost = ofValue+s.solver.margin(a, nil)/seeds, ofLost+s.solver.margin(a, b)/seeds
	}
	for what, c := range map[string]struct {
		margin float64
		seen   []float64
	}{"value": {ofValue, values}, "difference": {ofLost, lost}} {
		if want := sure * spread(c.seen); c.margin < want*0.85 || c.margin > want*1.15 {
			t.Errorf("margin of the %s %.5f, over the seeds %.5f", what, c.margin, want)
		}
	}
}

// spread is the standard deviation of a sample.
func spread(x []float64) float64 {
	var mean, sum float64
	for _, v := range x {
		mean += v / float64(len(x))
	}
	for _, v := range x {
		sum += (v - mean) * (v - mean)
	}
	return math.Sqrt(sum / float64(len(x)-1))
}

// Every place of a run may stand for its hole: legal, and within the margin of the
// best; and the run holds the hole itself.
func TestAsGoodIsLegalAndWithinTheMargin(t *testing.T) {
	s := demoSeed(t, 200, 600, 1)
	best := s.solver.Solve(context.Background(), 0, nil)
	runs := 0
	for k, h := range s.explain(best.Set) {
		own := false
		for _, c := range h.AsGood {
			i := slices.IndexFunc(s.places, func(p Candidate) bool { return p.Hole.ID == c.Hole.ID })
			if own = own || i == best.Set[k]; i == best.Set[k] {
				continue
			}
			runs++
			set := slices.Sorted(slices.Values(append(without(best.Set, k), i)))
			if lost := best.Value - s.solver.Value(set); !s.problem.Allows(set) || lost > s.solver.margin(best.Set, set)+solve.Tolerance {
				t.Errorf("%s for %s loses %.5f", c.Hole.ID, h.Hole.ID, lost)
			}
		}
		if !own {
			t.Errorf("the run of %s leaves it out", h.Hole.ID)
		}
	}
	if runs < 4 {
		t.Errorf("only %d places may stand for another", runs)
	}
}

// Other samples judge the same set, and none of them is better by less than nothing.
func TestOtherSamples(t *testing.T) {
	s := demoSeed(t, 500, 400, 1)
	best := s.solver.Solve(context.Background(), 0, nil)
	var out Answer
	s.others(context.Background(), &out, best)
	o := out.Others
	if o.Number != otherSamples || o.Low > o.High || o.Regret < 0 || math.Abs(o.Low-best.Value) > 0.2 || len(out.Unfinished) > 0 {
		t.Errorf("%+v beside %.4f, %v", o, best.Value, out.Unfinished)
	}
}

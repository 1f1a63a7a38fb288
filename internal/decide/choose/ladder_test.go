package choose

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// laddered is a study of a small instance whose every fifth place is cut today,
// each in a pane of its own, of any material.
func laddered(t *testing.T, seed uint64, n, moments int) *Study {
	t.Helper()
	rng := rand.New(rand.NewPCG(seed, 5))
	p := instance(seed, n, moments)
	p.In, p.Exact, p.Count = nil, false, 3+rng.IntN(2)
	p.Groups = nil
	s := studied(t, p)
	s.opt.Costs = cost.Default()
	s.arena = arena.Arena{}
	for i := range s.places {
		id := fmt.Sprint("P", i)
		m := glass.Materials()[rng.IntN(4)]
		s.arena.Panes = append(s.arena.Panes, glass.Pane{ID: id, Width: unit.Length(1+rng.IntN(2)) * unit.Metre, Height: 2 * unit.Metre, Material: unit.Known(m)})
		s.places[i].Hole.Pane = id
		if s.places[i].New = i%5 != 0; !s.places[i].New {
			s.places[i].Hole.State = glass.Cut
		}
	}
	s.open = n
	s.charge()
	return s
}

// everySet visits all sets that keep the problem's own constraints.
func everySet(s *Study, visit func(set []int, value float64, money cost.Money)) {
	for bits := range 1 << len(s.places) {
		var set []int
		for i := range s.places {
			if bits>>i&1 == 1 {
				set = append(set, i)
			}
		}
		if s.problem.Allows(set) {
			visit(set, s.solver.Value(set), s.bill(set).Money)
		}
	}
}

func ladderOf(s *Study) Answer {
	var out Answer
	s.ladder(context.Background(), &out, s.solver.Solve(context.Background(), 0, nil))
	return out
}

// Each step by trying all sets: the best that cuts so many, and gives up none
// where it keeps all.
func TestLadderMatchesBruteForce(t *testing.T) {
	kinds := map[StepKind]int{}
	for seed := range uint64(12) {
		s := laddered(t, seed, 10, 40)
		today := s.today()
		for _, step := range ladderOf(s).Ladder[1:] {
			want := 0.0
			everySet(s, func(set []int, value float64, _ cost.Money) {
				cut := slices.DeleteFunc(slices.Clone(set), func(i int) bool { return s.places[i].IsCut() })
				if len(cut) <= step.NewCuts && (step.Kind == FreeStep || solve.Shared(today, set) == len(today)) {
					want = max(want, value)
				}
			})
			if math.Abs(step.Value-want) > solve.Tolerance || !step.Proved {
				t.Errorf("seed %d, %s %d: %.9f, brute force %.9f", seed, step.Kind, step.NewCuts, step.Value, want)
			}
			if len(step.Kept())+len(step.Cut()) != len(step.Holes) || len(step.Kept())+len(step.GivenUp) != len(today) {
				t.Errorf("seed %d: %d kept, %d cut, %d given up of %d", seed, len(step.Kept()), len(step.Cut()), len(step.GivenUp), len(today))
			}
			if step.Alike < step.Value-solve.Tolerance && len(step.Holes) < s.problem.Count {
				t.Errorf("seed %d: a step worth %.9f, the best of as many holes %.9f", seed, step.Value, step.Alike)
			}
			kinds[step.Kind]++
		}
	}
	if kinds[KeepStep] < 5 || kinds[FreeStep] < 10 {
		t.Errorf("steps met: %v", kinds)
	}
}

// The frontier is all that is best for its money: by trying all sets, nothing
// that costs as little is worth more, and every point on it is needed.
func TestFrontierIsExact(t *testing.T) {
	points := 0
	for seed := range uint64(12) {
		s := laddered(t, seed, 10, 40)
		got := ladderOf(s).Frontier
		points += len(got)
		for k, p := range got {
			if k > 0 && (p.Bill.Money <= got[k-1].Bill.Money || p.Value <= got[k-1].Value || !p.Proved) {
				t.Errorf("seed %d: %v is no step up from %v", seed, p, got[k-1])
			}
		}
		everySet(s, func(set []int, value float64, money cost.Money) {
			best := 0.0
			for _, p := range got {
				if p.Bill.Money <= money {
					best = max(best, p.Value)
				}
			}
			if value > best+2*solve.Tolerance {
				t.Fatalf("seed %d: %v is worth %.9f for %d, the frontier says %.9f", seed, set, value, money, best)
			}
		})
	}
	if points < 40 {
		t.Errorf("only %d points compared", points)
	}
}

// A frontier of more points than are told says so, and tells the dearest.
func TestFrontierSaysWhereItStops(t *testing.T) {
	s := laddered(t, 3, 10, 40)
	all := ladderOf(s).Frontier
	best, n := s.solver.Solve(context.Background(), 0, nil), len(all)-1
	for most, wholly := range map[int]bool{n: true, n - 1: false, 1: false} {
		got, whole := s.frontier(context.Background(), s.opt.Budget, all[0], best.Set, most)
		if whole != wholly || len(got) != most+1 || got[most].Bill != all[n].Bill || got[0].Bill.Money != 0 {
			t.Errorf("at most %d of %d points: %d, whole %v", most, n, len(got), whole)
		}
	}
	if n < 3 {
		t.Errorf("only %d points", n)
	}
}

// A budget caps every step; one that buys nothing tells the cheapest gain.
func TestBudget(t *testing.T) {
	s := laddered(t, 3, 10, 40)
	all := ladderOf(s)
	most := all.Frontier[2].Bill.Money
	for _, c := range []struct {
		budget cost.Money
		points int
	}{{most, 3}, {all.Frontier[1].Bill.Money - 1, 1}} {
		tight := laddered(t, 3, 10, 40)
		tight.opt.Budget = unit.Known(c.budget)
		tight.problem.Caps = []Cap{tight.budget(c.budget)}
		tight.solver = solver(t, tight.problem)
		got := ladderOf(tight)
		for _, step := range slices.Concat(got.Ladder, got.Frontier) {
			if step.Bill.Money > c.budget {
				t.Errorf("a step of %d under a budget of %d", step.Bill.Money, c.budget)
			}
		}
		cheapest, told := got.Cheapest.Get()
		if len(got.Frontier) != c.points || told != (c.points == 1) || told && cheapest.Bill.Money != all.Frontier[1].Bill.Money {
			t.Errorf("budget %d: %d points, cheapest %v", c.budget, len(got.Frontier), cheapest.Bill)
		}
	}
}

// A budget below what it costs to come at all buys nothing; today's holes stay
// within it, and the cheapest step is told.
func TestBudgetBelowTheCallOut(t *testing.T) {
	s := laddered(t, 3, 10, 40)
	s.opt.Costs.CallOut = 400
	s.opt.Budget = unit.Known(cost.Money(100))
	s.problem.Caps = []Cap{s.budget(100)}
	s.solver = solver(t, s.problem)
	got := ladderOf(s)
	if _, told := got.Cheapest.Get(); !told || len(got.Frontier) != 1 || got.Frontier[0].Bill.Money != 0 {
		t.Errorf("%d points, cheapest told: %v", len(got.Frontier), told)
	}
}

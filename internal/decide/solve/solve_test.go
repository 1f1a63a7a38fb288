package solve

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

func TestSolveMatchesBruteForce(t *testing.T) {
	feasible := 0
	rapid.Check(t, func(t *rapid.T) {
		p := instance(rapid.Uint64().Draw(t, "seed"), rapid.IntRange(3, 9).Draw(t, "columns"), rapid.IntRange(1, 20).Draw(t, "moments"))
		if agrees(t, p) {
			feasible++
		}
	})
	if least := 20; feasible < least && !testing.Short() {
		t.Errorf("only %d programs had a set", feasible)
	}
}

// A linear worth, costs below zero among them, and rows that ask for something.
func TestLinearMatchesBruteForce(t *testing.T) {
	feasible, infeasible := 0, 0
	for seed := range uint64(150) {
		rng := rand.New(rand.NewPCG(seed, 7))
		p := instance(seed, 9, 1)
		worth := make(Linear, p.Columns)
		for i := range worth {
			worth[i] = float64(rng.IntN(21)-10) / 10
		}
		p.Worth = worth
		for r := range p.Rows {
			if rng.IntN(2) == 0 {
				p.Rows[r].Least = rng.IntN(p.Rows[r].Most + 1)
			}
		}
		if agrees(t, p) {
			feasible++
		} else {
			infeasible++
		}
	}
	if feasible < 40 || infeasible < 10 {
		t.Errorf("%d feasible and %d infeasible programs", feasible, infeasible)
	}
}

// Caps on what is spent, costs below zero among them.
func TestCapsMatchBruteForce(t *testing.T) {
	feasible, infeasible := 0, 0
	for seed := range uint64(120) {
		rng := rand.New(rand.NewPCG(seed, 11))
		p := instance(seed, 9, 12)
		for range 1 + rng.IntN(2) {
			c := Cap{Cost: make([]int, p.Columns), Most: rng.IntN(900) - 200}
			for i := range c.Cost {
				c.Cost[i] = (rng.IntN(5) - 1) * (100 + rng.IntN(2))
			}
			p.Caps = append(p.Caps, c)
		}
		if agrees(t, p) {
			feasible++
		} else {
			infeasible++
		}
	}
	if feasible < 40 || infeasible < 10 {
		t.Errorf("%d feasible and %d infeasible programs", feasible, infeasible)
	}
}

// assignment is the program in which each row and each column of a table of costs
// is used once, or each column at most once where there are more rows.
func assignment(cost [][]float64) Program {
	n, m := len(cost), len(cost[0])
	p := Program{Columns: n * m}
	var worth Linear
	for i := range n {
		row := Row{Most: 1}
		for j := range m {
			row.Columns = append(row.Columns, i*m+j)
			worth = append(worth, -cost[i][j])
		}
		if n <= m {
			row.Least = 1
		}
		p.Rows = append(p.Rows, row)
	}
	for j := range m {
		column := Row{Least: 1, Most: 1}
		for i := range n {
			column.Columns = append(column.Columns, i*m+j)
		}
		p.Rows = append(p.Rows, column)
	}
	p.Worth = worth
	return p
}

// Greedy is never above the optimum, the optimum never above the bound, even
// of a search that is stopped at once.
func TestOrderOfGreedyOptimumAndBound(t *testing.T) {
	stopped := 0
	for seed := range uint64(40) {
		p := instance(seed, 20, 60)
		p.Rows[0] = Row{Columns: p.Rows[0].Columns, Most: 5}
		s := solver(t, p)
		best := s.Solve(context.Background(), 0, nil)
		if best.Status == Infeasible {
			continue
		}
		h := newHunt(s, &s.program, nil)
		h.greedy(context.Background())
		if h.best != nil && h.value > best.Value+Tolerance {
			t.Fatalf("seed %d: greedy %.9f above the optimum %.9f", seed, h.value, best.Value)
		}
		ctx, cancel := context.WithCancel(context.Background())
		cut := solver(t, p).Solve(ctx, 0, func(_, _ float64, nodes int) {
			if nodes >= 1 {
				cancel()
			}
		})
		cancel()
		if cut.Bound < best.Value-Tolerance {
			t.Fatalf("seed %d: bound %.9f of a stopped search below the optimum %.9f", seed, cut.Bound, best.Value)
		}
		if cut.Status == Stopped {
			stopped++
		}
	}
	if stopped < 3 {
		t.Errorf("only %d searches were stopped before the proof", stopped)
	}
}

// What was learnt under some rows holds under others.
func TestAgainMatchesANewSolver(t *testing.T) {
	for seed := range uint64(30) {
		p, other := instance(seed, 9, 20), instance(seed+1000, 9, 1)
		s := solver(t, p)
		s.Solve(context.Background(), 0, nil)
		got := s.Again(context.Background(), Other{Rows: other.Rows, In: other.In})
		p.Rows, p.In = other.Rows, other.In
		want := solver(t, p).Solve(context.Background(), 0, nil)
		if got.Status != want.Status || math.Abs(got.Value-want.Value) > Tolerance {
			t.Errorf("seed %d: %s %.9f again, %s %.9f anew", seed, got.Status, got.Value, want.Status, want.Value)
		}
	}
}

// The bound of sets without some columns is never below the best of them, and a
// search that may stop early stops only where its promise is kept.
func TestBoundsWithoutColumns(t *testing.T) {
	early := 0
	for seed := range uint64(30) {
		p := instance(seed, 12, 30)
		p.In = nil
		s := solver(t, p)
		all := s.Solve(context.Background(), 0, nil)
		gone := []int{int(seed % 12)}
		bound := s.Bounds(context.Background(), Other{Rows: p.Rows}, [][]int{gone})[0]
		less := append(slices.Clone(p.Rows), Row{Columns: gone})
		best := solver(t, Program{Columns: 12, Rows: less, Worth: p.Worth}).Solve(context.Background(), 0, nil)
		if best.Status == Infeasible {
			continue
		}
		if bound < best.Value-Tolerance {
			t.Errorf("seed %d: bound %.9f without column %d, a set of %.9f", seed, bound, gone, best.Value)
		}
		got := s.Again(context.Background(), Other{Rows: less, Start: all.Set, Enough: all.Value})
		if got.Bound < best.Value-Tolerance || got.Status == Optimal && got.Value < best.Value-Tolerance || got.Status == Stopped && got.Bound >= all.Value {
			t.Errorf("seed %d: %+v, the best is %.9f, enough %.9f", seed, got, best.Value, all.Value)
		}
		if got.Status == Stopped {
			early++
		}
	}
	if early < 3 {
		t.Errorf("only %d searches stopped early", early)
	}
}

func TestProgramsThatMakeNoSense(t *testing.T) {
	for name, p := range map[string]Program{
		"a fixed column that does not exist": {Columns: 2, In: []int{2}},
		"columns that do not ascend":         {Columns: 2, Rows: []Row{{Columns: []int{1, 0}, Most: 1}}},
		"more at least than at most":         {Columns: 2, Rows: []Row{{Columns: []int{0, 1}, Least: 2, Most: 1}}},
		"a column that does not exist":       {Columns: 2, Rows: []Row{{Columns: []int{0, 5}, Most: 1}}},
	} {
		if _, err := New(p); err == nil {
			t.Errorf("%s passed", name)
		}
	}
	p := Program{Columns: 2, Rows: []Row{{Columns: []int{0, 1}, Least: 3, Most: 4}}, Worth: Linear{1, 1}}
	if res := solver(t, p).Solve(context.Background(), 0, nil); res.Status != Infeasible {
		t.Errorf("a row that asks for more columns than it has: %s", res.Status)
	}
}

// The smallest group by trying all groups of constraints, smaller first.
func smallestByTrial(c *clash) int {
	for size := range c.size() + 1 {
		for bits := range 1 << c.size() {
			var chosen []int
			for k := range c.size() {
				if bits>>k&1 == 1 {
					chosen = append(chosen, k)
				}
			}
			if len(chosen) != size {
				continue
			}
			if _, ok := c.keeps(context.Background(), chosen); !ok {
				return size
			}
		}
	}
	return -1
}

func TestClashIsSmallest(t *testing.T) {
	met := 0
	for seed := uint64(0); met < 8 && seed < 400; seed++ {
		p := instance(seed, 7, 1)
		p.Rows[0].Least, p.Rows[0].Most = 4, 4
		p.In = []int{int(seed % 7)}
		c := newClash(&p)
		in, rows, _ := solver(t, p).Clash(context.Background())
		if len(in)+len(rows) == 0 || c.size() > 8 {
			continue
		}
		met++
		if want := smallestByTrial(c); len(in)+len(rows) != want {
			t.Errorf("seed %d: columns %v and rows %v, the smallest group has %d", seed, in, rows, want)
		}
	}
	if met < 8 {
		t.Errorf("only %d infeasible instances met", met)
	}
}

// Every bound that a solver reports falls, and never below its value.
func TestReportsOnlyGetBetter(t *testing.T) {
	p := instance(5, 16, 40)
	p.Rows, p.In = []Row{{Columns: p.Rows[0].Columns, Most: 4}}, nil
	var values, bounds []float64
	solver(t, p).Solve(context.Background(), 0, func(value, bound float64, _ int) {
		values, bounds = append(values, value), append(bounds, bound)
	})
	slices.Reverse(bounds)
	if len(values) == 0 || !slices.IsSorted(values) || bounds[0] < values[len(values)-1]-Tolerance {
		t.Errorf("values %v, bounds from the last %v", values, bounds)
	}
}

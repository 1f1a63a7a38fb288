package solve

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
)

// views is a worth that is not linear, written down plainly: each moment is worth
// its best chosen score and a share of the second best.
type views struct {
	score  [][]float64 // by moment, by column
	weight []float64
	second float64
}

const viewParts = 3 // moment m belongs to part m % 3

func (v views) moment(m int, set []int) float64 {
	c := []float64{0, 0}
	for _, i := range set {
		c = append(c, v.score[m][i])
	}
	slices.Sort(c)
	slices.Reverse(c)
	return v.weight[m] * (c[0] + v.second*c[1])
}

func (v views) Of(set []int) (sum float64) {
	for m := range v.score {
		sum += v.moment(m, set)
	}
	return sum
}

func (v views) Spans() []Span {
	all := make([]int, len(v.score[0]))
	for i := range all {
		all[i] = i
	}
	out := make([]Span, viewParts)
	for m := range v.score {
		out[m%viewParts].Most += v.moment(m, all)
	}
	return out
}

// Cuts draws them by linear duality: for prices p and q of a first and a second
// view, part <= sum w [(1-d)(p + sum max(0, c-p) y) + d (2q + sum max(0, c-q) y)].
func (v views) Cuts(y []float64) []Cut {
	out := make([]Cut, viewParts)
	for k := range out {
		out[k] = Cut{Part: k, Slope: make([]float64, len(y))}
	}
	for m, scores := range v.score {
		order := make([]int, len(y))
		for i := range order {
			order[i] = i
		}
		slices.SortStableFunc(order, func(a, b int) int {
			switch {
			case scores[a] > scores[b]:
				return -1
			case scores[a] < scores[b]:
				return 1
			}
			return 0
		})
		price := func(views float64) float64 { // the score at which so many are seen
			sum := 0.0
			for _, i := range order {
				if sum += y[i]; sum >= views-1e-9 {
					return scores[i]
				}
			}
			return 0
		}
		p, q, c := price(1), price(2), &out[m%viewParts]
		w1, w2 := v.weight[m]*(1-v.second), v.weight[m]*v.second
		c.Base += w1*p + 2*w2*q
		for i, s := range scores {
			c.Slope[i] += w1*max(0, s-p) + w2*max(0, s-q)
		}
	}
	return out
}

func (v views) Gains(set []int, may func(int) bool) []float64 {
	out := make([]float64, len(v.score[0]))
	for i := range out {
		if out[i] = math.Inf(-1); may(i) {
			with := append(slices.Clone(set), i)
			slices.Sort(with)
			out[i] = v.Of(with) - v.Of(set)
		}
	}
	return out
}

// instance makes a small seeded program with ties: rows over runs of columns,
// pairs apart, columns that must or may not be chosen, a count.
func instance(seed uint64, n, moments int) Program {
	rng := rand.New(rand.NewPCG(seed, 1))
	v := views{second: float64(rng.IntN(3)) * 0.3}
	for m := range moments {
		v.score, v.weight = append(v.score, make([]float64, n)), append(v.weight, (0.1+rng.Float64())/float64(moments))
		at := rng.Float64()
		for i := range n {
			d := math.Abs(at - float64(i)/float64(n))
			c := max(0, 1-4*min(d, 1-d)*(0.5+rng.Float64()))
			if rng.IntN(4) == 0 {
				c = math.Round(c*4) / 4
			}
			v.score[m][i] = c
		}
	}
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	count := Row{Columns: all, Most: 1 + rng.IntN(4)}
	if rng.IntN(2) == 0 {
		count.Least = count.Most
	}
	p := Program{Columns: n, Rows: []Row{count}, Worth: v}
	for range rng.IntN(4) {
		var members []int
		from := rng.IntN(n)
		for i := range min(2+rng.IntN(n-1), n) {
			members = append(members, (from+i)%n)
		}
		slices.Sort(members)
		p.Rows = append(p.Rows, Row{Columns: members, Most: rng.IntN(3)})
	}
	for range rng.IntN(4) {
		if a, b := rng.IntN(n), rng.IntN(n); a != b {
			p.Rows = append(p.Rows, Row{Columns: []int{min(a, b), max(a, b)}, Most: 1})
		}
	}
	if rng.IntN(3) == 0 {
		p.In = []int{rng.IntN(n)}
	}
	if rng.IntN(4) == 0 {
		p.Rows = append(p.Rows, Row{Columns: []int{rng.IntN(n)}})
	}
	return p
}

// brute tries every set.
func brute(p *Program) (best []int, value float64) {
	value = math.Inf(-1)
	for bits := range 1 << p.Columns {
		var set []int
		for i := range p.Columns {
			if bits>>i&1 == 1 {
				set = append(set, i)
			}
		}
		if !p.Allows(set) {
			continue
		}
		if v := p.Worth.Of(set); v > value {
			best, value = append([]int{}, set...), v
		}
	}
	return best, value
}

func solver(t interface{ Fatal(...any) }, p Program) *Solver {
	s, err := New(p)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// agrees compares a search with all sets tried one by one.
func agrees(t interface {
	Fatalf(string, ...any)
	Fatal(...any)
}, p Program) (feasible bool) {
	want, value := brute(&p)
	res := solver(t, p).Solve(context.Background(), 0, nil)
	if want == nil {
		if res.Status != Infeasible {
			t.Fatalf("status %s, but no set is allowed", res.Status)
		}
		return false
	}
	if res.Status != Optimal || math.Abs(res.Value-value) > Tolerance || !p.Allows(res.Set) {
		t.Fatalf("%s value %.9f of %v, brute force %.9f of %v", res.Status, res.Value, res.Set, value, want)
	}
	if res.Bound < res.Value-1e-12 || res.Bound > res.Value+2*Tolerance {
		t.Fatalf("bound %.12f beside value %.12f", res.Bound, res.Value)
	}
	return true
}

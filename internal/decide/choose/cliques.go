package choose

import (
	"context"
	"slices"
)

// pairs collects candidates that must not stand together and states them as
// few groups of at most one: a group says of all its members at once what the
// pairs say two by two, and is the stronger cap for the linear relaxation.
type pairs struct {
	no      [][]int  // by candidate: those that may not stand with it, ascending once sorted
	covered [][]bool // beside no: the pair is in a group
}

func newPairs(n int) *pairs { return &pairs{no: make([][]int, n)} }

func (p *pairs) add(i, j int) { p.no[i], p.no[j] = append(p.no[i], j), append(p.no[j], i) }

func (p *pairs) apart(i, j int) bool {
	_, ok := slices.BinarySearch(p.no[i], j)
	return ok
}

func (p *pairs) cover(i, j int) {
	k, _ := slices.BinarySearch(p.no[i], j)
	p.covered[i][k] = true
}

// cliques covers every pair by groups within which all pairs are forbidden,
// each grown from one uncovered pair as far as it goes, in the candidates'
// order (neighbours on the boards come first). It ends early with ctx.
func (p *pairs) cliques(ctx context.Context) (out [][]int) {
	p.covered = make([][]bool, len(p.no))
	for i := range p.no {
		slices.Sort(p.no[i])
		p.no[i] = slices.Compact(p.no[i])
		p.covered[i] = make([]bool, len(p.no[i]))
	}
	for i, no := range p.no {
		for at, j := range no {
			if j < i || p.covered[i][at] || ctx.Err() != nil {
				continue
			}
			c := []int{i, j}
			for _, k := range no {
				if k != j && !slices.ContainsFunc(c[1:], func(m int) bool { return !p.apart(k, m) }) {
					c = append(c, k)
				}
			}
			slices.Sort(c)
			for a, x := range c {
				for _, y := range c[a+1:] {
					p.cover(x, y)
					p.cover(y, x)
				}
			}
			out = append(out, c)
		}
	}
	return out
}

package choose

import "slices"

// pairs collects candidates that must not stand together and states them as
// few groups of at most one: a group says of all its members at once what the
// pairs say two by two, and is the stronger cap for the linear relaxation.
type pairs struct {
	n  int
	no []bool // i*n + j
}

func newPairs(n int) *pairs { return &pairs{n: n, no: make([]bool, n*n)} }

func (p *pairs) add(i, j int) { p.no[i*p.n+j], p.no[j*p.n+i] = true, true }

// cliques covers every pair by groups within which all pairs are forbidden,
// each grown from one uncovered pair as far as it goes, in the candidates'
// order (neighbours on the boards come first).
func (p *pairs) cliques() [][]int {
	covered := make([]bool, len(p.no))
	var out [][]int
	for i := range p.n {
		for j := i + 1; j < p.n; j++ {
			if !p.no[i*p.n+j] || covered[i*p.n+j] {
				continue
			}
			c := []int{i, j}
			for k := range p.n {
				if k != i && k != j && !slices.ContainsFunc(c, func(m int) bool { return !p.no[k*p.n+m] }) {
					c = append(c, k)
				}
			}
			slices.Sort(c)
			for a, x := range c {
				for _, y := range c[a+1:] {
					covered[x*p.n+y] = true
				}
			}
			out = append(out, c)
		}
	}
	return out
}

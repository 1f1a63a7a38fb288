package choose

import (
	"context"
	"slices"

	"example.org/rinkpane/internal/measure/cores"
)

// ranking lists for each moment the candidates that see it at all, best first:
// the [solve.Worth] of a choice of views. With it the value of a set, or of a mix of sets, is a short walk down each
// moment's list.
type ranking struct {
	problem *Problem
	weight  []float64 // summing to 1
	second  float64

	start []int32 // of moment m's list
	who   []int16
	score []float32

	part []uint8 // the part of the value that a moment belongs to

	// Working memory, kept so that a long search leaves no waste behind.
	slopes   []float64
	one, two []float32
}

// parts is into how many parts the value is split. Each part has upper bounds
// of its own, which lets a few of them meet the value sooner; moments whose
// best candidates are neighbours share a part.
const parts = 12

// newRanking sorts each moment's candidates; what it returns is of no use when ctx
// has ended.
func newRanking(ctx context.Context, p *Problem) *ranking {
	r := &ranking{problem: p, second: p.Second, weight: p.shares(), part: make([]uint8, p.Moments)}
	r.one, r.two = make([]float32, p.Moments), make([]float32, p.Moments)
	if r.count(ctx); ctx.Err() != nil {
		return r
	}
	r.who = make([]int16, r.start[p.Moments])
	r.score = make([]float32, r.start[p.Moments])
	shareRuns(p.Moments, func(_, from, to int) {
		s := &sorter{r: r, tile: make([]float32, p.Candidates()*tileWidth)}
		for m := from; m < to && ctx.Err() == nil; m += tileWidth {
			s.sort(m, min(m+tileWidth, to))
		}
	})
	return r
}

// tileWidth is how many moments are sorted at a time: their scores are copied
// side by side first, since in the problem they lie a whole row apart.
const tileWidth = 64

type sorter struct {
	r    *ranking
	tile []float32 // candidate i's scores at i*tileWidth
	keys []uint64
}

// sort fills in the lists of moments from..to-1.
func (s *sorter) sort(from, to int) {
	p := s.r.problem
	n := p.Candidates()
	for i := range n {
		copy(s.tile[i*tileWidth:], p.Row(i)[from:to])
	}
	for m := from; m < to; m++ {
		s.keys = s.keys[:0]
		for i := range n {
			if c := s.tile[i*tileWidth+m-from]; c > 0 {
				s.keys = append(s.keys, sortKey(c, i))
			}
		}
		slices.Sort(s.keys)
		k := int(s.r.start[m])
		for at, key := range s.keys {
			i := int(key & 0xffff)
			s.r.who[k+at], s.r.score[k+at] = int16(i), s.tile[i*tileWidth+m-from]
		}
		if len(s.keys) > 0 {
			s.r.part[m] = uint8(int(s.keys[0]&0xffff) * parts / n)
		}
	}
}

func (r *ranking) count(ctx context.Context) {
	p := r.problem
	seen := make([]int32, p.Moments)
	for i := range p.Candidates() {
		if ctx.Err() != nil {
			return
		}
		for m, c := range p.Row(i) {
			if c > 0 {
				seen[m]++
			}
		}
	}
	r.start = make([]int32, p.Moments+1)
	for m, k := range seen {
		r.start[m+1] = r.start[m] + k
	}
}

// chunks is into how many runs the moments are cut for work on all cores.
// Sums are taken run by run, so that they do not depend on the cores.
const chunks = 32

// shareRuns calls work for runs of [0, n), on all cores; the runs do not depend
// on the number of cores.
func shareRuns(n int, work func(run, from, to int)) {
	part := func(k int) { work(k, n*k/chunks, n*(k+1)/chunks) }
	if n >= fewMoments {
		cores.Each(chunks, part)
		return
	}
	for k := range chunks {
		part(k)
	}
}

// fewMoments is below what number starting another core costs more than it saves.
const fewMoments = 2000

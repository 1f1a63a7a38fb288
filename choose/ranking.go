package choose

import (
	"runtime"
	"slices"
	"sync"
)

// ranking lists for each moment the candidates that see it at all, best first.
// With it the value of a set, or of a mix of sets, is a short walk down each
// moment's list.
type ranking struct {
	problem *Problem
	weight  []float64 // summing to 1
	second  float64

	start []int32 // of moment m's list
	who   []int16
	score []float32

	part []uint8 // the part of the value that a moment belongs to
}

// parts is into how many parts the value is split. Each part has upper bounds
// of its own, which lets a few of them meet the value sooner; moments whose
// best candidates are neighbours share a part.
const parts = 12

// newRanking sorts each moment's candidates.
func newRanking(p *Problem) *ranking {
	r := &ranking{problem: p, second: p.Second, weight: make([]float64, p.Moments), part: make([]uint8, p.Moments)}
	var sum float64
	for _, w := range p.Weight {
		sum += float64(w)
	}
	for m, w := range p.Weight {
		r.weight[m] = float64(w) / sum
	}
	r.count()
	r.who = make([]int16, r.start[p.Moments])
	r.score = make([]float32, r.start[p.Moments])
	n := p.Candidates()
	share(p.Moments, func(from, to int) {
		row := make([]uint64, 0, n)
		for m := from; m < to; m++ {
			row = row[:0]
			for i := range n {
				if c := p.Score[i*p.Moments+m]; c > 0 {
					row = append(row, sortKey(c, i))
				}
			}
			slices.Sort(row)
			k := r.start[m]
			for at, key := range row {
				i := int(key & 0xffff)
				r.who[k+int32(at)], r.score[k+int32(at)] = int16(i), p.Score[i*p.Moments+m]
			}
			if len(row) > 0 {
				r.part[m] = uint8(int(row[0]&0xffff) * parts / n)
			}
		}
	})
	return r
}

func (r *ranking) count() {
	p := r.problem
	seen := make([]int32, p.Moments)
	for i := range p.Candidates() {
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

// share calls work for runs of [0, n), on all cores; runs do not depend on the
// number of cores.
func share(n int, work func(from, to int)) {
	shareRuns(n, func(_, from, to int) { work(from, to) })
}

func shareRuns(n int, work func(run, from, to int)) {
	workers := min(runtime.GOMAXPROCS(0), chunks)
	if workers < 2 || n < fewMoments {
		for k := range chunks {
			work(k, n*k/chunks, n*(k+1)/chunks)
		}
		return
	}
	var wg sync.WaitGroup
	for w := range workers {
		wg.Go(func() {
			for k := w; k < chunks; k += workers {
				work(k, n*k/chunks, n*(k+1)/chunks)
			}
		})
	}
	wg.Wait()
}

// fewMoments is below what number starting another core costs more than it saves.
const fewMoments = 2000

package plan

import (
	"context"
	"runtime"
	"sync"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// openings returns a row for each lens at each end of its range, bare,
// landscape, wide open; limits are still to be worked out.
func openings(o arena.Opening, lenses []kit.Lens, body kit.Body) ([]LensFit, error) {
	rows := make([]LensFit, 0, 2*len(lenses))
	for _, lens := range lenses {
		for _, use := range fit.Ends(lens) {
			c, err := fit.FromKit(o, lens, body, use)
			if err != nil {
				return nil, err
			}
			rows = append(rows, LensFit{Lens: lens, Setting: use, Case: c, Limits: fit.Limits{Fits: c.Fits()}})
		}
	}
	return rows, nil
}

// fits fills every hole's table. Holes that are alike share the work.
func (p *Plan) fits(ctx context.Context, k kit.Kit) error {
	lenses, err := k.InUse(p.Arena.Lenses)
	if err != nil {
		return err
	}
	rows := map[fit.Case][]*LensFit{}
	var cases []fit.Case
	for i := range p.Holes {
		h := &p.Holes[i]
		if h.Fits, err = openings(h.Opening, lenses, k.Bodies[0]); err != nil {
			return err
		}
		for j := range h.Fits {
			f := &h.Fits[j]
			if !f.Fits {
				continue
			}
			if _, met := rows[f.Case]; !met {
				cases = append(cases, f.Case)
			}
			rows[f.Case] = append(rows[f.Case], f)
		}
	}
	return runFits(ctx, cases, rows)
}

// runFits works cases out on every core and fills in the rows of each.
func runFits(ctx context.Context, cases []fit.Case, rows map[fit.Case][]*LensFit) error {
	next := make(chan fit.Case)
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for c := range next {
				limits := c.Limits()
				for _, row := range rows[c] {
					row.Limits = limits
				}
			}
		})
	}
	for _, c := range cases {
		if ctx.Err() != nil {
			break
		}
		next <- c
	}
	close(next)
	wait.Wait()
	return ctx.Err()
}

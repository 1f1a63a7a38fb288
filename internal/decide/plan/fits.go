package plan

import (
	"context"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// openings returns a row for each lens at each end of its range, bare,
// landscape, wide open; limits are still to be worked out.
func openings(o arena.Opening, lenses []kit.Lens, k kit.Kit) ([]LensFit, error) {
	rows := make([]LensFit, 0, 2*len(lenses))
	for _, lens := range lenses {
		for _, use := range fit.Ends(lens) {
			c, err := fit.FromKit(o, lens, k.BodyOf(lens), use)
			if err != nil {
				return nil, err
			}
			rows = append(rows, LensFit{Lens: lens, Setting: use, Case: c, Limits: fit.Limits{Fits: c.Fits()}})
		}
	}
	return rows, nil
}

// fits fills every hole's table.
func (p *Plan) fits(ctx context.Context, k kit.Kit) error {
	cases, rows, err := p.cases(k)
	if err != nil {
		return err
	}
	return cores.EachUntil(ctx, "fitting lenses", len(cases), func(i int) {
		limits := cases[i].Limits()
		for _, row := range rows[cases[i]] {
			row.Limits = limits
		}
	})
}

// cases lays out every hole's table and returns each distinct case of a lens that
// fits, with all the rows that it fills: holes that are alike share the work.
func (p *Plan) cases(k kit.Kit) (cases []fit.Case, rows map[fit.Case][]*LensFit, err error) {
	lenses, err := k.InUse(p.Arena.Lenses)
	if err != nil {
		return nil, nil, err
	}
	rows = map[fit.Case][]*LensFit{}
	for i := range p.Holes {
		h := &p.Holes[i]
		if h.Fits, err = openings(h.Opening, lenses, k); err != nil {
			return nil, nil, err
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
	return cases, rows, nil
}

package plan

import (
	"context"
	"runtime"
	"sync"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
)

// fitJob is one row of one hole's table, to be worked out.
type fitJob struct {
	row    *LensFit
	opened fit.Case
}

// fits fills every hole's table: each lens at each end of its range, bare,
// landscape, wide open. Holes that are alike share the work.
func (p *Plan) fits(ctx context.Context, k kit.Kit, lenses []kit.Lens) error {
	var jobs []fitJob
	for i := range p.Holes {
		h := &p.Holes[i]
		o, err := p.arena.Opening(h.ID)
		if err != nil {
			return err
		}
		h.Fits = make([]LensFit, 0, 2*len(lenses))
		for _, lens := range lenses {
			for _, use := range fit.Ends(lens) {
				c, err := fit.FromKit(o, lens, k.Bodies[0], use)
				if err != nil {
					return err
				}
				h.Fits = append(h.Fits, LensFit{
					Lens: lens.ID, Name: lens.Name, Focal: use.Focal.Millimetres(), Stop: float64(use.Stop), Fits: c.Fits(),
				})
				if row := &h.Fits[len(h.Fits)-1]; row.Fits {
					jobs = append(jobs, fitJob{row, c})
				}
			}
		}
	}
	return runFits(ctx, jobs)
}

// runFits works jobs out on every core, each distinct case once.
func runFits(ctx context.Context, jobs []fitJob) error {
	rows := map[fit.Case][]*LensFit{}
	var cases []fit.Case
	for _, j := range jobs {
		if _, met := rows[j.opened]; !met {
			cases = append(cases, j.opened)
		}
		rows[j.opened] = append(rows[j.opened], j.row)
	}
	next := make(chan fit.Case)
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for c := range next {
				limits := c.Limits()
				for _, row := range rows[c] {
					row.set(limits)
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

func (f *LensFit) set(l fit.Limits) {
	f.PanBody, f.PanClear, f.PanUsable = inDegrees(l.Pan.Body), inDegrees(l.Pan.Clear), inDegrees(l.Pan.Usable)
	f.TiltBody, f.TiltClear, f.TiltUsable = inDegrees(l.Tilt.Body), inDegrees(l.Tilt.Clear), inDegrees(l.Tilt.Usable)
}

// inDegrees returns an angle in degrees, nil when it is unknown.
func inDegrees(a unit.Maybe[unit.Angle]) *float64 {
	v, ok := a.Get()
	if !ok {
		return nil
	}
	d := v.Degrees()
	return &d
}

package book

import (
	"context"
	"fmt"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// Options are the choices of who prints the book.
type Options struct {
	Units   unit.System
	Paper   sheet.Paper
	Guard   puck.Options
	Cut     cut.Options
	Spares  cut.SpareOptions
	Creator string // the program and its version
}

// Content is everything that the book says.
type Content struct {
	Plan    plan.Plan
	Arena   arena.Arena // in the units of the book
	Kit     kit.Kit
	Mark    string // the plan's revision, as on shop drawings
	Guards  []puck.Guard
	List    cut.List
	Fits    map[string]chart.Fit   // chart of the best lens, by hole; none where no lens fits
	Reaches map[string]*chart.Heat // reach map, by hole
	Options Options
}

// heatStep is the side of a cell of the book's reach maps: a third of a
// millimetre on paper.
const heatStep = 0.5 * unit.Metre

// lossStep is the step of pan in the fit charts.
const lossStep = 3 * unit.Degree

// leastPaper is the width in millimetres of the narrowest paper, upright, on
// which the pages have room: a4 has 210, letter 215.9.
const leastPaper = 209.0

// Gather works everything out. Errors are ctx's and those of the packages it
// calls; an arena without a working hole is an error, since nobody can sign for nothing.
func Gather(ctx context.Context, m plan.Maker, doc *arena.Document, o Options) (Content, error) {
	p, err := m.Make(ctx, doc)
	if err != nil {
		return Content{}, err
	}
	a, err := doc.Check()
	if err != nil {
		return Content{}, err
	}
	if len(p.Holes) == 0 {
		return Content{}, fmt.Errorf("%s: the arena has no working hole; a book needs one to be about", doc.Name())
	}
	if paper := o.Paper.Portrait(); paper.W < leastPaper {
		return Content{}, fmt.Errorf("paper %s: too small for a book; take a4, letter or larger", o.Paper.Name)
	}
	a.Units = o.Units
	c := Content{Plan: p, Arena: a, Kit: m.Kit, Mark: arena.Mark(doc.Bytes()), Options: o}
	if c.Guards, err = puck.Assess(a, o.Guard); err != nil {
		return Content{}, err
	}
	if c.List, err = cut.NewPlan(a, doc.Bytes()).List(o.Cut, o.Spares); err != nil {
		return Content{}, err
	}
	if err := c.chartFits(ctx); err != nil {
		return Content{}, err
	}
	return c, c.mapReaches(ctx)
}

// chartFits works out the loss table of the best lens in each hole; holes
// that are alike share the work.
func (c *Content) chartFits(ctx context.Context) error {
	c.Fits = make(map[string]chart.Fit, len(c.Plan.Holes))
	done := make(map[fit.Case]chart.Fit)
	for _, h := range c.Plan.Holes {
		best, ok := h.BestFit()
		if !ok {
			continue
		}
		opened, err := c.opened(h, best)
		if err != nil {
			return err
		}
		f, met := done[opened]
		if !met {
			if err := ctx.Err(); err != nil {
				return err
			}
			f = chart.Fit{Lens: best.Short(), Limits: opened.Limits().Pan, Rows: opened.Loss(lossStep).Pan}
			done[opened] = f
		}
		f.Hole = h.ID
		c.Fits[h.ID] = f
	}
	return nil
}

// opened is the best lens, wide open, in its hole.
func (c *Content) opened(h plan.Hole, best plan.LensFit) (fit.Case, error) {
	o, err := c.Arena.Opening(h.ID)
	if err != nil {
		return fit.Case{}, err
	}
	lens, ok := c.Kit.Lens(best.Lens)
	if !ok {
		return fit.Case{}, fmt.Errorf("hole %s: the kit has no lens %q", h.ID, best.Lens)
	}
	use := fit.Setting{Focal: unit.Length(best.Focal) * unit.Millimetre, Stop: unit.Stop(best.Stop)}
	return fit.FromKit(o, lens, c.Kit.Bodies[0], use)
}

// mapReaches maps what each hole sees at puck height.
func (c *Content) mapReaches(ctx context.Context) error {
	c.Reaches = make(map[string]*chart.Heat, len(c.Plan.Holes))
	mapper, err := sight.NewMapper(c.Arena, c.Kit)
	if err != nil {
		return err
	}
	grid, err := sight.NewGrid(c.Arena.Rink, heatStep)
	if err != nil {
		return err
	}
	for _, h := range c.Arena.Working() {
		seen, err := mapper.Map(ctx, h, grid, []unit.Length{sight.PuckHeight})
		if err != nil {
			return err
		}
		c.Reaches[h.ID] = heatOf(h, seen)
	}
	return nil
}

func heatOf(h glass.Hole, r sight.Reach) *chart.Heat {
	g := r.Grid
	half := geom.Vec2{X: g.Step / 2, Y: g.Step / 2}
	return &chart.Heat{
		Corner: g.At(0, 0).Sub(half), Step: g.Step, Cols: g.Columns, Rows: g.Rows, Values: r.Parts(0),
		Low: "none", High: fmt.Sprintf("all %d", len(r.Lenses)), Counts: len(r.Lenses), Title: "lenses that can be aimed there",
	}
}

// guard returns the guard of a hole; ok is false when it has none.
func (c Content) guard(id string) (g puck.Guard, ok bool) {
	for _, g := range c.Guards {
		if g.Hole == id {
			return g, true
		}
	}
	return puck.Guard{}, false
}

// sectors are the guards' sectors as the map draws them.
func (c Content) sectors() []chart.Sector {
	var out []chart.Sector
	for _, g := range c.Guards {
		if s := g.Sector; s.Passing {
			out = append(out, chart.Sector{
				Hole: g.Hole, From: s.From, To: s.To, Limit: s.HalfAngle.Or(0), Typical: s.Typical, Far: s.Far, Farthest: s.Farthest,
			})
		}
	}
	return out
}

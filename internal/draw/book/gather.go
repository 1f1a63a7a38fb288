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
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/words"
)

// Options are the choices of who prints the book.
type Options struct {
	Units   unit.System
	Paper   sheet.Paper
	Cut     cut.Options
	Spares  cut.SpareOptions
	Creator string // the program and its version
	Date    string // of the book, as whoever prints it gives it; "" says none
}

// Content is everything that the book says.
type Content struct {
	Plan    plan.Plan
	Arena   arena.Arena // in the units of the book
	Mark    string      // the plan's revision, as on shop drawings
	List    cut.List
	Fits    map[string]chart.Fit   // chart of the best lens, by hole; none where no lens fits
	Reaches map[string]*chart.Heat // how tall a player stands in the best lens's frame, by hole
	Light   *chart.Heat            // on the ice; nil when the survey has no reading
	Views   map[string][]View      // pictures through each hole, the recommended lens's first
	Cover   unit.Maybe[View]       // the best of them; unknown when no lens takes any
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
	if paper := o.Paper.Portrait(); paper.W < leastPaper {
		return Content{}, fmt.Errorf("paper %s: too small for a book; take a4, letter or larger", o.Paper.Name)
	}
	p, err := m.Make(ctx, doc)
	if err != nil {
		return Content{}, err
	}
	if len(p.Holes) == 0 {
		return Content{}, fmt.Errorf("%s: the arena has no working hole; a book needs one to be about", doc.Name())
	}
	if p, err = m.Whole(ctx, p, false); err != nil {
		return Content{}, err
	}
	c := Content{Plan: p, Arena: p.Arena, Mark: arena.Mark(doc.Bytes()), Options: o}
	c.Arena.Units = o.Units
	if c.List, err = cut.NewShopOrder(c.Arena, doc.Bytes(), p.Findings).List(o.Cut, o.Spares); err != nil {
		return Content{}, err
	}
	if err := c.chartFits(ctx); err != nil {
		return Content{}, err
	}
	if c.Light, err = c.mapLight(); err != nil {
		return Content{}, err
	}
	if err := c.mapReaches(ctx); err != nil {
		return Content{}, err
	}
	return c, c.takePictures(ctx)
}

// chartFits works out the loss table of the best lens in each hole; holes
// that are alike share the work.
func (c *Content) chartFits(ctx context.Context) error {
	c.Fits = make(map[string]chart.Fit, len(c.Plan.Holes))
	done := make(map[fit.Case][]fit.LossRow)
	for i, h := range c.Plan.Holes {
		cores.Tell(ctx, "charting the lenses", float64(i)/float64(len(c.Plan.Holes)))
		best, ok := h.BestFit()
		if !ok {
			continue
		}
		if err := ctx.Err(); err != nil {
			return err
		}
		if done[best.Case] == nil {
			done[best.Case] = best.Case.Loss(lossStep).Pan
		}
		c.Fits[h.ID] = chart.Fit{Hole: h.ID, Lens: words.Lens(best), Limits: best.Pan, Rows: done[best.Case]}
	}
	return nil
}

// mapReaches maps what each hole sees: how tall a player stands in the frame
// of its best lens, where some lens can be aimed at the puck.
func (c *Content) mapReaches(ctx context.Context) error {
	c.Reaches = make(map[string]*chart.Heat, len(c.Plan.Holes))
	mapper, err := sight.NewMapper(c.Arena, c.Plan.Kit)
	if err != nil {
		return err
	}
	grid, err := sight.NewGrid(c.Arena.Rink, heatStep)
	if err != nil {
		return err
	}
	for i, h := range c.Arena.Working() {
		cores.Tell(ctx, "colouring the maps", float64(i)/float64(len(c.Plan.Holes)))
		seen, err := mapper.Map(ctx, h, grid, []unit.Length{sight.PuckHeight})
		if err != nil {
			return err
		}
		if planned, ok := c.Plan.Hole(h.ID); ok {
			if best, ok := planned.BestFit(); ok {
				c.Reaches[h.ID] = tallness(seen, c.Arena.Playing().Standing(), words.Lens(best), best.Case)
			}
		}
	}
	return nil
}

// guard returns the guard of a hole; ok is false when it has none.
func (c Content) guard(id string) (g puck.Guard, ok bool) {
	for _, g := range c.Plan.Guards {
		if g.Hole == id {
			return g, true
		}
	}
	return puck.Guard{}, false
}

package sight

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// Grid is the ice cut into square cells, symmetric about centre ice. A cell is
// ice when its middle is; the ice of a row is one run of cells.
type Grid struct {
	Step    float64 // side of a cell, metres
	Columns int     // along the rink, toward end B
	Rows    int     // across, toward the box side
	first   []int32 // of each row's run
	last    []int32 // past it
	cells   int
}

// DefaultStep is the grid's step where none is asked for.
const DefaultStep = 0.1 * unit.Metre

// The steps that a grid may have; the finest gives some 16 million cells.
const (
	LeastStep = 10 * unit.Millimetre
	MostStep  = 5 * unit.Metre
)

// NewGrid cuts a rink's ice into cells. A step outside [LeastStep, MostStep] is
// an error.
func NewGrid(r rink.Rink, step unit.Length) (*Grid, error) {
	if !(step >= LeastStep && step <= MostStep) {
		return nil, fmt.Errorf("grid step %g m: write a length from %s to %s", step.Metres(), LeastStep.Format(unit.Metric), MostStep.Format(unit.Metric))
	}
	w := wallsOf(r)
	g := &Grid{
		Step:    step.Metres(),
		Columns: int(math.Ceil(2*w.x/step.Metres() - 1e-9)),
		Rows:    int(math.Ceil(2*w.y/step.Metres() - 1e-9)),
	}
	g.first, g.last = make([]int32, g.Rows), make([]int32, g.Rows)
	for row := range g.Rows {
		half := w.half(g.middle(row, g.Rows))
		for g.last[row] < int32(g.Columns) && g.middle(int(g.last[row]), g.Columns) < -half {
			g.last[row]++
		}
		g.first[row] = g.last[row]
		for g.last[row] < int32(g.Columns) && g.middle(int(g.last[row]), g.Columns) <= half {
			g.last[row]++
		}
		g.cells += int(g.last[row] - g.first[row])
	}
	return g, nil
}

// middle returns the coordinate of the middle of cell i of n.
func (g *Grid) middle(i, n int) float64 { return (float64(i) - float64(n-1)/2) * g.Step }

// At returns the middle of a cell in the rink's frame, metres.
func (g *Grid) At(column, row int) geom.Vec2 {
	return geom.Vec2{X: g.middle(column, g.Columns), Y: g.middle(row, g.Rows)}
}

// Run returns the cells of a row that are ice: columns from first to last-1.
func (g *Grid) Run(row int) (first, last int) { return int(g.first[row]), int(g.last[row]) }

// Cells returns how many cells are ice.
func (g *Grid) Cells() int { return g.cells }

// Index returns a cell's place in the slices of a [Layer].
func (g *Grid) Index(column, row int) int { return row*g.Columns + column }

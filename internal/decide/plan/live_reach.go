package plan

import (
	"context"
	"fmt"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// ReachQuestion asks for the map of what a hole sees.
type ReachQuestion struct {
	Hole string
	Step float64 // side of a cell in metres, 0.1 to 2; 0 for 0.25
	Face bool    // at the height of faces; else at that of a puck on the ice
}

// ReachMap is the map of what a hole sees, cell by cell.
type ReachMap struct {
	Hole    string  `json:"hole"`
	Step    float64 `json:"step_m"`
	Columns int     `json:"columns"` // along the rink
	Rows    int     `json:"rows"`    // across
	X       float64 `json:"x_m"`     // middle of the first cell, rink frame
	Y       float64 `json:"y_m"`
	Height  float64 `json:"height_m"` // above the ice
	Lenses  int     `json:"lenses"`   // ends of lenses in use
	// Cells is a byte for each cell, row by row from the bench side: how many of
	// the lenses can be aimed at it, OffIce for a cell that is no ice. JSON has it
	// in base64.
	Cells   []byte   `json:"cells"`
	Share   float64  `json:"reach_share"`   // of the ice that some lens can be aimed at, 0 to 1
	Blind   float64  `json:"blind_strip_m"` // mean width of the strip along the near boards that is not seen
	Assumed []string `json:"assumed"`       // what stood in for numbers that the survey lacks
}

// OffIce marks a cell of a reach map that is no ice.
const OffIce = 255

// The steps that a page may ask for, in metres: finer ones take longer than a
// hand rests.
const (
	finestStep   = 0.1
	coarsestStep = 2.0
)

// Reach maps what a hole of an arena document sees. Errors are ctx's, those of
// [arena.Document.Check], and ErrAsked.
func (l *Live) Reach(ctx context.Context, doc *arena.Document, q ReachQuestion) (ReachMap, error) {
	a, err := doc.Check()
	if err != nil {
		return ReachMap{}, err
	}
	h, ok := a.Hole(q.Hole)
	if !ok || h.State == glass.Off {
		return ReachMap{}, fmt.Errorf("%w: the arena has no working hole %.40q", ErrAsked, q.Hole)
	}
	step := unit.Length(q.Step) * unit.Metre
	if q.Step == 0 {
		step = reachStep
	}
	if s := step.Metres(); !(s >= finestStep && s <= coarsestStep) {
		return ReachMap{}, fmt.Errorf("%w: a cell of %g m; ask for %g to %g", ErrAsked, s, finestStep, coarsestStep)
	}
	g, err := l.groundOf(a)
	if err != nil {
		return ReachMap{}, err
	}
	grid, err := sight.NewGrid(a.Rink, step)
	if err != nil {
		return ReachMap{}, err
	}
	height := sight.PuckHeight
	if q.Face {
		height = sight.FaceHeight
	}
	seen, err := g.mapper.Map(ctx, h, grid, []unit.Length{height})
	if err != nil {
		return ReachMap{}, err
	}
	return reachMapOf(seen, a.Units), nil
}

func reachMapOf(r sight.Reach, sys unit.System) ReachMap {
	g, layer := r.Grid, r.Layers[0]
	first := g.At(0, 0)
	out := ReachMap{
		Hole: r.Hole, Step: g.Step, Columns: g.Columns, Rows: g.Rows, X: first.X, Y: first.Y,
		Height: layer.Height.Metres(), Lenses: len(r.Lenses), Share: layer.Share, Blind: r.Blind.Mean,
		Cells: make([]byte, g.Columns*g.Rows), Assumed: arena.Reasons(r.Assumed, sys),
	}
	for row := range g.Rows {
		from, to := g.Run(row)
		for column := range g.Columns {
			i := g.Index(column, row)
			out.Cells[i] = OffIce
			if column >= from && column < to {
				out.Cells[i] = byte(layer.Count(i))
			}
		}
	}
	return out
}

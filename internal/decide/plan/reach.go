package plan

import (
	"context"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
)

// reachStep is the side of a cell of the reach maps: shares are right to about
// a tenth of a per cent, and a plan stays quick.
const reachStep = 0.25 * unit.Metre

// wholeShapes is for how many shapes of hole a plan tells what the whole frame sees,
// which takes about half a second of a core each: a rink's holes have one or a few.
const wholeShapes = 8

// reaches maps what every hole sees and picks the lens that suits it best.
func (p *Plan) reaches(ctx context.Context, k kit.Kit) error {
	mapper, err := sight.NewMapper(p.Arena, k)
	if err != nil {
		return err
	}
	mapper.MindCorners(wholeShapes)
	grid, err := sight.NewGrid(p.Arena.Rink, reachStep)
	if err != nil {
		return err
	}
	left := 0
	step := cores.Steps(ctx, "mapping what the holes see", len(p.Holes))
	for i := range p.Holes {
		h := &p.Holes[i]
		seen, err := mapper.Map(ctx, h.SurveyedHole.Hole, grid, []unit.Length{sight.PuckHeight, sight.FaceHeight})
		if err != nil {
			return err
		}
		h.Reach = IceShare{
			Share: seen.Layers[0].Share, FaceShare: seen.Layers[1].Share, Whole: seen.Layers[0].Whole, WholeFace: seen.Layers[1].Whole,
			Blind: unit.Length(seen.Blind.Ahead), BlindMean: unit.Length(seen.Blind.Mean), Assumed: seen.Assumed,
		}
		h.pickBest(seen, framingOf(seen, k))
		step()
		if _, told := h.Reach.Whole.Get(); !told {
			left++
		}
	}
	if left > 0 {
		p.Remarks = append(p.Remarks, say.Make("what the whole frame sees is told for the first %d shapes of holes, not for %s of further shapes: ask rinkpane sight for it", wholeShapes, say.Count(left, "hole")))
	}
	return nil
}

package plan

import (
	"context"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
)

// reachStep is the side of a cell of the reach maps: shares are right to about
// a tenth of a per cent, and a plan stays quick.
const reachStep = 0.25 * unit.Metre

// reaches maps what every hole sees and picks the lens that suits it best.
func (p *Plan) reaches(ctx context.Context, k kit.Kit) error {
	mapper, err := sight.NewMapper(p.Arena, k)
	if err != nil {
		return err
	}
	grid, err := sight.NewGrid(p.Arena.Rink, reachStep)
	if err != nil {
		return err
	}
	step := cores.Steps(ctx, "mapping what the holes see", len(p.Holes))
	for i := range p.Holes {
		h := &p.Holes[i]
		seen, err := mapper.Map(ctx, h.SurveyedHole.Hole, grid, []unit.Length{sight.PuckHeight, sight.FaceHeight})
		if err != nil {
			return err
		}
		h.Reach = IceShare{
			Share: seen.Layers[0].Share, FaceShare: seen.Layers[1].Share,
			Blind: unit.Length(seen.Blind.Ahead), BlindMean: unit.Length(seen.Blind.Mean), Assumed: seen.Assumed,
		}
		h.pickBest(seen, framingOf(seen, k.Bodies[0]))
		step()
	}
	return nil
}

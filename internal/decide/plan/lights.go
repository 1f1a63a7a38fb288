package plan

import (
	"context"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// lights fills the light tables: what the ice's light asks of the lens that
// suits the hole best, wide open at the usual shutter time.
func (p *Plan) lights(ctx context.Context, k kit.Kit) error {
	lit, err := light.Over(p.Arena, unit.Maybe[unit.Illuminance]{})
	if err != nil {
		return err
	}
	p.Light, err = lit.Compute(p.Arena, light.Request{Wanted: light.Usual(), Body: k.Bodies[0]})
	if err != nil || !p.Light.Known {
		return err
	}
	for i := range p.Holes {
		if err := ctx.Err(); err != nil {
			return err
		}
		h := &p.Holes[i]
		var lens unit.Maybe[LensFit]
		if best, ok := h.BestFit(); ok {
			lens = unit.Known(best)
		}
		if h.Light, err = lightOf(lit, p.Arena, k, h.ID, lens); err != nil {
			return err
		}
	}
	return nil
}

// lightOf returns a hole's table of the arena's light with a lens wide open at the usual
// shutter time; without one at the usual stop.
func lightOf(lit light.Lit, a arena.Arena, k kit.Kit, hole string, with unit.Maybe[LensFit]) ([]light.Row, error) {
	asked := light.Request{Wanted: light.Usual(), Body: k.Bodies[0], Holes: []string{hole}}
	if f, ok := with.Get(); ok {
		asked.Lens, asked.Body = unit.Known(f.Lens), k.BodyOf(f.Lens)
		asked.Wanted = optics.Wanted{Shutter: unit.Known(light.UsualShutter), Stop: unit.Known(f.Stop)}
	}
	report, err := lit.Compute(a, asked)
	if err != nil || len(report.Holes) == 0 {
		return nil, err
	}
	return report.Holes[0].Zones, nil
}

package plan

import (
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
)

// Light is the light of the arena as a whole; each hole has its own table.
type Light struct {
	Known bool             `json:"known"` // the survey holds readings
	Ice   *light.ZoneLight `json:"ice"`   // null when the light is not known
	// MainsHz is the mains frequency in Hz, null when the survey lacks it; lamps
	// flicker at twice of it.
	MainsHz      *float64  `json:"mains_hz"`
	FlickerSafeS []float64 `json:"flicker_safe_s"` // shutter times in seconds
	Notes        []string  `json:"notes"`
}

// lights fills the light tables: what the ice's light asks of the lens that
// suits the hole best, wide open at the usual shutter time.
func (p *Plan) lights(k kit.Kit) error {
	whole, err := light.Compute(p.arena, light.Request{Wanted: light.Usual(), Body: k.Bodies[0]})
	if err != nil {
		return err
	}
	p.Light = Light{whole.Known, whole.Ice, whole.MainsHz, whole.FlickerSafeS, whole.Notes}
	if !whole.Known {
		return nil
	}
	for i := range p.Holes {
		h := &p.Holes[i]
		asked := light.Request{Wanted: light.Usual(), Body: k.Bodies[0], Holes: []string{h.ID}}
		if best, ok := h.BestFit(); ok {
			lens, _ := k.Lens(best.Lens)
			asked.Lens = unit.Known(lens)
			asked.Wanted = optics.Wanted{Shutter: unit.Known(light.UsualShutter), Stop: unit.Known(unit.Stop(best.Stop))}
		}
		report, err := light.Compute(p.arena, asked)
		if err != nil {
			return err
		}
		for _, of := range report.Holes {
			h.Light = append(h.Light, of.Zones...)
		}
	}
	return nil
}

package words

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Near prints a distance as people speak of it, to the inch or the centimetre: a
// drawing for the saw prints it finely.
func Near(l unit.Length, sys unit.System) string { return near(l, sys).Format(sys) }

// NearPlace tells a place on the boards to the inch or the centimetre.
func NearPlace(p arena.Place, sys unit.System) string {
	p.Offset = near(p.Offset, sys)
	if s, ok := p.Station.Get(); ok {
		p.Station = unit.Known(near(s, sys))
	}
	return p.Say(sys)
}

func near(l unit.Length, sys unit.System) unit.Length {
	step := unit.Centimetre
	if sys == unit.Imperial {
		step = unit.Inch
	}
	return step * unit.Length(math.Round(float64(l/step)))
}

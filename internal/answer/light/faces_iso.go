package light

import (
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// FacesISO returns the ISO that a face at a place of the ice (metres) asks for through a hole that
// lets a share of the light pass, 0 to 1; unknown where no light was surveyed or none passes.
func FacesISO(a arena.Arena, at geom.Vec2, pass float64, t unit.Shutter, n unit.Stop) unit.Maybe[unit.ISO] {
	faces, err := NewField(SurveyOfFaces(a.Light))
	if err != nil || pass <= 0 {
		return unit.Maybe[unit.ISO]{}
	}
	e, _ := faces.At(at)
	return unit.Known(optics.DefaultCalibration.ISO(unit.Illuminance(float64(e)*pass), t, n))
}

package light

import (
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// usualColour is the colour temperature of a rink's lamps where nobody recorded it, kelvin
// (common practice for sports halls, no published source).
const usualColour = 4000.0

// Colour is the colour of the light over the ice.
type Colour struct {
	mireds  *Field  // of readings that tell it
	hall    float64 // elsewhere, kelvin
	Assumed bool    // nobody recorded any
}

// ColourOf returns the colour of an arena's light: of the readings that tell theirs, those
// that do not as the whole hall.
func ColourOf(l arena.Light) Colour {
	c := Colour{hall: l.Colour.Or(usualColour), Assumed: l.Colour.IsZero()}
	var points []Point
	told := false
	for _, r := range l.Readings {
		told = told || !r.Colour.IsZero()
		points = append(points, Point{At: r.At, Lux: unit.Illuminance(1e6 / r.Colour.Or(c.hall))})
	}
	if !told {
		return c
	}
	c.Assumed = false
	c.mireds, _ = NewField(points) // readings that were read lie above 0; without any the hall's colour stands
	return c
}

// At returns the colour temperature at a place of the ice (metres), kelvin. Between
// readings its reciprocal is interpolated, in which equal steps look equal (mired).
func (c Colour) At(q geom.Vec2) float64 {
	if c.mireds == nil {
		return c.hall
	}
	m, _ := c.mireds.At(q)
	return 1e6 / float64(m)
}

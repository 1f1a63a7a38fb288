package sheet

import "math"

// View maps a model in its own unit, y up, to the sheet: uniform scale, a turn,
// and y turned over. Circles stay circles.
type View struct {
	Origin Point   // where the model's (0, 0) stands on the sheet, mm
	Scale  float64 // millimetres on the sheet for one unit of the model
	Turn   float64 // radians: the model is turned counter-clockwise as seen
}

// At returns where the model's (x, y) stands on the sheet.
func (v View) At(x, y float64) Point {
	if v.Turn != 0 {
		s, c := math.Sincos(v.Turn)
		x, y = x*c-y*s, x*s+y*c
	}
	return Point{v.Origin.X + v.Scale*x, v.Origin.Y - v.Scale*y}
}

// Len returns a length of the model in millimetres on the sheet.
func (v View) Len(l float64) float64 { return v.Scale * l }

// Angle returns a direction of the model, radians counter-clockwise from its x
// axis, as a direction on the sheet.
func (v View) Angle(a float64) float64 { return a + v.Turn }

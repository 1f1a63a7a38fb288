package sheet

// View maps a model in its own unit, y up, to the sheet: uniform scale, and y
// turned over. Circles stay circles.
type View struct {
	Origin Point   // where the model's (0, 0) stands on the sheet, mm
	Scale  float64 // millimetres on the sheet for one unit of the model
}

// At returns where the model's (x, y) stands on the sheet.
func (v View) At(x, y float64) Point {
	return Point{v.Origin.X + v.Scale*x, v.Origin.Y - v.Scale*y}
}

// Len returns a length of the model in millimetres on the sheet.
func (v View) Len(l float64) float64 { return v.Scale * l }

package chart

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// A page on which holes are moved must know where a place on the boards lies on
// the drawing, and the other way round, without asking. Two frames tell it.

// MapFrame is where the rink lies on a plan map: the rink's point (x, y) in
// metres stands at (CentreX + Scale x, CentreY - Scale y) millimetres of the sheet,
// and a hole's mark Out millimetres outside the boards' rink face.
type MapFrame struct {
	CentreX, CentreY float64 // millimetres
	Scale            float64 // millimetres on the sheet for a metre of the rink
	Out              float64 // millimetres
	Width            float64 // of the sheet, millimetres
}

// MapFrame returns the frame of PlanMap(p, width); width in millimetres.
func (p Content) MapFrame(width float64) MapFrame {
	m := &planMap{Content: p, holes: p.Arena.Holes}
	m.ground = m.lay(max(width, leastWidth))
	return MapFrame{CentreX: m.Origin.X, CentreY: m.Origin.Y, Scale: m.Scale, Out: m.glassOut(), Width: max(width, leastWidth)}
}

// StripFrame is where the boards lie on a strip of one row: a station s in metres
// stands at Left + Scale s, a height h above the ice at Ice - Scale h, all in
// millimetres of the sheet.
type StripFrame struct {
	Left, Ice float64 // millimetres
	Scale     float64 // millimetres on the sheet for a metre of boards
	Width     float64 // of the sheet, millimetres
}

// StripFrame returns the frame of BoardsStrip(p, width, 1); width in millimetres.
func (p Content) StripFrame(width float64) StripFrame {
	width = max(width, leastWidth)
	s := newStrip(p, width, 1)
	y := 0.0
	if !p.Bare {
		y = p.headingRoom() + 2
	}
	return StripFrame{Left: stripLeft, Ice: s.rowAt(0, y).ice, Scale: s.scale, Width: width}
}

// longestNote is the longest note that a page sets under a hole that is moved.
const longestNote = "no lens fits"

// guideIn is how far a guide reaches into the rink, in millimetres.
const guideIn = 9

// guide draws the line that a page lays at the place to which a hole snaps: at
// the drawing's origin, along x out of the rink. The page moves and turns it.
func (m *planMap) guide() {
	g, e := m.d.Group("guide", "guide-mark")
	e.With("guide", "map")
	g.Add("guide", sheet.Line{A: sheet.Pt(-guideIn, 0), B: sheet.Pt(leaderOut, 0)})
}

// guide is the strip's: from the glass's top to the ice, at x = 0.
func (r *stripRow) guide() {
	g, e := r.d.Group("guide", "guide-mark")
	e.With("guide", "strip")
	g.Add("guide", sheet.Line{A: sheet.Pt(0, r.top-stretchHigh), B: sheet.Pt(0, r.ice+1)})
}

// HeatFrame returns a heat map without values for a page to fill, on a grid of so
// many columns and rows of a step in metres, symmetric about centre ice.
func HeatFrame(columns, rows int, step float64, address, title string) *Heat {
	h := &Heat{Step: step, Cols: columns, Rows: rows, Address: address, Title: title, Low: "no lens", High: "every lens"}
	h.Corner.X, h.Corner.Y = -step*float64(columns)/2, -step*float64(rows)/2
	return h
}

// At returns where the rink's point (x, y), in metres, stands on the sheet.
func (f MapFrame) At(x, y float64) sheet.Point {
	return sheet.Pt(f.CentreX+f.Scale*x, f.CentreY-f.Scale*y)
}

// At returns where a station and a height above the ice stand on the sheet.
func (f StripFrame) At(station, height unit.Length) sheet.Point {
	return sheet.Pt(f.Left+f.Scale*math.Max(station.Metres(), 0), f.Ice-f.Scale*height.Metres())
}

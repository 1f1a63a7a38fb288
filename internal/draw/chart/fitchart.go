package chart

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// Fit is what a fit chart and a polar pan chart show of a lens in a hole.
type Fit struct {
	Hole, Lens string
	Limits     fit.AxisLimits
	Rows       []fit.LossRow // the loss table over pan, in rising angle
}

// worstStops is where the axis of lost stops ends: beyond, a picture is no use.
const worstStops = 4.0

// FitChart draws the stops lost against pan, at the frame's centre and at its
// worst corner, with the limits of the lens marked, at a width and height in
// millimetres.
func FitChart(f Fit, width, height float64) *sheet.Drawing {
	p := Plot{
		Name: "fit", Title: f.Lens + " in " + f.Hole,
		Desc: "Stops of light lost against pan, at the frame's centre and at its worst corner.",
		X:    Axis{Name: "pan from straight ahead, degrees", High: 90, Step: 15},
		Y:    Axis{Name: "light lost, stops", FromZero: true},
	}
	centre, corner := Series{Name: "frame's centre"}, Series{Name: "worst corner"}
	for _, r := range f.Rows {
		x := r.Angle.Degrees()
		centre.Points = append(centre.Points, XY{x, stops(r.Centre)})
		corner.Points = append(corner.Points, XY{x, stops(r.Corner)})
	}
	p.Series = []Series{centre, corner}
	for _, m := range f.limits() {
		p.Marks = append(p.Marks, RefLine{Words: fmt.Sprintf("%s %.1f°", m.name, m.at.Degrees()), At: m.at.Degrees(), Strong: m.name == "clean"})
	}
	return p.Draw(width, height)
}

// stops returns the loss of a transmission in stops, NaN past the end of the axis.
func stops(t float64) float64 {
	s, ok := fit.Stops(t)
	if !ok || s > worstStops {
		return math.NaN()
	}
	return s
}

type limit struct {
	name string
	at   unit.Angle
}

// limits lists the known limits under 89.9 degrees, where the search ends.
func (f Fit) limits() []limit {
	const never = 89.85 * unit.Degree
	var out []limit
	for _, l := range []struct {
		name string
		at   unit.Maybe[unit.Angle]
	}{{"touch", f.Limits.Body}, {"camera", f.Limits.Camera}, {"clean", f.Limits.Clear}, {"half", f.Limits.Usable}} {
		if a, ok := l.at.Get(); ok && a < never {
			out = append(out, limit{l.name, a})
		}
	}
	return out
}

package chart

import (
	"math"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/glass"
)

// markSize is half a hole mark's breadth on the plan map, in millimetres.
const markSize = 1.5

// drawMark adds the sign of a hole: a disc with a tick passes, a square with a
// cross fails, a diamond with a bar is unknown, a ring has no verdict, a dashed
// ring is turned off.
func drawMark(g *sheet.Group, at sheet.Point, state glass.State, status rules.Status) {
	r := markSize
	p := about(at, r)
	switch {
	case state == glass.Off:
		g.Add("hole hole-off", sheet.Circle{C: at, R: 0.7 * r})
	case status == rules.Pass:
		g.Add("hole hole-pass", sheet.Circle{C: at, R: r})
		g.Add("hole-sign", sheet.Lines(p(-0.5, 0.05), p(-0.12, 0.45), p(0.5, -0.4)))
	case status == rules.Fail:
		g.Add("hole hole-fail", square(p, 0.92))
		g.Add("hole-sign", sheet.Line{A: p(-0.45, -0.45), B: p(0.45, 0.45)})
		g.Add("hole-sign", sheet.Line{A: p(-0.45, 0.45), B: p(0.45, -0.45)})
	case status == rules.Unknown:
		g.Add("hole hole-unknown", diamond(p, math.Sqrt2*0.92))
		g.Add("hole-sign", sheet.Line{A: p(-0.5, 0), B: p(0.5, 0)})
	default:
		g.Add("hole", sheet.Circle{C: at, R: 0.85 * r})
	}
}

// about returns the places of a sign of radius r about a point.
func about(at sheet.Point, r float64) func(x, y float64) sheet.Point {
	return func(x, y float64) sheet.Point { return sheet.Pt(at.X+x*r, at.Y+y*r) }
}

func square(p func(x, y float64) sheet.Point, k float64) sheet.Polyline {
	return sheet.Polygon(p(-k, -k), p(k, -k), p(k, k), p(-k, k))
}

func diamond(p func(x, y float64) sheet.Point, k float64) sheet.Polyline {
	return sheet.Polygon(p(0, -k), p(k, 0), p(0, k), p(-k, 0))
}

// markWords says in words what a mark shows.
func markWords(state glass.State, status rules.Status) string {
	switch {
	case state == glass.Off:
		return "turned off"
	case status == rules.Pass:
		return "passes the rules"
	case status == rules.Fail:
		return "breaks a rule"
	case status == rules.Unknown:
		return "survey lacks a number"
	}
	return "hole"
}

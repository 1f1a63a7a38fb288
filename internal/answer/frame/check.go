package frame

import (
	"image/color"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
)

// A Check is a known place of the rink that is marked in a picture, to lay it over a real
// frame.
type Check struct {
	Name string
	At   geom.Vec3 // metres, rink frame
}

// A CheckPoint is a check in a picture: its number there, and where it lies in pixels from
// the upper left corner (pixel centres at .5, y down).
type CheckPoint struct {
	Check
	Number int
	Px     geom.Vec2
}

// mostChecks is how many points are numbered: two digits.
const mostChecks = 99

// CheckPoints returns the checks that lie in a picture of w by h pixels and that the hole
// lets light through to, in the order given, numbered from 1: of those whose marks would lie on
// one another the first, so that each number is read beside its cross. What stands before
// them is not asked.
func (s *Shot) CheckPoints(w, h int) []CheckPoint {
	var out []CheckPoint
	for _, c := range s.Checks {
		x, y, _, ok := s.Camera.Project(c.At)
		if !ok || math.Abs(x) > 1 || math.Abs(y) > 1 || s.Transmission(x, y)*s.LedgeFree(x, y) < darkFrame || len(out) == mostChecks {
			continue
		}
		px := screen{float64(w), float64(h)}.place(x, y)
		if slices.ContainsFunc(out, func(o CheckPoint) bool { return crowded(o.Px.Sub(px), float64(max(w, h))) }) {
			continue
		}
		out = append(out, CheckPoint{c, len(out) + 1, px})
	}
	return out
}

// crowded reports whether two marks so far apart lie on one another, in a picture with a longer
// side of so many pixels: each takes its cross and two digits to its right.
func crowded(apart geom.Vec2, long float64) bool {
	wide, high := (2*crossLong+checkAside+2*checkStep)*long, (crossLong+checkHigh+checkAside)*long
	return math.Abs(apart.X) < wide && math.Abs(apart.Y) < high
}

// Marks of checks, as parts of the picture's longer side (own choice).
const (
	crossLong  = 9.0 / 1200
	crossThick = 1.6 / 1200
	checkHigh  = 11.0 / 1200 // of a digit
	checkWide  = 6.0 / 1200
	checkStep  = 1.6 * checkWide // from one digit to the next
	checkAside = 4.0 / 1200      // of the first, right of and above the cross's middle
	checkPen   = 1.5 / 1200
	checkHalo  = 1.0 / 1200 // of the dark rim about everything
)

var (
	checkPaint = color.NRGBA{255, 226, 64, 255}
	haloPaint  = color.NRGBA{10, 12, 16, 255}
)

// checks draws a cross and a number at each check in the picture, dark rims first.
func (st stage) checks(s *Shot) []shape {
	long := max(st.screen.w, st.screen.h)
	var rims, faces []shape
	bar := func(at geom.Vec2, halfW, halfH float64) {
		for _, pass := range []struct {
			to    *[]shape
			grow  float64
			paint color.NRGBA
		}{{&rims, checkHalo * long, haloPaint}, {&faces, 0, checkPaint}} {
			w, h := halfW+pass.grow, halfH+pass.grow
			*pass.to = append(*pass.to, newShape([]geom.Vec2{
				{X: at.X - w, Y: at.Y - h}, {X: at.X + w, Y: at.Y - h}, {X: at.X + w, Y: at.Y + h}, {X: at.X - w, Y: at.Y + h},
			}, pass.paint))
		}
	}
	for _, c := range s.CheckPoints(int(st.screen.w), int(st.screen.h)) {
		bar(c.Px, crossLong*long, crossThick*long/2)
		bar(c.Px, crossThick*long/2, crossLong*long)
		digits := []int{c.Number % 10}
		if c.Number > 9 {
			digits = []int{c.Number / 10, c.Number % 10}
		}
		for i, d := range digits {
			left := c.Px.Add(geom.Vec2{X: (checkAside + float64(i)*checkStep) * long, Y: -checkAside * long})
			for _, k := range strokes(d) {
				a, b := k.from, k.to
				mid := geom.Vec2{X: left.X + (a.X+b.X)/2*checkWide*long, Y: left.Y - (a.Y+b.Y)/2*checkHigh*long}
				bar(mid, math.Abs(b.X-a.X)/2*checkWide*long+checkPen*long/2, math.Abs(b.Y-a.Y)/2*checkHigh*long+checkPen*long/2)
			}
		}
	}
	return append(rims, faces...)
}

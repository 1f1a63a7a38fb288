// Package rink answers where things are on the ice: the boards as a rounded
// rectangle, the painted markings, and the stations, corners and landmarks
// along the boards.
//
// The model, seen from above (x toward end B, y toward the penalty boxes):
//
//	                 box side  y>0
//	     .----------------+----------------.
//	   /    A-box         |         B-box    \
//	  |                   |                   |      station 0 is at the bench-side
//	A |- - - - - - - - - -o- - - - - - - - - -| B    end of the red line; stations
//	  |                   |                   |      rise counter-clockwise:
//	   \    A-bench       |        B-bench   /       first toward end B
//	     '----------------0--->------------'
//	                bench side  y<0
//
// Four straights and four quarter arcs of one radius, exact: nothing is cut
// into chords. Lengths are [unit.Length] (metres); plane points are
// [geom.Vec2] in metres, origin at centre ice. The boards' rink face is the
// curve; the glass stands behind it (see package glass).
//
// Limits: all four corners share one radius, the ends are alike, and the two
// halves are mirror images. A rink whose corners differ is not described.
package rink

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Rink is a checked rink. Make one with [New] or [Standard]; the zero value
// has no ice. Two rinks are equal (==) when their dimensions are.
type Rink struct{ dim Dimensions }

// Dimensions returns what the rink was made from.
func (r Rink) Dimensions() Dimensions { return r.dim }

// Marked reports whether the rink has painted markings.
func (r Rink) Marked() bool { return r.dim.Markings.GoalLine > 0 }

// Perimeter returns the length of the boards' rink face in metres,
// 2(L+W) - 8r + 2 pi r.
func (r Rink) Perimeter() unit.Length { return unit.Length(2 * r.half()) }

// Area returns the ice area in square metres, L W - (4-pi) r^2.
func (r Rink) Area() float64 {
	l, w, c := r.dim.Length.Metres(), r.dim.Width.Metres(), r.dim.CornerRadius.Metres()
	return l*w - (4-math.Pi)*c*c
}

// HalfWidth returns the distance from the long axis to the boards at x metres
// from centre ice, in metres; 0 beyond the end boards.
func (r Rink) HalfWidth(x float64) float64 {
	f := r.frame()
	x = math.Abs(x)
	switch {
	case x <= f.a:
		return f.b + f.r
	case x > f.a+f.r:
		return 0
	}
	d := x - f.a
	return f.b + math.Sqrt((f.r-d)*(f.r+d))
}

// frame is the rink's skeleton: the arcs' centres stand at (+-a, +-b).
type frame struct{ a, b, r float64 }

func (r Rink) frame() frame {
	c := r.dim.CornerRadius.Metres()
	return frame{r.dim.Length.Metres()/2 - c, r.dim.Width.Metres()/2 - c, c}
}

// arc is the length of one quarter arc.
func (f frame) arc() float64 { return f.r * (math.Pi / 2) }

// half is half the perimeter.
func (f frame) half() float64 { return 2*f.a + 2*f.b + 2*f.arc() }

func (r Rink) half() float64 { return r.frame().half() }

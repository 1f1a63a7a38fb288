package play

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// Layout is the rink as the sampler needs it: plain metres in the rink's frame.
// Distances from the axes are positive and hold for both ends and sides.
type Layout struct {
	HalfLength, HalfWidth, CornerRadius float64

	GoalX      float64 // goal line from centre ice, or from the long axis in games across the ice
	Across     float64 // where games go across the ice: the middle of their zones from centre ice; else 0
	BlueX      float64 // blue line's neutral-zone edge from centre ice
	SpotX      float64 // end-zone spots from centre ice
	SpotY      float64 // end-zone spots from the long axis
	NeutralX   float64 // neutral spots from centre ice
	CircleR    float64 // end-zone circles
	GoalHalf   float64 // half the width between the posts
	GoalHeight float64
	GoalDepth  float64 // goal line to the back of the net
	Crease     float64 // radius

	// The benches lie along the boards at y = -HalfWidth: the home team's from
	// -BenchFar to -BenchNear, the away team's from BenchNear to BenchFar, where
	// the rink says nothing else ([Game]).
	BenchNear, BenchFar float64
}

// What stands in for markings that a rink lacks, as shares of its length and
// width or in metres: the North American book's proportions (200 x 85 ft:
// goal line 11 ft, blue line 75 ft, spots 20 ft from the goal line and 22 ft
// off the axis; goal 6 x 4 ft; circle 15 ft, crease 6 ft).
const (
	goalLineShare = 11.0 / 200
	blueLineShare = 75.0 / 200
	spotShare     = 31.0 / 200
	spotYShare    = 22.0 / 85
	neutralShare  = 80.0 / 200
	circleShare   = 15.0 / 85
	goalHalfDef   = 0.9144
	goalHeightDef = 1.2192
	creaseDef     = 1.8288
	// goalDepthDef is 44 in, the depth of common goal frames (from memory).
	goalDepthDef = 1.12
	// The benches: each about 8 m long beside a gap of 2 m at the red line; own
	// assumption, from the 24 ft and more that rule books ask for (from memory).
	benchGap = 2.0
	benchLen = 8.0
)

// LayoutOf returns the layout of a rink. Markings that the rink lacks are
// taken in the North American book's proportions.
func LayoutOf(r rink.Rink) Layout {
	d := r.Dimensions()
	m := d.Markings
	l, w := d.Length.Metres(), d.Width.Metres()
	half := l / 2
	lay := Layout{
		HalfLength: half, HalfWidth: w / 2, CornerRadius: d.CornerRadius.Metres(),
		GoalX:    half - or(m.GoalLine, goalLineShare*l),
		CircleR:  or(m.CircleRadius, circleShare*w),
		SpotY:    or(m.SpotFromAxis, spotYShare*w),
		GoalHalf: or(m.GoalWidth/2, goalHalfDef), GoalHeight: or(m.GoalHeight, goalHeightDef),
		GoalDepth: or(m.GoalDepth, goalDepthDef), Crease: or(m.CreaseRadius, creaseDef),
	}
	lay.BlueX = half - or(m.BlueLine, blueLineShare*l)
	if m.BlueLineTo == rink.LineMiddle {
		lay.BlueX -= m.BlueWidth.Metres() / 2
	}
	lay.SpotX = half - spotShare*l
	if m.SpotFromGoal > 0 {
		lay.SpotX = lay.GoalX - m.SpotFromGoal.Metres()
	}
	lay.NeutralX = half - neutralShare*l
	if m.NeutralSpot > 0 {
		lay.NeutralX = lay.BlueX - m.NeutralSpot.Metres()
	}
	lay.BenchNear = min(benchGap/2, lay.BlueX/2)
	lay.BenchFar = min(benchGap/2+benchLen, lay.BlueX)
	return lay
}

func or(l unit.Length, otherwise float64) float64 {
	if l > 0 {
		return l.Metres()
	}
	return otherwise
}

// Clearance returns the distance in metres from a point to the boards:
// positive on the ice. It is exact inside the rink, arcs included.
func (l Layout) Clearance(x, y float64) float64 {
	qx := math.Abs(x) - (l.HalfLength - l.CornerRadius)
	qy := math.Abs(y) - (l.HalfWidth - l.CornerRadius)
	outside := math.Hypot(max(qx, 0), max(qy, 0))
	return l.CornerRadius - outside - min(max(qx, qy), 0)
}

// outward returns the direction from a place on the ice to the nearest boards, in radians.
func (l Layout) outward(x, y float64) float64 {
	qx := math.Abs(x) - (l.HalfLength - l.CornerRadius)
	qy := math.Abs(y) - (l.HalfWidth - l.CornerRadius)
	if qx < 0 || qy < 0 { // straight boards: the nearer ones
		qx, qy = max(qx-qy, 0), max(qy-qx, 0)
	}
	return math.Atan2(math.Copysign(qy, y), math.Copysign(qx, x))
}

// inGoal reports whether a disc of radius r touches a goal's frame or net.
func (l Layout) inGoal(x, y, r float64) bool {
	ax := math.Abs(x)
	return ax > l.GoalX-r && ax < l.GoalX+l.GoalDepth+r && math.Abs(y) < l.GoalHalf+r
}

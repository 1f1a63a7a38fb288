package frame

import "example.org/rinkpane/internal/measure/geom"

// A stroke is one straight bar of a digit in a box of width and height 1,
// from corner to corner of a grid with three rows.
type stroke struct{ from, to geom.Vec2 }

// bars are the seven bars of a block digit: top, upper left, upper right,
// middle, lower left, lower right, bottom.
var bars = [7]stroke{
	{geom.Vec2{X: 0, Y: 1}, geom.Vec2{X: 1, Y: 1}},
	{geom.Vec2{X: 0, Y: 0.5}, geom.Vec2{X: 0, Y: 1}},
	{geom.Vec2{X: 1, Y: 0.5}, geom.Vec2{X: 1, Y: 1}},
	{geom.Vec2{X: 0, Y: 0.5}, geom.Vec2{X: 1, Y: 0.5}},
	{geom.Vec2{X: 0, Y: 0}, geom.Vec2{X: 0, Y: 0.5}},
	{geom.Vec2{X: 1, Y: 0}, geom.Vec2{X: 1, Y: 0.5}},
	{geom.Vec2{X: 0, Y: 0}, geom.Vec2{X: 1, Y: 0}},
}

// lit says which bars each digit uses, in the order of bars.
var lit = [10]string{"ABCEFG", "CF", "ACDEG", "ACDFG", "BCDF", "ABDFG", "ABDEFG", "ACF", "ABCDEFG", "ABCDFG"}

// strokes returns the bars of a digit 0..9.
func strokes(d int) []stroke {
	var out []stroke
	for _, letter := range lit[d] {
		out = append(out, bars[letter-'A'])
	}
	return out
}

// Digits on a back, in metres on the model figure: own judgement, about the
// 10 in that rule books ask for.
const (
	digitHigh  = 0.25
	digitWide  = 0.12
	digitGap   = 0.075
	digitThick = 0.034
	digitFoot  = 1.13 // above the ice
	bendStep   = 0.05 // a stroke is bent around the back in pieces so long
)

// box returns the bar's lower left and upper right corner in the digit's box;
// bars overlap at their ends, so that digits have no gaps.
func (s stroke) box() (lo, hi geom.Vec2) {
	half := geom.Vec2{X: digitThick / digitWide / 2, Y: digitThick / digitHigh / 2}
	return geom.Vec2{X: min(s.from.X, s.to.X), Y: min(s.from.Y, s.to.Y)}.Sub(half),
		geom.Vec2{X: max(s.from.X, s.to.X), Y: max(s.from.Y, s.to.Y)}.Add(half)
}

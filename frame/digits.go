package frame

import "example.org/rinkpane/geom"

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

// corners returns the bar as a rectangle of a thickness given as a share of
// the box's width; bars overlap at their ends, so that digits have no gaps.
func (s stroke) corners(thick float64) [4]geom.Vec2 {
	half := thick / 0.17 / 2
	tall := thick / 0.30 / 2
	if s.from.Y == s.to.Y {
		return [4]geom.Vec2{{X: s.from.X - half, Y: s.from.Y - tall}, {X: s.to.X + half, Y: s.to.Y - tall},
			{X: s.to.X + half, Y: s.to.Y + tall}, {X: s.from.X - half, Y: s.from.Y + tall}}
	}
	return [4]geom.Vec2{{X: s.from.X - half, Y: s.from.Y - tall}, {X: s.from.X + half, Y: s.from.Y - tall},
		{X: s.to.X + half, Y: s.to.Y + tall}, {X: s.to.X - half, Y: s.to.Y + tall}}
}

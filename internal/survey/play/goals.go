package play

import (
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/rink"
)

// Goal is a goal frame: the middle of its line, and the direction from its mouth into
// the net, along an axis of the rink.
type Goal struct{ Line, In geom.Vec2 }

// Local returns a place in the goal's own frame, in metres: how far past the goal line it
// lies, and how far along it from the middle.
func (g Goal) Local(p geom.Vec2) (past, along float64) {
	p = p.Sub(g.Line)
	return p.Dot(g.In), p.Y*g.In.X - p.X*g.In.Y
}

// Field returns the layout of a rink as its games are played on it.
func Field(r rink.Rink, g Game) Layout {
	lay := LayoutOf(r)
	if g.CrossIce {
		lay.across(acrossOf(lay))
	}
	return lay
}

// across sets the goals of small games in place of those at the ends.
func (l *Layout) across(a across) { l.Across, l.GoalX = a.middle, a.small.GoalX }

// Net returns the goal that is attacked: at the end +1 or -1, and in a game across the
// ice at the side +1 (y > 0) or -1.
func (l Layout) Net(end, side int) Goal {
	if l.Across > 0 {
		return Goal{geom.Vec2{X: float64(end) * l.Across, Y: float64(side) * l.GoalX}, geom.Vec2{Y: float64(side)}}
	}
	return Goal{geom.Vec2{X: float64(end) * l.GoalX}, geom.Vec2{X: float64(end)}}
}

// Goals returns every goal on the ice, end B first; none on a layout without.
func (l Layout) Goals() []Goal {
	sides := []int{1, -1}
	switch {
	case l.GoalHeight == 0:
		return nil
	case l.Across == 0:
		sides = sides[:1]
	}
	var out []Goal
	for _, end := range [2]int{1, -1} {
		for _, side := range sides {
			out = append(out, l.Net(end, side))
		}
	}
	return out
}

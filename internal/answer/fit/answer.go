package fit

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Answer is everything about one lens in one hole.
type Answer struct {
	Case    Case
	Limits  Limits
	Loss    Loss
	View    *View              // at the aim asked for; nil without one
	Assumed []arena.Assumption // what stood in for lengths that the survey lacks
}

// Answer computes limits and losses, rows of these a step apart, and the light at
// an aim: pan and tilt.
func (c Case) Answer(step unit.Angle, aim unit.Maybe[[2]unit.Angle]) Answer {
	out := Answer{Case: c, Limits: c.Limits(), Loss: c.Loss(step)}
	if at, ok := aim.Get(); ok {
		v := c.At(at[0], at[1])
		out.View = &v
	}
	return out
}

// Behind returns how far the foremost point of a nose of a diameter stands behind the
// rink face, in metres, 0 at it.
func (p Pose) Behind(nose float64) float64 { return max(0, -p.Foremost(nose).Z) }

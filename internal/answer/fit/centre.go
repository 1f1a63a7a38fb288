package fit

import "example.org/rinkpane/internal/measure/geom"

// centre returns the T toward the frame's centre in the pose that is best for
// the centre alone.
//
// Seen along the axis every pose looks like one wholly behind the pane: pupil
// points in the slab lie inside the lens, which clears the pane, so that the
// rear outline would not limit them anyway. T then depends only on where the
// axis runs. It is best through the middle of the hole's prism, where the
// pupil's footprint and what is open to it, both symmetric about their
// centres, have their centres in one place; a lens can always be drawn back
// along its axis until it clears the pane. A fixed camera's axis runs through
// the hole's centre on the rink face. Along any one azimuth both outlines,
// seen along the axis, close in as the angle grows: T falls all the way.
func (c *Case) centre(a *aim) float64 {
	var r ray
	r.ready(c, a, a.axis)
	if !r.open {
		return 0
	}
	e := geom.Ellipse{A: r.a, B: r.b}
	if c.Pivot == Free {
		e.Centre = r.middle
	}
	area, _ := r.shared.Overlap(e)
	return min(1, area/r.area)
}

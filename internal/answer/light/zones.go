package light

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/rink"
)

// Zone is a part of the ice in which pictures happen: what lies on the ice of
// an upright rectangle, in metres in the rink's frame.
type Zone struct {
	ID       string
	Min, Max geom.Vec2
}

// Centre returns the middle of the zone's rectangle, at which a camera is aimed.
func (z Zone) Centre() geom.Vec2 { return z.Min.Add(z.Max).Scale(0.5) }

// Contains reports whether a place in the rink's frame, metres, lies in the zone's rectangle.
func (z Zone) Contains(p geom.Vec2) bool {
	return p.X >= z.Min.X && p.X <= z.Max.X && p.Y >= z.Min.Y && p.Y <= z.Max.Y
}

// Area returns the rectangle's area, square metres.
func (z Zone) Area() float64 { s := z.Max.Sub(z.Min); return s.X * s.Y }

// Zones cuts the ice: each end zone, its slot (from the goal line to the tops
// of the circles, between the end-zone spots) and its two corners (from the
// spots to the end boards, outside the spots), and the neutral zone. They
// overlap: slot and corners lie in their end zone. A rink that lacks a marking
// is cut where an international one of its size has it.
func Zones(r rink.Rink) []Zone {
	d := r.Dimensions()
	l, w := d.Length.Metres()/2, d.Width.Metres()/2
	m := measure(r)
	at := func(id string, x0, x1, y0, y1 float64) Zone {
		return Zone{id, geom.Vec2{X: x0, Y: y0}, geom.Vec2{X: x1, Y: y1}}
	}
	return []Zone{
		at("end-A", -l, -m.blue, -w, w),
		at("slot-A", -m.goal, -m.top, -m.off, m.off),
		at("corner-A-bench", -l, -m.spot, -w, -m.off),
		at("corner-A-box", -l, -m.spot, m.off, w),
		at("neutral", -m.blue, m.blue, -w, w),
		at("end-B", m.blue, l, -w, w),
		at("slot-B", m.top, m.goal, -m.off, m.off),
		at("corner-B-bench", m.spot, l, -w, -m.off),
		at("corner-B-box", m.spot, l, m.off, w),
	}
}

// measures are distances in metres from centre ice along the rink, and off the axis.
type measures struct{ goal, blue, spot, top, off float64 }

// Shares of the international rink, 60 x 30 m: goal line 4 m, spots 10 m, circle
// tops 14.5 m and blue lines 22.86 m from the end boards; spots 7 m off the axis.
const (
	goalShare = 4.0 / 60
	spotShare = 10.0 / 60
	topShare  = 14.5 / 60
	blueShare = 22.86 / 60
	offShare  = 7.0 / 30
)

func measure(r rink.Rink) measures {
	d := r.Dimensions()
	long, m := d.Length.Metres(), d.Markings
	from := func(share float64) float64 { return long * (0.5 - share) }
	out := measures{from(goalShare), from(blueShare), from(spotShare), from(topShare), d.Width.Metres() * offShare}
	if r.Marked() {
		out.goal = r.GoalX()
	}
	if m.BlueLine > 0 {
		out.blue, _ = r.BlueX()
	}
	if m.SpotFromGoal > 0 && m.SpotFromAxis > 0 {
		out.spot, out.off = r.GoalX()-m.SpotFromGoal.Metres(), m.SpotFromAxis.Metres()
		out.top = out.spot - m.CircleRadius.Metres()
	}
	out.top = min(out.top, out.goal)
	return out
}

// step is the greatest distance between two places at which a zone's light is
// taken, in metres: readings lie further apart.
const step = 1.0

// places returns the middles of equal cells of at most step that lie on the
// ice, row by row from the bench side.
func (z Zone) places(r rink.Rink) []geom.Vec2 {
	size := z.Max.Sub(z.Min)
	nx, ny := max(1, int(math.Ceil(size.X/step))), max(1, int(math.Ceil(size.Y/step)))
	out := make([]geom.Vec2, 0, nx*ny)
	for j := range ny {
		for i := range nx {
			p := geom.Vec2{
				X: z.Min.X + size.X*(float64(i)+0.5)/float64(nx),
				Y: z.Min.Y + size.Y*(float64(j)+0.5)/float64(ny),
			}
			if r.Contains(p) {
				out = append(out, p)
			}
		}
	}
	return out
}

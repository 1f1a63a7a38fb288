package resect

import (
	"fmt"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
)

// Landmark is a known place of the rink that can be marked in a frame.
type Landmark struct {
	Name string
	At   geom.Vec3 // metres, rink frame
}

// sides are the boards that a place is named after, in the order in which the rink
// tells posts and the ends of lines.
var sides = [2]string{"bench", "box"}

// Landmarks lists the places of an arena that can be marked: the middles of goal posts, ends of lines
// at the boards, spots, the edges of end-zone circles toward the goal (bottom) and
// toward centre ice (top), and the panes' edges at the boards' top.
func Landmarks(a arena.Arena) []Landmark {
	var out []Landmark
	for _, g := range a.Rink.Goals() {
		for i, p := range g.PostMiddles() {
			name := fmt.Sprintf("%s:post-%s:", g.End, sides[i])
			out = append(out, Landmark{name + "foot", onIce(p)}, Landmark{name + "top", geom.Vec3{X: p.X, Y: p.Y, Z: g.Height}})
		}
	}
	for _, l := range a.Rink.Lines() {
		for i, p := range [2]geom.Vec2{l.From, l.To} {
			out = append(out, Landmark{lineName(l) + sides[i], onIce(p)})
		}
	}
	for _, s := range a.Rink.Spots() {
		out = append(out, spotted(s)...)
	}
	return append(out, stanchions(a)...)
}

func onIce(p geom.Vec2) geom.Vec3 { return geom.Vec3{X: p.X, Y: p.Y} }

// endOf names the end in whose half x lies.
func endOf(x float64) string {
	if x < 0 {
		return "A"
	}
	return "B"
}

func lineName(l rink.Line) string {
	if l.Kind == rink.LineRed {
		return "red-line:"
	}
	return fmt.Sprintf("%s:%s-line:", endOf(l.From.X), l.Kind)
}

// spotted is a face-off spot, and the edges of an end zone's circle about it.
func spotted(s rink.Spot) []Landmark {
	side := sides[0]
	if s.At.Y > 0 {
		side = sides[1]
	}
	end := endOf(s.At.X)
	switch {
	case s.Centre:
		return []Landmark{{"centre-spot", onIce(s.At)}}
	case s.Circle == 0:
		return []Landmark{{end + ":neutral-" + side, onIce(s.At)}}
	}
	out := geom.Vec2{X: s.Circle}
	if end == "A" {
		out.X = -s.Circle
	}
	return []Landmark{
		{end + ":spot-" + side, onIce(s.At)},
		{fmt.Sprintf("%s:circle-%s:bottom", end, side), onIce(s.At.Add(out))},
		{fmt.Sprintf("%s:circle-%s:top", end, side), onIce(s.At.Sub(out))},
	}
}

// stanchions are the edges of panes where the glass meets the boards' top.
func stanchions(a arena.Arena) []Landmark {
	var out []Landmark
	back := a.Setback().Value.Metres()
	for _, p := range a.Panes {
		at := a.Rink.Point(p.From).Sub(a.Rink.Normal(p.From).Scale(back))
		out = append(out, Landmark{"pane:" + p.ID, geom.Vec3{X: at.X, Y: at.Y, Z: a.Boards.Height.Metres()}})
	}
	return out
}

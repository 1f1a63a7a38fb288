package cut

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Face is a pane's rink face with a hole on it, measured on the glass. Left
// and right are as seen from the shooting side (the spectators' side, looking
// at the ice): left is toward falling station.
type Face struct {
	Width  unit.Length // of the pane
	Height unit.Length
	Left   unit.Length // from the pane's left edge to the hole's centre
	Up     unit.Length // from the top of the boards to the hole's centre
	Curved bool
	// Radius is the inner radius of a curved pane's rink face; 0 when flat.
	Radius unit.Length
}

// Right returns the distance from the hole's centre to the pane's right edge.
func (f Face) Right() unit.Length { return f.Width - f.Left }

// Down returns the distance from the hole's centre to the pane's top edge.
func (f Face) Down() unit.Length { return f.Height - f.Up }

// Behind returns a length along the rink face as it is along the shooting
// face of a pane of thickness t: on a curved pane longer by t over the radius.
func (f Face) Behind(l, t unit.Length) unit.Length {
	if f.Radius == 0 {
		return l
	}
	return l * (1 + t/f.Radius)
}

// FaceOf measures a hole on its pane. The boards' rink face is where stations
// are counted; the glass stands back by b, so that a stretch over which the
// boards turn by w radians is longer by b w on a curved pane. A flat pane in a
// corner is the chord between its edges; the hole lies where the normal of its
// station meets the chord. An unknown setback counts 0. Source: own derivation
// (parallel curve of a convex outline).
func FaceOf(a arena.Arena, p glass.Pane, h glass.Hole) Face {
	back := a.Boards.Setback.Or(0)
	along := glass.EdgesOf(a.Boards, p, h, a.Rink.Perimeter()).Left + h.Size.W/2
	f := Face{Height: p.Height, Up: h.Height - a.Boards.Height, Curved: p.Curved, Width: p.Width, Left: along}
	turn := turned(a, p.From, p.To())
	if turn == 0 {
		return f
	}
	if p.Curved {
		f.Width = p.Width + back*unit.Length(turn)
		f.Left = along + back*unit.Length(turned(a, p.From, p.From+along))
		f.Radius = a.Rink.Dimensions().CornerRadius + back
		return f
	}
	from, to := onGlass(a, p.From, back), onGlass(a, p.To(), back)
	chord := to.Sub(from)
	f.Width = unit.Length(chord.Len())
	f.Left = unit.Length(alongChord(a, from, chord, p.From+along, back))
	return f
}

// turned returns by how much the boards turn between two stations, radians.
func turned(a arena.Arena, from, to unit.Length) float64 {
	m, n := a.Rink.Normal(from), a.Rink.Normal(to)
	return math.Abs(math.Atan2(m.Cross(n), m.Dot(n)))
}

func onGlass(a arena.Arena, s, back unit.Length) geom.Vec2 {
	return a.Rink.Point(s).Sub(a.Rink.Normal(s).Scale(back.Metres()))
}

// alongChord returns how far along the chord the normal of a station meets it.
func alongChord(a arena.Arena, from, chord geom.Vec2, s, back unit.Length) float64 {
	p, n := onGlass(a, s, back), a.Rink.Normal(s)
	// from + k chord lies on the line p + j n: take the cross product with n.
	k := p.Sub(from).Cross(n) / chord.Cross(n)
	return k * chord.Len()
}

package arena

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Face measures a hole on a pane whose glass stands back by b ([Opening] says how
// far, and what was assumed). The boards' rink face is where stations
// are counted, so that a stretch over which the
// boards turn by w radians is longer by b w on a curved pane. A flat pane in a
// corner is the chord between its edges; the hole lies where the normal of its
// station meets the chord. Source: own derivation
// (parallel curve of a convex outline).
func (a Arena) Face(p glass.Pane, h glass.Hole, back unit.Length) glass.Face {
	along := glass.EdgesOf(a.Boards, p, h, a.Rink.Perimeter()).Left + h.Size.W/2
	f := glass.Face{Height: p.Height, Up: h.Height - a.Boards.Height, Curved: p.Curved, Width: p.Width, Left: along}
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

// Neighbours returns the other working holes of a hole's pane, on glass that
// stands back as for [Arena.Face].
func (a Arena) Neighbours(p glass.Pane, h glass.Hole, back unit.Length) []glass.Neighbour {
	var out []glass.Neighbour
	for _, k := range a.Working() {
		if k.ID != h.ID && k.Pane == p.ID {
			f := a.Face(p, k, back)
			out = append(out, glass.Neighbour{Hole: k, Left: f.Left, Up: f.Up, Corner: cornerOf(k).Value})
		}
	}
	return out
}

// turned returns by how much the boards turn between two stations, radians.
func turned(a Arena, from, to unit.Length) float64 {
	m, n := a.Rink.Normal(from), a.Rink.Normal(to)
	return math.Abs(math.Atan2(m.Cross(n), m.Dot(n)))
}

func onGlass(a Arena, s, back unit.Length) geom.Vec2 {
	return a.Rink.Point(s).Sub(a.Rink.Normal(s).Scale(back.Metres()))
}

// alongChord returns how far along the chord the normal of a station meets it.
func alongChord(a Arena, from, chord geom.Vec2, s, back unit.Length) float64 {
	p, n := onGlass(a, s, back), a.Rink.Normal(s)
	// from + k chord lies on the line p + j n: take the cross product with n.
	k := p.Sub(from).Cross(n) / chord.Cross(n)
	return k * chord.Len()
}

package glass

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Bend is a pane in plan: how the sheet of glass lies to the boards' arc.
// Lengths in metres.
//
//	flat pane in a corner, seen from above; the ice lies below
//
//	   _.-'''''-._      arc of the glass line, radius Radius = boards' + setback
//	 .'-----------'.    the pane: a chord, Sheet wide
//	    ^ Sagitta between the two, at the middle
//
// The zero value is a pane on straight boards of width 0.
type Bend struct {
	Radius  unit.Length // of the glass line, from the corner arc's centre; 0 on straight boards
	Angle   unit.Angle  // of the arc that the pane covers; 0 on straight boards
	Sheet   unit.Length // width of the sheet along its own rink face: arc if bent, chord if flat
	Sagitta unit.Length // how far a flat pane's middle stands nearer to the ice than the arc; 0 if bent or straight
	flat    bool
}

// BendOf returns the pane's bend on boards of the given corner radius, 0 for
// straight boards; r is the radius of the boards' rink face, behind which the
// glass stands by the setback (0 when unknown). A pane counts as lying wholly
// on the arc. With half the angle h = w / 2r:
//
//	bent: Sheet = (r + b) w / r        flat: Sheet = 2 (r + b) sin h
//	                                         Sagitta = (r + b)(1 - cos h)
//
// Own derivation. A flat pane that covers half a circle or more is no pane; its
// chord is that of half a circle.
func BendOf(p Pane, b Boards, r unit.Length) Bend {
	if r <= 0 {
		return Bend{Sheet: p.Width}
	}
	radius := r + b.Setback.Or(0)
	half := float64(p.Width / r / 2)
	out := Bend{Radius: radius, Angle: unit.Angle(2 * half), flat: !p.Curved}
	if !out.flat {
		out.Sheet = radius * unit.Length(2*half)
		return out
	}
	half = min(half, math.Pi/2)
	out.Sheet = 2 * radius * unit.Length(math.Sin(half))
	out.Sagitta = radius * unit.Length(1-math.Cos(half))
	return out
}

// Along returns where on the sheet, from its middle toward rising station,
// stands what lies at a distance s along the boards' rink face from the pane's
// middle: the place met by the boards' normal through it.
//
//	straight: s    bent: (r + b) s / r    flat: (r + b) cos h tan(s / r)
//
// r is the boards' radius that BendOf was given. The last holds for |s / r|
// below a quarter turn.
func (b Bend) Along(s, r unit.Length) unit.Length {
	if b.Radius == 0 || r <= 0 {
		return s
	}
	turn := float64(s / r)
	if !b.flat {
		return b.Radius * unit.Length(turn)
	}
	return (b.Radius - b.Sagitta) * unit.Length(math.Tan(turn))
}

// BeforeBoards returns how far a flat pane's middle reaches past the boards'
// rink face over the ice; 0 or less when it stays behind.
func (b Bend) BeforeBoards(r unit.Length) unit.Length {
	if b.Radius == 0 {
		return 0
	}
	return b.Sagitta - (b.Radius - r)
}

// Package puck answers: what can come through a photo hole, and where does it go?
//
// A puck is a rigid disc of diameter D and thickness h that flies straight on
// through an opening of width W and height H in a pane of thickness t:
//
//	     rink            plan, flat puck at angle q from the pane's normal
//	  \   \ D/cos q
//	   \   \
//	----+   +-------  rink face   -
//	     \   \                    t
//	------+   +-----  rear face   -
//	      |W  |       the free travel of the puck's centre is
//	                  W - t tan q - D/cos q
//
// Seen along its flight the opening is the overlap of both faces' outlines,
// and the puck passes while its shadow fits in that overlap: [Opening.Flat]
// for a puck that lies flat, [Opening.Tumbling] for one in any orientation.
// A shot flies from the ice with gravity and drag ([Body.Fly]); [Assess] sums over
// shots how often that ends in a hole's window, how fast, in what direction,
// and where the puck comes down behind the glass ([Sector]). [Through] says
// how far an elbow or a stick gets.
//
// Assumptions: the puck does not turn while it is in the opening; the
// outline's rounded corners and edges are left out (both let fewer pucks
// through); no lift. A puck that touches the rim and still passes is in the
// high bound of [Passes] alone.
//
// Left out: the glass flexing or breaking, deflections off sticks, players,
// posts and the glass itself, rebounds in the opening, people and seats
// behind the hole. None of this is a strength check.
package puck

import "example.org/rinkpane/internal/measure/unit"

// The puck, by the rule books: 3 in across, 1 in thick, 5.5 to 6 oz
// (155.9 to 170.1 g); the heavy end is taken, in kg.
const (
	Diameter  = 3 * unit.Inch
	Thickness = 1 * unit.Inch
	MassKG    = 0.170 // kilograms
)

// Energy returns the kinetic energy of a puck at a speed, in joules:
// m v^2 / 2 with m = MassKG; spin left out.
func Energy(v unit.Speed) float64 { return MassKG * float64(v) * float64(v) / 2 }

// LeftOut lists, in plain sentences, what the model leaves out. It stands
// beside every number that people see.
func LeftOut() []string {
	return []string{
		"Left out: the glass flexing or breaking, deflections off sticks, bodies, posts and glass, rebounds inside the opening, lift, and the people and seats behind the hole.",
		"Shots are a model with stated spreads, not a record of this rink.",
		Interval(),
		"This is no strength check: it says nothing of what a pane bears.",
	}
}

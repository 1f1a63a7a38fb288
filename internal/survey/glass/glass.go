// Package glass is what stands on the boards: panes between stanchions, the
// holes cut in them, low windows in the boards, covers, and the materials. It
// answers what a pane weighs, how it bends, and where in it a hole lies.
//
//	  |<------- width ------->|        seen from the camera's side:
//	+-+-----------------------+-+      stations rise to the right
//	| |          .--.         | |
//	| |          |  | hole    | |  height of the pane
//	| |          '--'         | |
//	+-+-----------------------+-+  top of the boards, ledge deep
//	|      boards      [ ] low  |
//	+---------------------------+  ice
//
// Assumptions: panes are rectangles, of one sheet and one thickness; a pane lies
// wholly on straight boards or wholly on a corner's arc. Nothing here judges
// strength: that is for the glass maker.
package glass

import "example.org/rinkpane/internal/measure/unit"

// Boards is the wall below the glass.
type Boards struct {
	Height unit.Length // top of the boards above the ice
	// Ledge is the depth of the boards' top, from the rink face to the spectators' side.
	Ledge unit.Maybe[unit.Length]
	// Setback is how far the glass's rink face stands behind the boards' rink face.
	Setback unit.Maybe[unit.Length]
	// Floor is the level behind the boards, where photographers stand, above the ice;
	// below 0 where it lies lower.
	Floor unit.Maybe[unit.Length]
}

// Pane is one pane between two stanchions.
type Pane struct {
	ID        string
	From      unit.Length // station of the edge with the lower station (the left edge seen from the camera's side)
	Width     unit.Length // along the boards' rink face, stanchion gap to stanchion gap
	Height    unit.Length // above the top of the boards
	Thickness unit.Maybe[unit.Length]
	Material  unit.Maybe[Material]
	Haze      unit.Maybe[Haze]
	Curved    bool   // bent to the corner's arc; a flat pane in a corner is a chord
	Gate      string // "bench", "penalty-box", "ice machine"... ("" for none)
}

// To returns the station of the pane's other edge; it may pass the rink's perimeter.
func (p Pane) To() unit.Length { return p.From + p.Width }

// WidestPost is the widest piece of boards without a pane that counts as a
// stanchion between two panes, and not as open boards (own choice).
const WidestPost = 150 * unit.Millimetre

// State is how far a hole has come.
type State string

// The states of a hole.
const (
	Planned State = "planned" // the zero value "" also means planned
	Cut     State = "cut"
	Off     State = "off" // kept in the document, left out of every computation
)

// Hole is an opening in a pane for a lens.
type Hole struct {
	ID       string
	Pane     string      // the pane it lies in
	Station  unit.Length // of its centre
	Height   unit.Length // of its centre above the ice
	Size     unit.Size
	Corner   unit.Maybe[unit.Length] // corner radius of the outline
	Rounding unit.Maybe[unit.Length] // edge rounding on both faces
	Cover    unit.Maybe[Cover]
	State    State
	Note     string
}

// Cover closes a hole whenever nobody works it.
type Cover struct {
	Present  bool // there is a cover at all
	Material Material
	Tether   unit.Maybe[bool]
}

// Window is a low window: an opening or clear panel in the boards for a camera near the ice.
type Window struct {
	ID       string
	Station  unit.Length // of its centre
	Height   unit.Length // of its centre above the ice
	Size     unit.Size
	Open     bool // an opening; otherwise a clear panel
	Material Material
	Thick    unit.Maybe[unit.Length]
	Corner   unit.Maybe[unit.Length] // corner radius of an opening
	Rounding unit.Maybe[unit.Length] // edge rounding of an opening on both faces
	Cover    unit.Maybe[Cover]       // of an opening
	Nearest  unit.Maybe[unit.Length] // the nearest play that the window is for, from the boards' rink face
	Printed  bool                    // covered by a printed film or coating, in which the lens needs a clear patch
	Note     string
}

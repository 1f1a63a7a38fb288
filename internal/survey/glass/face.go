package glass

import "example.org/rinkpane/internal/measure/unit"

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

// Neighbour is another hole of the same pane.
type Neighbour struct {
	Hole     Hole
	Left, Up unit.Length // of its centre, from the pane's left edge and the top of the boards
	Corner   unit.Length // corner radius of its outline, where it had to be taken, too
}

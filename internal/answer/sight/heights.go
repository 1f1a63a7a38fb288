package sight

import "example.org/rinkpane/internal/measure/unit"

// The heights at which the ice is mapped, above the ice.
const (
	// PuckHeight is the middle of a puck that lies on the ice: half of its 25.4 mm
	// (rule books' summary pages).
	PuckHeight = 12.7 * unit.Millimetre
	// FaceHeight is the middle of a skater's face: 1.756 m mean stature of men
	// (ANSUR II), and 0.08 m of skates (from memory), less 0.12 m from the crown to
	// the face's middle and 0.07 m for bent knees (both own choice).
	FaceHeight = 1.65 * unit.Metre
)

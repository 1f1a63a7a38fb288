package sight

import (
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// What a low window is for where the survey does not say: play from this distance
// on, straight ahead and turned to either side. Common practice, no published source.
const (
	WindowNearest = 4 * unit.Metre
	WindowTurn    = 15 * unit.Degree
)

// WindowAims returns the aims that a low window is for: from a puck on the ice to
// a skater's face, both at the nearest distance, atan(height / distance) below
// and above level.
func WindowAims(w glass.Window) fit.Aims {
	tilt := func(rise unit.Length) unit.Angle {
		return unit.Angle(math.Atan2(max(0, rise.Metres()), w.Nearest.Or(WindowNearest).Metres()))
	}
	return fit.Aims{Pan: WindowTurn, Down: tilt(w.Height - PuckHeight), Up: tilt(FaceHeight - w.Height)}
}

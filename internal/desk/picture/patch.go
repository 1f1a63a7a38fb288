package picture

import (
	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// patch returns the clear patch that the lens of a shot needs in the printed film
// of a low window while it is turned and tilted up to the shot's aim. "" for a hole
// and for a window without film.
func (s State) patch(shot *frame.Shot, a arena.Arena, sys unit.System) (value, note string) {
	for _, w := range a.Windows {
		if w.ID != s.Hole || w.Open || !w.Printed {
			continue
		}
		panel, err := fit.PanelOf(w)
		if err != nil {
			return "", ""
		}
		pan, tilt := shot.Aim.Pan, shot.Aim.Tilt
		p, ok := shot.Case.Patch(panel, fit.Aims{Pan: max(pan, -pan), Down: max(0, -tilt), Up: max(0, tilt)}).Get()
		if !ok {
			return "none is large enough", "The film hides part of this view however large its clear patch is: turn less, or zoom in."
		}
		if !p.Within(w.Size) {
			note = "The clear patch for this turn is larger than the window."
		}
		return p.Size.Format(sys), note
	}
	return "", ""
}

package picture

import (
	"math"

	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// patch returns the clear patch that the lens needs in the printed film of a low
// window while it is turned by pan degrees: its zoom at the short end, its stop
// wide open. "" for a hole and for a window without film.
func (s State) patch(a arena.Arena, pan float64, sys unit.System) (value, note string) {
	for _, w := range a.Windows {
		if w.ID != s.Hole || w.Open || !w.Printed {
			continue
		}
		v, err := cut.ViewOf(s.Lens, s.Body.Sensor, w)
		if err != nil {
			return "", ""
		}
		v.Turn = unit.Angle(math.Abs(pan) * math.Pi / 180)
		p, err := v.Patch(w.Size)
		if err != nil {
			return "none is large enough", "The film hides part of this view however large its clear patch is: turn less, or zoom in."
		}
		if !p.Fits {
			note = "The clear patch for this turn is larger than the window."
		}
		return p.Size.Format(sys), note
	}
	return "", ""
}

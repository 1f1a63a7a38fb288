package frame

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Through is what the lens looks through.
type Through int

// The two ways. ByHole is the zero value.
const (
	ByHole Through = iota // through the hole, or through a low window as it is
	ByPane                // through the pane in which the hole lies, as if it were whole
)

// ParseThrough reads "hole" or "pane".
func ParseThrough(s string) (Through, error) {
	switch s {
	case "hole":
		return ByHole, nil
	case "pane":
		return ByPane, nil
	}
	return ByHole, fmt.Errorf("%s: write hole or pane", form.Quote(s))
}

// Luminances over the scene's mean, without unit, against which a detail must show (own choice:
// a dark jersey before ice, and stands that are dimmed for the game).
const (
	UsualDetail = 0.25 // without unit
	UsualMirror = 0.1  // without unit
)

// Around is what a dark jersey must show against, with stands of a luminance over
// the scene's behind the camera.
func Around(mirror float64) optics.Surround {
	return optics.Surround{Detail: UsualDetail, Mirror: mirror}
}

// PaneOf returns the pane of an opening as a plate with a haze: as asked, else as
// surveyed, else a worn pane's. An open low window has none, and a pane whose material nobody
// recorded is refused.
func PaneOf(o arena.Opening, haze unit.Maybe[float64]) (optics.Pane, error) {
	var name string
	var material glass.Material
	var surveyed unit.Maybe[glass.Haze]
	if p, ok := o.Pane.Get(); ok {
		name, material, surveyed = "pane "+p.ID, p.Material.Or(""), p.Haze
	}
	if w, ok := o.Window.Get(); ok {
		if w.Open {
			return optics.Pane{}, fmt.Errorf("low window %s is open: there is no pane to look through", w.ID)
		}
		name, material = "low window "+w.ID, w.Material
	}
	props, err := material.Properties()
	if err != nil {
		return optics.Pane{}, fmt.Errorf("%s: %w", name, err)
	}
	if h, ok := surveyed.Get(); ok {
		haze = unit.Known(haze.Or(h.Of(props)))
	}
	return optics.Pane{Plate: optics.Plate{Index: props.Index, Thickness: o.Thick.Value}, Haze: haze.Or(props.HazeWorn)}, nil
}

// behind returns the pose of a lens that looks through the pane: its foremost
// point touches the rear face, and its axis passes the hole's centre on the
// rink face. The pane's shift of the rays, millimetres, is left out.
func behind(c fit.Case, at Aim) fit.Pose {
	_, _, d := Axes(at.Pan.Radians(), at.Tilt.Radians())
	z := -c.Thick - c.Nose/2*math.Sqrt(max(0, 1-d.Z*d.Z))
	return fit.Pose{Nose: d.Scale(z / d.Z), Pan: at.Pan.Radians(), Tilt: at.Tilt.Radians()}
}

// incidence is a ray's angle from the pane's normal, for a ray in the hole frame.
func incidence(u geom.Vec3) unit.Angle {
	return unit.Angle(math.Acos(max(0, min(1, u.Z/u.Len()))))
}

// Haze returns the pane's haze (ASTM D1003), a share; 0 of a shot through a hole.
func (s *Shot) Haze() float64 {
	if s.pane == nil {
		return 0
	}
	return s.pane.Haze
}

// Seen returns what the pane leaves of a detail toward a place of the frame
// (-1..1, y up). There is nothing to ask of a shot through a hole.
func (s *Shot) Seen(x, y float64) (optics.Seen, bool) {
	if s.pane == nil {
		return optics.Seen{}, false
	}
	seen, err := s.pane.See(incidence(s.ray(x, y)), Around(s.Mirror))
	return seen, err == nil
}

package cut

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// Patch is the clear patch that a lens needs in the printed film on the rink
// face of a low window's panel: a rectangle with rounded corners about the
// window's middle.
type Patch struct {
	Size   unit.Size
	Corner unit.Length // radius of its corners: half the pupil's diameter
	Fits   bool        // it lies within the window
}

// With returns the least patch about the same middle that clears what both do.
func (p Patch) With(q Patch) Patch {
	return Patch{
		Size:   unit.Size{W: max(p.Size.W, q.Size.W), H: max(p.Size.H, q.Size.H)},
		Corner: min(p.Corner, q.Corner),
		Fits:   p.Fits && q.Fits,
	}
}

// View is a lens behind a panel.
type View struct {
	Pupil      unit.Length // diameter of the entrance pupil, f/N
	Behind     unit.Length // from the pupil to the panel's rear face
	HalfH      unit.Angle  // half the view across
	HalfV      unit.Angle  // half the view up
	Turn       unit.Angle  // how far the camera may be turned to either side, about its pupil
	Index      float64     // of the panel, without unit
	Thick      unit.Length // of the panel; 0 for an opening
	FilmBehind bool        // the film is on the rear face: the panel bends nothing before it
}

// steepestView is the largest angle from the normal for which a patch is given.
const steepestView = 80 * unit.Degree

// Patch returns the clear patch. A ray that leaves the rim of the pupil at an
// angle a from the normal meets the film at
//
//	x = P/2 + d tan a + t tan b,   sin a = n sin b   (Snell)
//
// P the pupil's diameter, d its distance, t the panel's thickness, n its index;
// a is half the view plus the turn. The widest place is the middle of an edge
// of the frame: toward the corners the panel bends the rays further in. Source:
// own derivation. Angles of 80 degrees and more are an error.
func (v View) Patch(window unit.Size) (Patch, error) {
	across, err := v.half(v.HalfH + v.Turn)
	if err != nil {
		return Patch{}, err
	}
	up, err := v.half(v.HalfV)
	if err != nil {
		return Patch{}, err
	}
	p := Patch{Size: unit.Size{W: 2 * across, H: 2 * up}, Corner: v.Pupil / 2}
	p.Fits = p.Size.W <= window.W && p.Size.H <= window.H
	return p, nil
}

func (v View) half(a unit.Angle) (unit.Length, error) {
	if !(a >= 0) || a >= steepestView {
		return 0, fmt.Errorf("a view of %s from the panel's normal needs an endless patch; turn the camera less or take a longer lens", a.Format())
	}
	x := v.Pupil/2 + v.Behind*unit.Length(math.Tan(a.Radians()))
	if v.Thick == 0 || v.FilmBehind {
		return x, nil
	}
	b, err := optics.Refract(a, v.Index)
	if err != nil {
		return 0, err
	}
	return x + v.Thick*unit.Length(math.Tan(b.Radians())), nil
}

// noseGap is how far a nose stays behind the panel, so that nothing scratches.
const noseGap = 5 * unit.Millimetre

// ViewOf returns a lens at its widest view and stop, see viewAt.
func ViewOf(l kit.Lens, sensor unit.Size, w glass.Window) (View, error) {
	return viewAt(l, l.FocalMin, l.Stop, sensor, w)
}

// focalSteps is how many focal lengths of a zoom are tried between its ends:
// half the view narrows as the pupil grows, and either may need more.
const focalSteps = 16

// viewsOf returns a lens over its focal range, at its widest stops; between the
// ends of a zoom the stop is taken to change evenly.
func viewsOf(l kit.Lens, sensor unit.Size, w glass.Window) ([]View, error) {
	steps := 0
	if l.FocalMax > l.FocalMin {
		steps = focalSteps
	}
	var out []View
	for i := 0; i <= steps; i++ {
		share := float64(i) / float64(max(steps, 1))
		focal := l.FocalMin + unit.Length(share)*(l.FocalMax-l.FocalMin)
		v, err := viewAt(l, focal, l.Stop+unit.Stop(share)*(l.StopLong-l.Stop), sensor, w)
		if err != nil {
			return nil, err
		}
		out = append(out, v)
	}
	return out, nil
}

// viewAt returns a lens at a focal length and stop, its bare nose 5 mm behind
// a window's panel. An unknown pupil depth is taken as optics.PupilDepth of a front glass of 0.9 noses.
func viewAt(l kit.Lens, focal unit.Length, stop unit.Stop, sensor unit.Size, w glass.Window) (View, error) {
	pupil := focal / unit.Length(stop)
	h, err := optics.ViewAngle(sensor.W, focal)
	if err != nil {
		return View{}, err
	}
	up, err := optics.ViewAngle(sensor.H, focal)
	if err != nil {
		return View{}, err
	}
	diagonal, err := optics.ViewAngle(optics.Diagonal(sensor), focal)
	if err != nil {
		return View{}, err
	}
	const frontShare = 0.9 // of the nose, where the lens' data say nothing
	depth := l.PupilDepth.Or(optics.PupilDepth(l.Front.Or(frontShare*l.Nose), pupil, diagonal/2))
	v := View{Pupil: pupil, Behind: depth + noseGap, HalfH: h / 2, HalfV: up / 2, Index: 1}
	if !w.Open {
		p, err := w.Material.Properties()
		t, known := w.Thick.Get()
		if err != nil || !known {
			return View{}, fmt.Errorf("window %s: its panel's material and thickness must be recorded for a clear patch", w.ID)
		}
		v.Index, v.Thick = p.Index, t
	}
	return v, nil
}

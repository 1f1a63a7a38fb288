// Package gain answers the question of whoever pays for a hole: what does it
// bring over shooting through the pane? It sets the two ways beside each other
// for one lens at one hole, angle by angle and over the moments of a game:
//
//	         through the pane                    through the hole
//	scene ----|/////|---- lens      scene ----|/      /|---- lens
//	          loss, ghost, haze,              the hole's edges take light
//	          mirrored stands                 when the lens is turned
//
// The pane is taken new and worn: haze by the table of materials, or worn as
// the user measured it. Through the pane a lens may be turned as far as it likes.
//
// # Limits
//
// A hole's light at an angle is that of a pan. The pane is flat, clean and of
// even thickness; dirt and fog are haze, which --haze states. What the surface
// bends (a wavy or bowed pane) is not counted, so the pane comes off too well.
package gain

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/play"
)

// Answer is what a hole gains for one lens.
type Answer struct {
	Hole  string
	Lens  string // its name
	Focal unit.Length
	Stop  unit.Stop
	Pane  string
	New   optics.Pane
	Worn  optics.Pane // as asked or surveyed, where either is known
	// HazeKnown: the pane's haze was asked for or surveyed, not assumed.
	HazeKnown bool
	Distance  unit.Length // to the moments' subjects, median
	Rows      []Row
	Reached   float64     // share of the moments, by weight, toward which the hole passes half of its light at the frame's centre
	Within    Means       // over the moments that the hole reaches
	All       Means       // over all moments
	Top       unit.Length // of the pane above the ice: over it an eye must stand higher
	Mirror    float64     // luminance of the stands behind the camera over the scene's, a ratio
	Assumed   []arena.Assumption
}

// Row is one angle from straight through the pane.
type Row struct {
	Angle     unit.Angle
	Share     float64 // of the moments, by weight, that lie nearer to this row's angle than to any other's
	Hole      View    // a pan of this angle
	New, Worn optics.Seen
	GhostPx   float64 // apart at the median distance, in pixels
}

// View is the light that the hole passes, 0..1.
type View struct{ Centre, Corner float64 }

// Means are means over moments, by weight.
type Means struct {
	HolePass, PanePass        float64 // light passed
	NewContrast, WornContrast float64 // of a dark jersey's fine detail, left by the pane
}

// The rows: 0 to 80 degrees.
const (
	rowStep = 10 * unit.Degree
	rows    = 9
)

// Of returns what the hole of a shot's request gains, over a set of moments.
// It refuses a low window, and what [frame.NewShot] refuses. The request's haze
// is the worn pane's.
func Of(a arena.Arena, q frame.Request, moments *play.Set) (Answer, error) {
	q.Through, q.Turn = frame.ByHole, unit.Known(frame.Aim{Distance: farEnough})
	s, err := frame.NewShot(a, q)
	if err != nil {
		return Answer{}, err
	}
	o, err := a.Opening(q.Hole)
	if err != nil {
		return Answer{}, err
	}
	in, ok := o.Pane.Get()
	if !ok {
		return Answer{}, fmt.Errorf("%s is a low window: what a hole gains is asked of a hole in a pane", q.Hole)
	}
	worn, err := frame.PaneOf(o, q.Haze)
	if err != nil {
		return Answer{}, err
	}
	props, err := in.Material.Or("").Properties()
	if err != nil {
		return Answer{}, err
	}
	_, asked := q.Haze.Get()
	_, surveyed := in.Haze.Get()
	ans := Answer{
		Hole: q.Hole, Lens: q.Lens.Name, Focal: s.Focal, Stop: s.Stop, Pane: in.ID, Top: a.Boards.Height + in.Height,
		New: optics.Pane{Plate: worn.Plate, Haze: min(worn.Haze, props.HazeNew)}, Worn: worn,
		HazeKnown: asked || surveyed,
		Mirror:    s.Mirror, Assumed: s.Assumed,
	}
	return ans, ans.fill(s, moments)
}

// UsualMoments is how many moments the gain is worked out over when nobody says.
const UsualMoments = 2000

// farEnough lets the shot be set up: gain asks it for no distance.
const farEnough = 10 * unit.Metre

// fill makes the rows and the means.
func (ans *Answer) fill(s *frame.Shot, moments *play.Set) error {
	var w weights
	outline := s.Case.Trace()
	for i := range moments.Len() {
		w.add(s, outline, moments.At(i))
	}
	if w.all == 0 {
		return fmt.Errorf("hole %s: no moment of the game lies before it", ans.Hole)
	}
	ans.Distance = w.medianDistance()
	for i := range rows {
		row, err := ans.row(s, unit.Angle(i)*rowStep)
		if err != nil {
			return err
		}
		row.Share = w.near[i] / w.all
		ans.Rows = append(ans.Rows, row)
	}
	ans.Reached = w.reached / w.all
	for deg, n := range w.byDegree {
		if n.all == 0 {
			continue
		}
		row, err := ans.row(s, unit.Angle(deg)*unit.Degree)
		if err != nil {
			return err
		}
		ans.All.add(row, n.all/w.all)
		ans.Within.add(row, n.reached/max(w.reached, math.SmallestNonzeroFloat64))
	}
	return nil
}

// row sets the two ways side by side at one angle.
func (ans *Answer) row(s *frame.Shot, angle unit.Angle) (Row, error) {
	around := frame.Around(ans.Mirror)
	fresh, err := ans.New.See(angle, around)
	if err != nil {
		return Row{}, err
	}
	worn, err := ans.Worn.See(angle, around)
	if err != nil {
		return Row{}, err
	}
	v := s.Case.At(angle, 0)
	row := Row{Angle: angle, Hole: View{v.Centre, v.WorstCorner()}, New: fresh, Worn: worn}
	if ans.Distance > s.Focal && s.Pixels[0] > 0 {
		m, err := optics.Magnification(s.Focal, ans.Distance)
		if err != nil {
			return Row{}, err
		}
		pitch, err := optics.PixelPitch(s.Sensor, s.Pixels[0])
		if err != nil {
			return Row{}, err
		}
		row.GhostPx = optics.PixelsOn(fresh.Ghost.Apart, m, pitch)
	}
	return row, nil
}

func (m *Means) add(r Row, share float64) {
	m.HolePass += share * r.Hole.Centre
	m.PanePass += share * r.New.Transmission
	m.NewContrast += share * r.New.Contrast
	m.WornContrast += share * r.Worn.Contrast
}

package frame

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// Request is a picture as people ask for it.
type Request struct {
	Hole    string // id of a hole or a low window
	Lens    kit.Lens
	Body    kit.Body
	Use     fit.Setting
	Target  geom.Vec3               // point of the rink to aim at, metres
	Focus   unit.Maybe[unit.Length] // along the axis from the pupil; the target when unknown
	Shutter unit.Shutter
	Speed   unit.Speed   // of skaters along their heading; 0: everybody stands still
	Paced   bool         // each person moves at the moment's own pace instead; Speed is then for the numbers alone
	Moment  *play.Moment // nil: an empty rink
	Planes  bool         // draw where the plane of focus and the limits of depth of field meet the ice
	Checks  []Check      // places to number in the picture
	// Through is what the lens looks through; by the pane, Haze is the pane's
	// (ASTM D1003; a worn pane's when unknown) and Mirror the luminance of what
	// stands behind the camera over the scene's, a ratio (UsualMirror when unknown).
	Through Through
	Haze    unit.Maybe[float64]
	Mirror  unit.Maybe[float64]
	// ISO is what the picture is taken at; unknown: what faces at the aim ask for, as far
	// as the body goes. Seed is that of the picture's noise.
	ISO  unit.Maybe[unit.ISO]
	Seed uint64
	// Turn, when known, aims by angles instead of at Target.
	Turn unit.Maybe[Aim]
}

// What a picture is taken with when nothing is said (own choice).
const (
	UsualSpeed  = unit.Speed(5) // skating at a game's pace; a peak is 8.2 m/s
	chestHeight = 1.2           // metres above the ice
)

// Chest returns the place of the moment's subject to aim at, in metres.
func Chest(m play.Moment) geom.Vec3 {
	who := m.People[m.Subject]
	return geom.Vec3{X: who.X, Y: who.Y, Z: chestHeight}
}

// Shot is a camera set up for one picture. Make one with NewShot; treat it as
// read only, then many goroutines may draw it.
type Shot struct {
	Arena  arena.Arena
	Moment *play.Moment
	Mount  Mount
	Aim    Aim
	Case   fit.Case
	View   fit.View
	// Served is the share of the frame's width and height, about its centre, for
	// which the pose is best: 1 but for views so wide that no pose gives light to
	// every corner.
	Served   float64
	Camera   Camera
	Focal    unit.Length
	Stop     unit.Stop
	Focus    unit.Length // along the axis from the pupil
	Shutter  unit.Shutter
	Speed    unit.Speed
	Paced    bool               // see [Request]
	Pixels   [2]int             // the body's pixels as held: across, down
	Sensor   unit.Length        // the sensor's side across as held
	Planes   bool               // see [Request]
	Checks   []Check            // see [Request]
	Assumed  []arena.Assumption // what stood in for lengths that the survey lacks
	Mirror   float64            // a ratio, see [Request]
	Lighting Lighting
	coc      unit.Length
	exposure float64       // over what the hole lets through in the middle: the ISO makes that good
	seed     uint64        // of the noise
	plain    bool          // without noise, as an SVG is
	panel    *optics.Plate // stands before the lens
	pane     *optics.Pane  // the same, of a shot through the pane
	marks    []mark        // scuffs on it before the lens
	ledge    ledge
}

// NewShot sets the camera up in its best pose. It refuses an unknown hole, a
// target behind the glass, and a lens that sees nothing there.
func NewShot(a arena.Arena, q Request) (*Shot, error) {
	s := &Shot{Arena: a, Moment: q.Moment, Focal: q.Use.Focal, Stop: q.Use.Stop, Shutter: q.Shutter, Speed: q.Speed, Paced: q.Paced,
		Planes: q.Planes, Checks: q.Checks, Mirror: q.Mirror.Or(UsualMirror), coc: optics.CircleOfConfusion(q.Body.Sensor), seed: q.Seed}
	if err := s.open(q); err != nil {
		return nil, err
	}
	s.Aim = s.Mount.AimAt(q.Target)
	if turn, ok := q.Turn.Get(); ok {
		s.Aim = turn
	}
	if !(math.Abs(s.Aim.Pan.Degrees()) < maxTurn && math.Abs(s.Aim.Tilt.Degrees()) < maxTurn) {
		return nil, fmt.Errorf("hole %s: the target lies behind or beside the glass (pan %.0f deg, tilt %.0f deg); aim at a point on the ice",
			q.Hole, s.Aim.Pan.Degrees(), s.Aim.Tilt.Degrees())
	}
	if s.pane != nil {
		s.View, s.Served = fit.View{Pose: behind(s.Case, s.Aim), Centre: 1, Corners: [4]float64{1, 1, 1, 1}}, 1
	} else {
		s.View, s.Served = bestView(s.Case, s.Aim)
	}
	s.throughPanel()
	s.Camera = newCamera(s.Mount, s.Case, s.View.Pose)
	s.Focus = q.Focus.Or(s.Aim.Distance)
	if s.Focus <= s.Focal {
		return nil, fmt.Errorf("focus at %.2f m: must be farther than the focal length", s.Focus.Metres())
	}
	s.Pixels, s.Sensor = [2]int{q.Body.PixelsW, q.Body.PixelsH}, q.Body.Sensor.W
	if q.Use.Portrait {
		s.Pixels, s.Sensor = [2]int{q.Body.PixelsH, q.Body.PixelsW}, q.Body.Sensor.H
	}
	s.expose(q)
	return s, nil
}

// maxTurn is the largest pan or tilt that fit answers for, in degrees.
const maxTurn = 89.9

// open finds the hole or low window and puts the lens into it: into an opening,
// or flat against the rear of a panel that it looks through.
func (s *Shot) open(q Request) error {
	o, err := s.Arena.Opening(q.Hole)
	if err != nil {
		return err
	}
	s.Mount = MountOf(s.Arena, o)
	s.Assumed = arena.Assumed(append(fit.Facts(o), s.Arena.Setback())...) // of a low window too: other panes are in the picture
	if s.Case, err = fit.FromKit(o, q.Lens, q.Body, q.Use); err != nil {
		return err
	}
	if q.Through == ByPane {
		pane, err := PaneOf(o, q.Haze)
		if err != nil {
			return err
		}
		if _, err := pane.See(0, Around(s.Mirror)); err != nil {
			return err
		}
		s.pane, s.panel, s.marks = &pane, &pane.Plate, marksOf(o, pane.Haze)
	}
	w, low := o.Window.Get()
	if !low {
		s.ledge = ledge{there: true, y: (s.Arena.Boards.Height - o.Hole.Height).Metres(), z: o.Setback.Value.Metres()}
		return nil
	}
	if w.Open {
		return nil
	}
	s.Case.Back = unit.Known(0.0)
	props, err := w.Material.Properties()
	if err != nil {
		return fmt.Errorf("low window %s: its panel: %w", w.ID, err)
	}
	s.panel = &optics.Plate{Index: props.Index, Thickness: o.Thick.Value}
	return s.Case.Validate()
}

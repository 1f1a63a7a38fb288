package fit

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// Patch is what a lens needs clear on the rink face of a low window: a rectangle
// with rounded corners about the place opposite its pupil.
type Patch struct {
	Size   unit.Size
	Corner unit.Length // radius of its corners, at most half the pupil
	Aims   Aims        // for which it was traced
}

// Aims are the aims that a low window is for, level to level: all pans up to Pan
// to either side with all tilts from Down below to Up above level. The zero value
// is straight ahead alone.
type Aims struct{ Pan, Down, Up unit.Angle }

// Within reports whether the patch lies in a window of a size, both about one middle.
func (p Patch) Within(window unit.Size) bool { return p.Size.W <= window.W && p.Size.H <= window.H }

// With returns the least patch about the same middle that clears what both do, for
// the same aims.
func (p Patch) With(q Patch) Patch {
	p.Size = unit.Size{W: max(p.Size.W, q.Size.W), H: max(p.Size.H, q.Size.H)}
	p.Corner = min(p.Corner, q.Corner)
	return p
}

// Panel is the clear sheet that closes a low window; the zero value is an opening.
type Panel struct {
	Thick float64 // metres
	Index float64 // refractive, without unit
}

// PanelOf returns a low window's panel. A closed one whose material or thickness
// nobody recorded is an error.
func PanelOf(w glass.Window) (Panel, error) {
	if w.Open {
		return Panel{}, nil
	}
	of, err := w.Material.Properties()
	t, known := w.Thick.Get()
	if err != nil || !known {
		return Panel{}, fmt.Errorf("window %s: its panel's material and thickness must be recorded for a clear patch", w.ID)
	}
	return Panel{t.Metres(), of.Index}, nil
}

// NoseGap is how far behind a panel's rear face, or an open window's rink face,
// the foremost point of a nose stays, so that nothing scratches. Own choice.
const NoseGap = 5 * unit.Millimetre

// steepest is the largest angle from the normal at which a ray is still traced.
const steepest = 80 * math.Pi / 180

// How finely a patch is traced: the frame's edge in so many pieces a side, and
// the aims no farther apart than so.
const (
	edgePieces = 16
	aimStep    = 5 * unit.Degree
)

// WindowPatch returns the patch that clears a bare lens at every focal length,
// wide open, at all the aims; unknown when a ray of the frame is steeper than 80
// degrees. A zoom is tried at 17 focal lengths: half the view narrows as the
// pupil grows, and either may need more.
func WindowPatch(w glass.Window, l kit.Lens, body kit.Body, aims Aims) (unit.Maybe[Patch], error) {
	var none, most unit.Maybe[Patch]
	panel, err := PanelOf(w)
	if err != nil {
		return none, err
	}
	steps := 16
	if l.FocalMax == l.FocalMin {
		steps = 0
	}
	for i := 0; i <= steps; i++ {
		focal := l.FocalMin + (l.FocalMax-l.FocalMin)*unit.Length(i)/unit.Length(max(steps, 1))
		c, err := Setup{
			Hole: w.Size, Thick: NoseGap, Nose: l.Nose, Focal: focal, Stop: l.WidestAt(focal),
			Sensor: body.Sensor, Front: l.Front, PupilDepth: l.PupilDepth,
		}.Case()
		if err != nil {
			return none, fmt.Errorf("window %s, lens %s: %w", w.ID, l.ID, err)
		}
		p, ok := c.Patch(panel, aims).Get()
		if !ok {
			return none, nil
		}
		most = unit.Known(most.Or(p).With(p))
	}
	return most, nil
}

// footprint is where the pupil's rays in one direction cross the film: an ellipse.
type footprint struct {
	at   geom.Vec2 // its centre, folded to X, Y >= 0
	a, b geom.Vec2 // its axes
}

// reach returns how far the ellipse or its mirror image goes in a direction n >= 0.
func (f footprint) reach(n geom.Vec2) float64 {
	m := geom.Vec2{X: n.X, Y: -n.Y}
	return n.Dot(f.at) + max(math.Hypot(n.Dot(f.a), n.Dot(f.b)), math.Hypot(m.Dot(f.a), m.Dot(f.b)))
}

// Patch returns the patch that the case's camera needs through a panel, its pupil
// opposite the patch's middle, its foremost point [NoseGap] behind the panel;
// unknown when a ray is steeper than 80 degrees from the normal. The case's hole
// is left out of account.
func (c Case) Patch(p Panel, aims Aims) unit.Maybe[Patch] {
	var feet []footprint
	var half geom.Vec2
	each := func(lo, hi unit.Angle, do func(at float64)) {
		n := math.Ceil(float64((hi - lo) / aimStep))
		for i := 0.0; i <= n; i++ {
			do((lo + (hi-lo)*unit.Angle(i/max(n, 1))).Radians())
		}
	}
	steep := false
	each(0, aims.Pan, func(pan float64) {
		each(-aims.Down, aims.Up, func(tilt float64) {
			a := aimAt(pan, tilt)
			for _, at := range edge() {
				f, ok := c.through(p, &a, a.toward(at.X*c.TanX, at.Y*c.TanY))
				steep = steep || !ok
				half.X, half.Y = max(half.X, f.reach(geom.Vec2{X: 1})), max(half.Y, f.reach(geom.Vec2{Y: 1}))
				feet = append(feet, f)
			}
		})
	})
	if steep {
		return unit.Maybe[Patch]{}
	}
	return unit.Known(Patch{
		Size:   unit.Size{W: unit.Length(2 * half.X), H: unit.Length(2 * half.Y)},
		Corner: unit.Length(rounding(feet, half, c.Pupil/2)), Aims: aims,
	})
}

// edge returns points round the frame's edge, in units of its half tangents.
func edge() []geom.Vec2 {
	var out []geom.Vec2
	for i := range 2*edgePieces + 1 {
		k := float64(i)/edgePieces - 1
		out = append(out, geom.Vec2{X: k, Y: 1}, geom.Vec2{X: k, Y: -1}, geom.Vec2{X: 1, Y: k}, geom.Vec2{X: -1, Y: k})
	}
	return out
}

// through traces the pupil's rays in one direction u onto the film, on the
// panel's rink face. On the way to the rear face they run along u, inside along
// v with v_xy = u_xy/n (Snell, u of unit length); rays of one direction stay parallel:
//
//	at = d u_xy/u_z + t v_xy/v_z
//
// d is the pupil's centre behind the rear face, gap + D/2 sin A + p cos A with A
// between axis and normal, so that the foremost point of the nose keeps the gap.
// Source: own derivation.
func (c *Case) through(p Panel, a *aim, u geom.Vec3) (footprint, bool) {
	u = u.Unit()
	if u.Z <= math.Cos(steepest) {
		return footprint{}, false
	}
	d := NoseGap.Metres() + c.Nose/2*a.sin + c.PupilDepth*a.cos
	slope := u.XY().Scale(1 / u.Z)
	at := slope.Scale(d)
	if p.Thick > 0 {
		v := u.XY().Scale(1 / p.Index)
		at = at.Add(v.Scale(p.Thick / math.Sqrt(1-v.Dot(v))))
	}
	rho := c.Pupil / 2
	return footprint{
		at: geom.Vec2{X: math.Abs(at.X), Y: math.Abs(at.Y)},
		a:  a.right.XY().Sub(slope.Scale(a.right.Z)).Scale(rho),
		b:  a.up.XY().Sub(slope.Scale(a.up.Z)).Scale(rho),
	}, true
}

// cornerNormals is how many directions of a corner are proved clear.
const cornerNormals = 12

// rounding returns the largest corner radius, at most most, of a rectangle of
// these half sides whose corners still hold all of the footprints: in each
// direction n of a corner r (n_x + n_y - 1) <= half . n - reach(n).
func rounding(feet []footprint, half geom.Vec2, most float64) float64 {
	r := most
	for i := 1; i < cornerNormals; i++ {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i) / cornerNormals)
		n := geom.Vec2{X: cos, Y: sin}
		for _, f := range feet {
			r = min(r, (half.Dot(n)-f.reach(n))/(sin+cos-1))
		}
	}
	return max(0, r)
}

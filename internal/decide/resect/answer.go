package resect

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Site is where something stands along the boards and above the ice.
type Site struct{ Station, Height unit.Length }

// Ellipse holds the true place in 95 % of cases.
type Ellipse struct {
	Major, Minor unit.Length // half axes
	Angle        unit.Angle  // of the longer one, from along the boards toward up, 0 to 180 deg
}

// Answer is where a hole stands by the frames that were taken through it.
type Answer struct {
	Site           // of the hole: where the cameras' axes pass the glass
	Ellipse        Ellipse
	Near           unit.Maybe[glass.Hole] // the arena's hole that is meant, none when none is near
	Off            Site                   // from that hole to here: along the boards and up
	Frames         []View
	Noise          float64 // of the marks, px, a standard deviation in each direction
	FreedomDegrees float64 // degrees of freedom that it rests on, a number
	Rivals         []Site  // other places that the marks fit as well
	Help           *Help   // nil: nothing more can be marked in the frames
	Assumed        []arena.Assumption
}

// Along and Up are how far the ellipse reaches along the boards and in height.
func (e Ellipse) Along() unit.Length { return e.reach(0) }
func (e Ellipse) Up() unit.Length    { return e.reach(math.Pi / 2) }

func (e Ellipse) reach(angle float64) unit.Length {
	sin, cos := math.Sincos(e.Angle.Radians() - angle)
	return metres(math.Hypot(e.Major.Metres()*cos, e.Minor.Metres()*sin))
}

// InOpening reports whether the place found lies within the opening of the hole that is
// meant: a lens is seldom held in its middle, so nothing speaks against the plan then.
func (a Answer) InOpening() bool {
	h, ok := a.Near.Get()
	return ok && math.Abs(a.Off.Station.Metres()) <= h.Size.W.Metres()/2 && math.Abs(a.Off.Height.Metres()) <= h.Size.H.Metres()/2
}

// View is the camera of one frame.
type View struct {
	Frame           string
	Camera          Site        // of the eye, seen square to the boards
	Behind          unit.Length // of the eye behind the boards' rink face
	Focal           unit.Length
	FocalSpread     unit.Length // a standard deviation, 0 of one that was given
	Pan, Tilt, Roll unit.Angle
	Marks           []Residual
}

// Residual is what is left of a mark.
type Residual struct {
	Pin
	Px   float64    // between the mark and where the camera sees its landmark, px
	Seen [2]float64 // where the camera sees its landmark, px as the mark counts them
	Used bool       // it fits with the others
	Like string     // of one that does not fit: the landmark that lies there, "" when none does
}

// Help is a further landmark, and what the longer half axis of the ellipse would be with it.
type Help struct {
	Frame, Landmark string
	Major           unit.Length
	Seen            [2]float64 // where it is expected in the frame, px as marks count them
}

// HoleNear is how far from a hole of the arena its place may come out and still be meant:
// holes stand farther apart.
const HoleNear = unit.Metre

// answer tells what the numbers mean.
func (m *model) answer(a arena.Arena, known []Landmark, x []float64, others [][]float64) Answer {
	l := m.left(x)
	out := Answer{Site: m.place(x), Noise: l.sigma, FreedomDegrees: l.dof, Assumed: arena.Assumed(a.Setback())}
	cov := m.placeCov(x, l.cov)
	share := shareOf(m.placeCov(x, l.byMarks(m.used)), cov)
	out.Ellipse = ellipse(cov, l.radius2(share))
	for _, o := range others {
		out.Rivals = append(out.Rivals, m.place(o))
	}
	out.near(a)
	n := 0
	for i, f := range m.frames {
		v := m.view(x, i, l)
		for k, mark := range f.Marks {
			dx, dy := m.sigma*l.marks[2*n], m.sigma*l.marks[2*n+1]
			r := Residual{Pin: mark, Px: math.Hypot(dx, dy), Seen: [2]float64{mark.X + dx, mark.Y + dy}, Used: m.used[n]}
			if !r.Used {
				r.Like = m.like(x, i, k, known, l.sigma)
			}
			v.Marks = append(v.Marks, r)
			n++
		}
		out.Frames = append(out.Frames, v)
	}
	out.Help = m.help(x, l, share, known)
	return out
}

// place is where the axis passes the glass; of an eye before the glass, where it stands.
func (m *model) place(x []float64) Site {
	s := x
	if len(m.frames) > 1 && len(x) > m.shared() {
		s = x[m.shared():]
	}
	station, height := s[atStation], s[atHeight]
	if before := -x[atBack]; before > 0 && len(m.frames) == 1 {
		_, _, forward := frame.Axes(x[atPan], x[atTilt])
		station, height = station+before*forward.X, height+before*forward.Y
	}
	return Site{m.rink.Wrap(metres(station)), metres(height)}
}

// placeCov is the covariance of the place, in square metres times (sigma/fit's sigma)^2.
func (m *model) placeCov(x []float64, cov mat.Symmetric) *mat.SymDense {
	g := mat.NewDense(2, len(m.free), nil)
	y := append([]float64(nil), x...)
	for j, k := range m.free {
		y[k] = x[k] + probe
		hi := m.place(y)
		y[k] = x[k] - probe
		lo := m.place(y)
		y[k] = x[k]
		g.Set(0, j, m.rink.Apart(lo.Station, hi.Station).Metres()/(2*probe))
		g.Set(1, j, (hi.Height-lo.Height).Metres()/(2*probe))
	}
	var half, whole mat.Dense
	half.Mul(g, cov)
	whole.Mul(&half, g.T())
	return mat.NewSymDense(2, []float64{whole.At(0, 0), whole.At(0, 1), whole.At(0, 1), whole.At(1, 1)})
}

// shareOf is the mean share, over all directions, that a covariance has in another.
func shareOf(part, whole *mat.SymDense) float64 {
	var inv, p mat.Dense
	if inv.Inverse(whole) != nil {
		return 1
	}
	p.Mul(&inv, part)
	return min(1, mat.Trace(&p)/2)
}

// ellipse is the one of a covariance, so many standard deviations squared large.
func ellipse(c *mat.SymDense, r2 float64) Ellipse {
	xx, xy, yy := c.At(0, 0), c.At(0, 1), c.At(1, 1)
	mid, d := (xx+yy)/2, math.Hypot((xx-yy)/2, xy)
	angle := math.Atan2(2*xy, xx-yy) / 2
	if angle < 0 {
		angle += math.Pi
	}
	return Ellipse{metres(math.Sqrt(r2 * (mid + d))), metres(math.Sqrt(r2 * max(mid-d, 0))), unit.Angle(angle)}
}

// near finds the arena's hole that is meant.
func (a *Answer) near(of arena.Arena) {
	best := HoleNear.Metres()
	for _, h := range of.Holes {
		off := Site{of.Rink.Apart(h.Station, a.Station), a.Height - h.Height}
		if d := math.Hypot(off.Station.Metres(), off.Height.Metres()); d < best {
			best, a.Near, a.Off = d, unit.Known(h), off
		}
	}
}

// view tells the camera of a frame.
func (m *model) view(x []float64, i int, l left) View {
	own, f := x[i*numbers:(i+1)*numbers], m.frames[i]
	eye := m.lens(own).Eye
	v := View{Frame: f.Name, Focal: metres(math.Exp(own[atFocal]) / f.across()),
		Pan: unit.Angle(own[atPan]), Tilt: unit.Angle(own[atTilt]), Roll: unit.Angle(math.Remainder(own[atRoll], 2*math.Pi))}
	for j, k := range m.free {
		if k == i*numbers+atFocal {
			v.FocalSpread = v.Focal * metres(math.Sqrt(l.cov.At(j, j)))
		}
	}
	s := m.foot(eye.XY(), own[atStation])
	v.Camera = Site{m.rink.Wrap(s), metres(eye.Z)}
	v.Behind = metres(m.rink.Point(s).Sub(eye.XY()).Dot(m.rink.Normal(s)))
	return v
}

// foot returns the station to which a place near the boards stands square.
func (m *model) foot(p geom.Vec2, station float64) unit.Length {
	s := metres(station)
	for range 30 { // each step leaves the share depth/radius of what was amiss
		s += metres(p.Sub(m.rink.Point(s)).Dot(m.rink.Tangent(s)))
	}
	return s
}

func metres(x float64) unit.Length { return unit.Length(x) }

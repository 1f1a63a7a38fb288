package puck

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Gravity is the standard acceleration of free fall, m/s2.
const Gravity = 9.80665

// AirDensity is that of cold rink air, kg/m3: dry air at 10 deg C and
// 101.325 kPa (ideal gas, R = 287.05 J/(kg K)).
const AirDensity = 1.247

// Drag coefficients, dimensionless, on the area that the air meets. A data book for
// aeronautical engineers gives 0.63 for a short cylinder crosswise (length
// over diameter 1, the shortest in its table) and 1.17 for a disc face on. A
// flat puck is a cylinder crosswise; a tumbling one lies between, and takes
// the mean of both. No value measured on a puck was found.
const (
	DragFlat     = 0.63
	DragTumbling = 0.90
)

// Body is how a puck meets the air: drag coefficient and area. The zero
// value has no drag.
type Body struct {
	Drag   float64 // drag coefficient, dimensionless, on AreaM2
	AreaM2 float64 // square metres
}

// FlatBody returns a puck that flies flat, its rim to the air: D h.
func FlatBody() Body {
	return Body{Drag: DragFlat, AreaM2: Diameter.Metres() * Thickness.Metres()}
}

// TumblingBody returns a tumbling puck: a quarter of its surface, the mean
// shadow of a convex body over all orientations (Cauchy).
func TumblingBody() Body {
	d, h := Diameter.Metres(), Thickness.Metres()
	return Body{Drag: DragTumbling, AreaM2: math.Pi * d * (d/2 + h) / 4}
}

// perMetre returns the loss of speed per metre flown, 1/m: rho Cd A / 2 m.
func (b Body) perMetre() float64 { return AirDensity * b.Drag * b.AreaM2 / (2 * MassKG) }

// Motion is a puck's place and speed in the upright plane of its flight.
type Motion struct {
	Distance unit.Length // level, from where the flight began
	Height   unit.Length // above the ice
	Level    unit.Speed  // level part of the speed, > 0
	Climb    unit.Speed  // upward part
}

// Speed returns the speed along the flight.
func (m Motion) Speed() unit.Speed {
	return unit.Speed(math.Hypot(float64(m.Level), float64(m.Climb)))
}

// Up returns the upward angle of the flight above level.
func (m Motion) Up() unit.Angle {
	return unit.Angle(math.Atan2(float64(m.Climb), float64(m.Level)))
}

// Struck returns the motion of a puck struck from a height at a speed and an
// upward angle (within 90 degrees).
func Struck(height unit.Length, v unit.Speed, up unit.Angle) Motion {
	s, c := math.Sincos(up.Radians())
	return Motion{Height: height, Level: v * unit.Speed(c), Climb: v * unit.Speed(s)}
}

// stepMetres is the integrator's step along the ice. Halving it moves a
// height at 60 m by less than a micrometre at 20 m/s and above.
const stepMetres = 1.0

// coarseMetres is the step where many flights are only weighed against one
// another: a height at 60 m is right to a millimetre at 20 m/s and above.
const coarseMetres = 4.0

// Fly returns the motion after flying on to a level distance from the
// flight's beginning, with gravity and drag square in the speed:
//
//	dv/dt = -g z - k |v| v,   k = rho Cd A / 2 m
//
// integrated over the distance by fourth-order Runge-Kutta. ok is false when
// the puck would come to a stand on the way or the distance lies behind. The ice is not
// seen: a height below zero means that the puck has come down before.
// Source: own integration of the textbook equation; no lift.
func (b Body) Fly(m Motion, to unit.Length) (out Motion, ok bool) {
	return b.fly(m, to, stepMetres)
}

func (b Body) fly(m Motion, to unit.Length, step float64) (out Motion, ok bool) {
	left := (to - m.Distance).Metres()
	if !(left >= 0) || !(m.Level > 0) {
		return m, false
	}
	k := b.perMetre()
	p := state{m.Height.Metres(), float64(m.Level), float64(m.Climb)}
	steps := math.Ceil(left / step)
	for range int(steps) {
		if p, ok = p.step(left/steps, k); !ok {
			return m, false
		}
	}
	return Motion{Distance: to, Height: unit.Length(p.z), Level: unit.Speed(p.u), Climb: unit.Speed(p.w)}, true
}

// state is height (m), level and upward speed (m/s), as functions of distance.
type state struct{ z, u, w float64 }

// slope returns the state's change per metre of level distance.
func (p state) slope(k float64) state {
	kv, per := k*math.Sqrt(p.u*p.u+p.w*p.w), 1/p.u
	return state{z: p.w * per, u: -kv, w: -(Gravity + kv*p.w) * per}
}

func (p state) plus(d state, x float64) state {
	return state{p.z + d.z*x, p.u + d.u*x, p.w + d.w*x}
}

// slowest is the level speed (m/s) below which the puck counts as standing:
// from there it falls all but straight down.
const slowest = 0.1

// step is one step of the classical fourth-order Runge-Kutta rule.
func (p state) step(x, k float64) (state, bool) {
	a := p.slope(k)
	b := p.plus(a, x/2).slope(k)
	c := p.plus(b, x/2).slope(k)
	d := p.plus(c, x).slope(k)
	sum := state{a.z + 2*b.z + 2*c.z + d.z, a.u + 2*b.u + 2*c.u + d.u, a.w + 2*b.w + 2*c.w + d.w}
	out := p.plus(sum, x/6)
	return out, out.u > slowest && !math.IsNaN(out.z)
}

// fallStep is the step for Land, in metres of level distance: a landing place
// is found to within 5 mm by a straight line through the last step.
const fallStep = 0.25

// Land returns where the puck comes down to a floor height, flying on from
// the motion; a puck that starts below the floor lands where it is.
func (b Body) Land(m Motion, floor unit.Length) Motion {
	k := b.perMetre()
	x, p := m.Distance.Metres(), state{m.Height.Metres(), float64(m.Level), float64(m.Climb)}
	for p.z > floor.Metres() && p.u > 0 {
		// A slow or steep puck takes shorter steps, so that a step never falls far.
		dx := min(fallStep, 0.01*p.u, 0.02*p.u*p.u/Gravity)
		next, ok := p.step(dx, k)
		if !ok {
			break // it drops straight from here
		}
		if next.z <= floor.Metres() {
			share := (p.z - floor.Metres()) / (p.z - next.z)
			x += dx * share
			p = p.plus(state{next.z - p.z, next.u - p.u, next.w - p.w}, share)
			break
		}
		x, p = x+dx, next
	}
	return Motion{Distance: unit.Length(x), Height: min(floor, m.Height), Level: unit.Speed(p.u), Climb: unit.Speed(p.w)}
}

// dragFree returns the lower upward angle at which a puck without drag goes
// through height z at distance x (metres), vv being its speed squared:
// tan e = (v^2 - sqrt(v^4 - g (g x^2 + 2 z v^2))) / (g x).
func dragFree(vv, x, z float64) (e float64, ok bool) {
	root := vv*vv - Gravity*(Gravity*x*x+2*z*vv)
	if !(root >= 0) || !(x > 0) {
		return 0, false
	}
	return math.Atan((vv - math.Sqrt(root)) / (Gravity * x)), true
}

// flatFire returns the tangent of the lower upward angle at which a puck struck
// at speed v goes through height z at distance x (metres), were its level speed
// to fall as if it flew on straight, u = v cos e exp(-K x) with K = k / cos e, and
// the change of that height with the angle, m/rad:
//
//	z = x tan e - A (1 + tan^2 e),   A = g (exp(2 K x) - 1 - 2 K x) / (4 K^2 v^2)
//
// It starts the search for the true angle: a flat puck at 25 m/s misses a height
// 40 m away by less than 0.2 m. ok is false when the puck would not get there.
// Source: own derivation, the flat-fire approximation of ballistics.
func (b Body) flatFire(v, x, z float64) (tan, perRadian float64, ok bool) {
	k := b.perMetre()
	a := 0.0
	for range 2 { // first as if level
		a = Gravity * x * x / (2 * v * v)
		if y := 2 * k * math.Sqrt(1+tan*tan) * x; y > 1e-3 { // else rounding is more than the drag
			a *= 2 * (math.Expm1(y) - y) / (y * y)
		}
		root := x*x - 4*a*(z+a)
		if root < 0 {
			return 0, 0, false
		}
		tan = (x - math.Sqrt(root)) / (2 * a)
	}
	return tan, (1 + tan*tan) * (x - 2*a*tan), true
}

// launch finds the lower of the upward angles at which a puck struck from
// the ice at speed v goes through a height at a distance, and the motion there
// and the change of that height with the angle (m/rad). ok is false when the
// puck cannot get there.
func (b Body) launch(v unit.Speed, distance, height unit.Length) (up unit.Angle, at Motion, perRadian float64, ok bool) {
	x, z := distance.Metres(), height.Metres()
	e, ok := dragFree(float64(v)*float64(v), x, z)
	if !ok {
		return 0, Motion{}, 0, false
	}
	tan, slope, near := b.flatFire(float64(v), x, z)
	if near {
		e = math.Atan(tan)
	}
	var before, high float64 // the last try's angle and height
	for try := range mostTries {
		a, ok := b.fly(Struck(0, v, unit.Angle(e)), distance, coarseMetres)
		if !ok {
			return 0, Motion{}, 0, false
		}
		miss := z - a.Height.Metres()
		done := math.Abs(miss) < 1e-5
		switch {
		case near && try > 0: // two tries near by tell the slope
			slope = (a.Height.Metres() - high) / (e - before)
		case done:
			slope = b.rise(v, e, a)
		case !near: // that of the flight without drag
			t := math.Tan(e)
			slope = x * (1 + t*t) * (1 - Gravity*x*t/float64(v*v))
		}
		if done {
			return unit.Angle(e), a, slope, slope > 0
		}
		before, high = e, a.Height.Metres()
		if slope <= 0 {
			return 0, Motion{}, 0, false // past the highest arc that gets there
		}
		if e += miss / slope; e > steepest {
			return 0, Motion{}, 0, false
		}
	}
	return 0, Motion{}, 0, false
}

// Bounds of launch: tries before it gives up, and the steepest angle (radians).
const (
	mostTries = 24
	steepest  = 80 * math.Pi / 180
)

// rise returns how the height at a's distance changes with the upward angle,
// m/rad; it is not above 0 past the highest arc that gets there.
func (b Body) rise(v unit.Speed, e float64, a Motion) (perRadian float64) {
	const nudge = 1e-4 // radians: 6 mm at 60 m, far above rounding, far below curvature
	c, ok := b.fly(Struck(0, v, unit.Angle(e+nudge)), a.Distance, coarseMetres)
	if !ok {
		return 0
	}
	return (c.Height - a.Height).Metres() / nudge
}

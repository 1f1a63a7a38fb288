package play

import (
	"math"
	"math/rand/v2"
)

// scene is one moment in the making, in the frame of the attack: the attacked
// goal always stands at +x. End A's moments are turned by half a turn when
// they are done, so that both ends follow one description.
type scene struct {
	lay Layout
	ass *Assumptions
	rng *rand.Rand
	m   Moment
	in  [People]bool // who stands already
	// benchSide is the y sign of the benches' boards in the attack's frame.
	benchSide float64
	bank      bank // the bench of the team that attacks
	// onside keeps the carrier's team mates behind the attacked blue line.
	onside bool
}

// Poses: how high the top of the helmet is, as a share of the standing height
// in equipment. Own estimates from the look of play; a skater in motion bends
// knees and hips, a centre at the drop bends double, a goalkeeper is set low.
const (
	poseUpright = 1.0
	poseSkating = 0.88
	poseBattle  = 0.82
	poseFaceOff = 0.68
	poseSet     = 0.72 // goalkeeper set for a shot
	poseDown    = 0.55 // goalkeeper in the butterfly
)

// The draws: uniform in [a, b), normal, a coin of chance p, one of two sides.
func (s *scene) uniform(a, b float64) float64    { return a + (b-a)*s.rng.Float64() }
func (s *scene) normal(mean, sd float64) float64 { return mean + sd*s.rng.NormFloat64() }
func (s *scene) chance(p float64) bool           { return s.rng.Float64() < p }
func (s *scene) side() float64 {
	if s.chance(0.5) {
		return 1
	}
	return -1
}

const (
	// tries is how many draws around the wished place are made before the
	// search turns to a spiral.
	tries = 24
	// boardsGap keeps bodies from touching the boards, metres.
	boardsGap = 0.02
	// bodyGap keeps bodies apart, metres; above the rounding to float32.
	bodyGap = 0.01
	// headingNoise is how far a face deviates from where its role looks, radians (1 sd).
	headingNoise = 15 * math.Pi / 180
	// golden is the golden angle in radians: a spiral of that step covers a disc evenly.
	golden = 2.399963229728653
)

// put places person i near (x, y) with a spread in metres, on the ice, out of
// the goals and clear of everybody already there.
func (s *scene) put(i int, x, y, spread, pose float64) {
	px, py := x, y
	for try := range tries {
		if try > 0 || spread > 0 {
			wide := spread * (1 + float64(try)/8)
			px, py = s.normal(x, wide), s.normal(y, wide)
		}
		if s.free(i, px, py) {
			s.stand(i, px, py, pose)
			return
		}
	}
	// A spiral from the wished place finds the nearest free place; the ice is
	// always larger than sixteen bodies.
	for k := 0; ; k++ {
		r := 0.12 * math.Sqrt(float64(k))
		px, py = x+r*math.Cos(float64(k)*golden), y+r*math.Sin(float64(k)*golden)
		if s.free(i, px, py) || k > spiralEnd {
			s.stand(i, px, py, pose)
			return
		}
	}
}

// spiralEnd ends the search at a radius of 170 m, past any rink, so that it does
// not loop for ever on a rink too small to hold a game, which SetFor refuses.
const spiralEnd = 2_000_000

func (s *scene) free(i int, x, y float64) bool {
	r := Radius(i)
	if s.lay.Clearance(x, y) < r+boardsGap || s.lay.inGoal(x, y, r) {
		return false
	}
	if s.onside && i > Attackers && i < Defenders && x > s.lay.BlueX {
		return false
	}
	for j := range s.in {
		if !s.in[j] {
			continue
		}
		dx, dy := x-s.m.People[j].X, y-s.m.People[j].Y
		if d := r + Radius(j) + bodyGap; dx*dx+dy*dy < d*d {
			return false
		}
	}
	return true
}

func (s *scene) stand(i int, x, y, pose float64) {
	s.in[i] = true
	p := &s.m.People[i]
	p.X, p.Y = x, y
	p.Height = s.ass.standing(s.rng.NormFloat64()) * pose
}

// look turns person i's face toward a point, with the usual noise.
func (s *scene) look(i int, x, y float64) {
	p := &s.m.People[i]
	p.Heading = wrap(math.Atan2(y-p.Y, x-p.X) + headingNoise*s.rng.NormFloat64())
}

// face turns person i's face along a direction in radians, with a spread (1 sd).
func (s *scene) face(i int, angle, spread float64) {
	s.m.People[i].Heading = wrap(angle + spread*s.rng.NormFloat64())
}

// goalies puts both goalkeepers: the attacked one between puck and goal and
// set, the other far off and upright.
func (s *scene) goalies(pose float64) {
	s.keep(DefenderGoalie, s.lay.GoalX, pose)
	s.keep(AttackerGoalie, -s.lay.GoalX, poseSkating)
}

// keep places a goalkeeper on the line from the goal's middle to the puck, as
// far out as the crease lets him cut the angle: 0.5 to 1.5 m.
func (s *scene) keep(i int, goal, pose float64) {
	dx, dy := s.m.Puck.X-goal, s.m.Puck.Y
	d := math.Hypot(dx, dy)
	out := math.Max(0.5, math.Min(1.5, d/6))
	if dx*goal > 0 { // the puck is behind the goal line: hug a post
		dx, d = -sign(goal)*0.6, math.Hypot(0.6, dy)
	}
	d = math.Max(d, 1e-6)
	x := goal + out*dx/d
	if in := goal - sign(goal)*(GoalieRadius+0.05); x*sign(goal) > in*sign(goal) {
		x = in
	}
	s.put(i, x, out*dy/d, 0.05, pose)
	s.look(i, s.m.Puck.X, s.m.Puck.Y)
}

// officials puts two referees (one deep behind the goal line's corner, one in
// the neutral zone) and two linesmen at the blue lines' boards.
func (s *scene) officials() {
	l := s.lay
	side := s.side()
	s.put(Officials, l.GoalX-0.5, side*(l.HalfWidth-3.2), 0.5, poseUpright)
	s.put(Officials+1, s.uniform(-2, l.BlueX), -side*(l.HalfWidth-1), 0.3, poseUpright)
	s.put(Officials+2, l.BlueX, side*(l.HalfWidth-0.8), 0.3, poseUpright)
	s.put(Officials+3, -l.BlueX*0.3, -side*(l.HalfWidth-0.8), 0.5, poseUpright)
	for i := Officials; i < People; i++ {
		s.look(i, s.m.Puck.X, s.m.Puck.Y)
	}
}

// watch makes the persons from..to-1 look at the puck.
func (s *scene) watch(from, to int) {
	for i := from; i < to; i++ {
		s.look(i, s.m.Puck.X, s.m.Puck.Y)
	}
}

// turn makes the scene one of end A: half a turn about centre ice.
func (s *scene) turn() {
	s.m.Puck.X, s.m.Puck.Y = -s.m.Puck.X, -s.m.Puck.Y
	for i := range s.m.People {
		p := &s.m.People[i]
		p.X, p.Y, p.Heading = -p.X, -p.Y, wrap(p.Heading+math.Pi)
	}
}

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}

// wrap brings an angle into (-pi, pi].
func wrap(a float64) float64 { return math.Remainder(a, 2*math.Pi) }

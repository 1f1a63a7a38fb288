package play

import (
	"math"
	"math/rand/v2"

	"example.org/rinkpane/internal/measure/geom"
)

// Shot is one shot on goal: where the puck leaves the stick and how.
type Shot struct {
	X, Y      float64 // release place, metres in the rink's frame
	End       int     // +1 at end B's goal, -1 at end A's
	Side      int     // of the goal in a game across the ice, +1 for y > 0; see [Layout.Net]
	Speed     float64 // metres per second at release
	Azimuth   float64 // horizontal direction, radians counter-clockwise from +x
	Elevation float64 // above the horizontal, radians, at least 0
}

// Speed and aim of shots. Slap shots: 29.14 m/s mean, 1.39 m/s deviation (Woo
// et al.), peak 33.3 m/s (J Appl Biomech 22(3)); the other figures are own
// assumptions: most shots in a game are wrist shots, slower, and aim errs by a
// few degrees to the sides and upward.
const (
	slapShare  = 0.25
	slapSpeed  = 29.14
	slapSD     = 1.39
	wristSpeed = 21.0
	wristSD    = 3.5
	maxSpeed   = 46.0 // above the fastest measured, from memory
	minSpeed   = 5.0
	aimSD      = 4 * math.Pi / 180
	riseMean   = 4 * math.Pi / 180
	riseSD     = 4 * math.Pi / 180
)

// Shots returns the shots among a set's moments, in order, each with a speed,
// an aim at the goal's mouth that errs, and a rise. The same set and seed give
// the same shots.
func (s *Set) Shots(seed uint64) []Shot {
	var out []Shot
	src := rand.NewPCG(0, 0)
	rng := rand.New(src)
	for i := range s.Len() {
		if !s.Shot[i] {
			continue
		}
		src.Seed(seed, mix(uint64(i)))
		out = append(out, s.shot(i, rng))
	}
	return out
}

func (s *Set) shot(i int, rng *rand.Rand) Shot {
	l := s.Layout
	sh := Shot{X: float64(s.PuckX[i]), Y: float64(s.PuckY[i]), End: int(s.End[i]), Side: int(s.End[i])} // across, too, an attack goes the way of its end
	net := l.Net(sh.End, sh.Side)
	mean, sd := wristSpeed, wristSD
	if rng.Float64() < slapShare {
		mean, sd = slapSpeed, slapSD
	}
	sh.Speed = min(max(mean+sd*rng.NormFloat64(), minSpeed), maxSpeed)
	off := l.GoalHalf * (2*rng.Float64() - 1)
	aim := net.Line.Add(geom.Vec2{X: off * math.Abs(net.In.Y), Y: off * math.Abs(net.In.X)})
	sh.Azimuth = wrap(math.Atan2(aim.Y-sh.Y, aim.X-sh.X) + aimSD*rng.NormFloat64())
	sh.Elevation = max(0, riseMean+riseSD*rng.NormFloat64())
	return sh
}

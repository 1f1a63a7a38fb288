package play

import "math"

// Where face-offs are taken, seen from the team that attacks: own judgement
// (end zones most, then the neutral spots, then centre ice).
const (
	dropAttacking = 0.35
	dropDefending = 0.20
	dropNeutral   = 0.32 // the rest: centre ice
)

// faceOff: two centres bent over a spot, a linesman beside it, the wings on
// the circle's edge abreast of the spot, defenders behind.
//
//	     x o  wing
//	o        L        x
//	     o : x        G if at an end
//	o        .        x
//	     x o  wing
func (s *scene) faceOff(at *Puck) {
	if at == nil {
		s.m.Puck = s.spot()
	} else {
		s.m.Puck = *at
	}
	p := s.m.Puck
	s.goalies(poseSet)
	// The attacking centre stands on the side away from the goal attacked.
	s.put(0, p.X-0.55, p.Y, 0.03, poseFaceOff)
	s.put(Defenders, p.X+0.55, p.Y, 0.03, poseFaceOff)
	s.face(0, 0, headingNoise/2)
	s.face(Defenders, math.Pi, headingNoise/2)
	drop := -sign(p.Y)
	s.put(Officials+2, p.X, p.Y+drop*1.05, 0.05, poseSkating)
	r := math.Min(s.lay.CircleR, 4.57) + 0.4
	for k, y := range [...]float64{r, -r} {
		s.put(1+k, p.X-0.5, p.Y+y, 0.15, poseSkating)
		s.put(6+k, p.X+0.5, p.Y+y, 0.15, poseSkating)
		s.put(3+k, p.X-s.uniform(4.5, 7), p.Y+y*s.uniform(0.3, 0.9), 0.4, poseSkating)
		s.put(8+k, p.X+s.uniform(4, 6), p.Y+y*s.uniform(0.3, 0.8), 0.4, poseSkating)
	}
	s.watch(1, 5)
	s.watch(6, 10)
	side := s.side()
	s.put(Officials, p.X+s.uniform(4, 7), side*(s.lay.HalfWidth-1.5), 0.3, poseUpright)
	s.put(Officials+1, p.X-s.uniform(6, 9), -side*(s.lay.HalfWidth-1.5), 0.3, poseUpright)
	s.put(Officials+3, p.X-s.uniform(3, 6), side*(s.lay.HalfWidth-0.8), 0.3, poseUpright)
	s.watch(Officials, People)
	s.m.Subject = 0
	if s.chance(0.5) {
		s.m.Subject = Defenders
	}
}

func (s *scene) spot() Puck {
	l := s.lay
	side := s.side()
	switch u := s.rng.Float64(); {
	case u < dropAttacking:
		return Puck{l.SpotX, side * l.SpotY, 0}
	case u < dropAttacking+dropDefending:
		return Puck{-l.SpotX, side * l.SpotY, 0}
	case u < dropAttacking+dropDefending+dropNeutral:
		return Puck{s.side() * l.NeutralX, side * l.SpotY, 0}
	}
	return Puck{}
}

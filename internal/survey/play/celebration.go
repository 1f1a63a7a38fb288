package play

import "math"

// celebration: the scorer turns away from the goal to the boards beside or
// behind it, looks at the crowd or back at the team mates, who close in from
// inside; the goalkeeper is down, the defending team drifts off.
//
//	________________
//	   o o          \
//	  o o^ scorer    |
//	       \    x    |
//	  x     .  G |=  |
func (s *scene) celebration(at *Puck) {
	l := s.lay
	side := s.side()
	var x, y float64
	if at == nil {
		// Along the boards from the middle of the end zone round the corner.
		x = s.uniform(l.SpotX-4, l.HalfLength-1.6)
		y = side * (l.HalfWidth - s.uniform(0.9, 4))
	} else {
		side = sign(at.Y)
		x, y = at.X+s.normal(0, 2), side*(l.HalfWidth-s.uniform(0.9, 4))
	}
	for l.Clearance(x, y) < SkaterRadius+0.3 {
		x, y = x*0.99, y*0.99
	}
	// The puck lies in the net, just behind the line: the one phase in which it may.
	s.m.Puck = Puck{l.GoalX + 0.4, s.normal(0, 0.3), 0}
	s.goalies(poseDown)
	s.put(0, x, y, 0.05, poseUpright)
	toBoards := side * math.Pi / 2
	if x > l.GoalX-1 {
		toBoards = side * math.Pi / 4 // round the corner: to the curve
	}
	switch u := s.rng.Float64(); {
	case u < 0.65:
		s.face(0, toBoards, 35*math.Pi/180)
	default: // turns to the team
		s.look(0, s.m.People[0].X-3, 0)
	}
	s.gather()
	for i := Defenders; i < Defenders+5; i++ {
		s.put(i, l.GoalX-s.uniform(2, 14), -side*s.uniform(-3, 8), 1, poseSkating)
		s.face(i, math.Pi, 50*math.Pi/180)
	}
	s.officials()
	s.m.Subject = 0
	if s.chance(0.15) {
		s.m.Subject = 1 // the one who made the pass
	}
}

// gather brings the scorer's team mates in: nearer the later the instant.
func (s *scene) gather() {
	sc := s.m.People[0]
	late := s.rng.Float64() // 0: just scored, 1: all in a knot
	inward := math.Atan2(-sc.Y, s.lay.GoalX-6-sc.X)
	for i := 1; i < Defenders; i++ {
		away := 0.75 + (1-late)*float64(i)*s.uniform(1, 2.2)
		angle := inward + s.normal(0, 0.7)
		s.put(i, sc.X+away*math.Cos(angle), sc.Y+away*math.Sin(angle), 0.15, poseUpright)
		s.look(i, sc.X, sc.Y)
	}
}

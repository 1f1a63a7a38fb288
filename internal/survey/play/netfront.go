package play

import "math"

// netFront: a scramble. The puck lies within a few metres of the goal mouth,
// the goalkeeper is down, two or three attackers and three defenders jostle
// inside 3 m, the rest wait at the points.
//
//	                 x o
//	 o           x  o *  G |=
//	 o  x            o x
//	points      the crease
func (s *scene) netFront(at *Puck) {
	l := s.lay
	if at == nil {
		x := l.GoalX - 0.3 - math.Abs(s.normal(0.9, 1.3))
		s.m.Puck = s.onIce(Puck{x, s.normal(0, 1.4), 0})
	} else {
		s.m.Puck = *at
	}
	p := s.m.Puck
	s.goalies(poseDown)
	toGoal := math.Atan2(-p.Y, l.GoalX-p.X)
	cx, cy := behind(p, toGoal)
	s.put(0, cx, cy, 0.15, poseBattle)
	s.look(0, l.GoalX, 0)
	s.put(Defenders, p.X+s.normal(0, 0.5), p.Y+s.side()*0.8, 0.2, poseBattle)
	s.look(Defenders, p.X, p.Y)
	s.put(1, l.GoalX-s.uniform(1.2, 2.5), s.normal(0, 1), 0.3, poseBattle)
	s.put(6, l.GoalX-s.uniform(1.2, 2.5), s.normal(0, 1), 0.3, poseBattle)
	s.put(7, l.GoalX-s.uniform(1.5, 3), s.normal(0, 1.5), 0.4, poseBattle)
	wait := s.uniform(2, 6)
	s.put(2, l.GoalX-wait, s.side()*s.uniform(1, 5), 0.5, poseSkating)
	side := s.side()
	s.put(3, l.BlueX+s.uniform(1, 4), side*s.uniform(3, 7), 0.7, poseSkating)
	s.put(4, l.BlueX+s.uniform(1, 4), -side*s.uniform(3, 7), 0.7, poseSkating)
	s.put(8, s.uniform(l.BlueX+4, l.SpotX), side*s.uniform(1, 5), 0.7, poseSkating)
	s.put(9, s.uniform(l.SpotX-2, l.GoalX-3), -side*s.uniform(1, 5), 0.7, poseSkating)
	s.watch(1, 5)
	s.watch(6, 10)
	s.officials()
	s.m.Shot = s.chance(netFrontShot)
	switch u := s.rng.Float64(); {
	case u < 0.35:
		s.m.Subject = DefenderGoalie
	case u < 0.80:
		s.m.Subject = 0
	default:
		s.m.Subject = Defenders
	}
}

// netFrontShot is the chance that the scramble's puck goes at the goal at that instant.
const netFrontShot = 0.17

package play

import "math"

// stickReach is how far before its carrier's body the puck lies, metres.
const stickReach = 0.9

// behind returns the place from which a carrier who faces along an angle has
// the puck on the stick.
func behind(p Puck, angle float64) (x, y float64) {
	return p.X - stickReach*math.Cos(angle), p.Y - stickReach*math.Sin(angle)
}

// onIce moves a puck place to the nearest place inside the boards and out of
// the goals, so that a stick can play it.
func (s *scene) onIce(p Puck) Puck {
	const gap = 0.1 // metres from the boards
	l := s.lay
	for k := 0; l.Clearance(p.X, p.Y) < gap && k < 200; k++ {
		p.X, p.Y = p.X*0.99, p.Y*0.99
	}
	if l.inGoal(p.X, p.Y, 0.05) {
		p.X = sign(p.X) * (l.GoalX - 0.06)
	}
	return p
}

// rush: the carrier comes over the blue line in a lane, a second forward in
// the other lane, a third through the middle; the attacking defenders trail.
// Two defenders back off between puck and goal, three checkers chase. Nobody is
// offside: while the puck is short of the blue line, so are all who attack.
//
//	     F2 o
//	          D2 x
//	o D     o F3        G  |=
//	          D1 x
//	 o D   x  o->* F1
//	      x
func (s *scene) rush(at *Puck) {
	l := s.lay
	lane := s.side()
	if at == nil {
		x := s.uniform(l.BlueX-3, l.GoalX-4)
		near := (x - l.BlueX) / (l.GoalX - l.BlueX) // 0 at the line, 1 at the goal
		wide := (l.HalfWidth - 1) * (0.85 - 0.45*math.Max(0, near))
		s.m.Puck = s.onIce(Puck{x, lane * wide * math.Sqrt(s.rng.Float64()), 0})
	} else {
		s.m.Puck = *at
		lane = sign(at.Y)
	}
	p := s.m.Puck
	s.onside = p.X < l.BlueX
	s.goalies(poseSet)
	toGoal := math.Atan2(-p.Y, l.GoalX-p.X)
	cx, cy := behind(p, toGoal)
	s.put(0, cx, cy, 0.05, poseSkating)
	s.face(0, toGoal, headingNoise)
	s.put(1, p.X+s.normal(0, 1.5), -lane*s.uniform(3, 8), 0.7, poseSkating)
	s.put(2, p.X-s.uniform(1, 5), -lane*s.uniform(-2, 3), 0.7, poseSkating)
	s.put(3, p.X-s.uniform(7, 11), lane*s.uniform(2, 7), 0.8, poseSkating)
	s.put(4, p.X-s.uniform(9, 14), -lane*s.uniform(2, 7), 0.8, poseSkating)
	for i := 1; i <= 4; i++ {
		s.face(i, 0, 20*math.Pi/180)
	}
	// The two who back off stand goal-side, on the inside of their man.
	gap := s.uniform(2, 4.5)
	s.put(8, p.X+gap*math.Cos(toGoal), p.Y*0.75+gap*math.Sin(toGoal), 0.4, poseSkating)
	s.put(9, p.X+gap, -lane*s.uniform(1.5, 4), 0.5, poseSkating)
	s.put(5, p.X-s.uniform(1, 4), p.Y-lane*s.uniform(1, 2.5), 0.5, poseSkating)
	s.put(6, p.X-s.uniform(2, 7), -lane*s.uniform(1, 6), 0.8, poseSkating)
	s.put(7, p.X-s.uniform(3, 9), lane*s.uniform(-3, 3), 0.8, poseSkating)
	for _, i := range [...]int{5, 6, 7} {
		s.face(i, 0, 20*math.Pi/180)
	}
	s.watch(8, 10)
	s.officials()
	s.m.Shot = s.chance(rushShot * math.Min(1, math.Max(0, (p.X-l.BlueX+2)/(l.GoalX-l.BlueX))))
	s.m.Subject = 0
}

// rushShot is the chance that a carrier close to the goal shoots at that instant.
const rushShot = 0.9

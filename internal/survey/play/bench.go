package play

import "math"

// bench: the line that has just scored glides past its bench for the touch of
// gloves, one behind the other along the boards; the rest drift to centre ice.
//
//	       x  x     o officials
//	  x         x
//	o>  o>  o>  o>  o>        subject: the first
//	====== bench ======
func (s *scene) bench(at *Puck) {
	l := s.lay
	mid := s.bank.Middle * float64(s.m.End) // in the attack's frame
	dir := s.side()                         // which way the line glides
	y := s.benchSide * (l.HalfWidth - s.uniform(0.7, 1.1))
	lead := mid + dir*s.uniform(-2, s.bank.Half)
	if at != nil {
		lead = at.X
	}
	s.m.Puck = Puck{0, 0, 0} // on the centre spot, for the face-off to come
	s.keep(DefenderGoalie, l.GoalX, poseUpright)
	s.keep(AttackerGoalie, -l.GoalX, poseUpright)
	along := 0.0
	if dir < 0 {
		along = math.Pi
	}
	for i := range Defenders {
		s.put(i, lead-dir*float64(i)*s.uniform(1.2, 1.8), y, 0.05, poseUpright)
		// Faces turn half way to the bench.
		s.face(i, along+dir*s.benchSide*s.uniform(0, 0.9), headingNoise)
	}
	for i := Defenders; i < Defenders+5; i++ {
		s.put(i, s.uniform(-l.BlueX, l.BlueX), -s.benchSide*s.uniform(-4, l.HalfWidth-3), 1, poseUpright)
		s.face(i, s.uniform(-math.Pi, math.Pi), 0)
	}
	s.officials()
	s.m.Subject = 0
}

package play

import "math"

// A spell in the attacking zone happens at one of these places.
const (
	placeCorner   = iota // along the corner's boards, below the goal line or just above
	placeHalfWall        // along the side boards between circle and blue line
	placePoint           // inside the blue line
	placeSlot            // before the goal, outside the scramble
	placeBehind          // behind the net
)

// How often each; own judgement.
var placeShare = [...]float64{placeCorner: .22, placeHalfWall: .20, placePoint: .23, placeSlot: .24, placeBehind: .11}

// How often the puck is shot from each at that instant; own judgement, set so
// that the sampler's shot distances look like open event data.
var placeShot = [...]float64{placeCorner: .05, placeHalfWall: .30, placePoint: .58, placeSlot: .75, placeBehind: 0}

// pinned is how near the boards a puck in the corner keeps its carrier's face to
// them, metres: a stick's reach; own judgement.
const pinned = 1.0

// zonePlay: five attackers round a box of defenders; one checker on the puck.
//
//	| o D            x        o half wall  ______
//	|          x          o slot   x      G |=
//	| o D            x     x            o  ------
//	blue line             corner: o* x
func (s *scene) zonePlay(at *Puck) {
	l := s.lay
	side := s.side()
	place := s.zonePlace()
	if at != nil {
		place, side = s.whatPlace(*at), sign(at.Y)
		s.m.Puck = *at
	} else {
		s.m.Puck = s.onIce(s.zonePuck(place, side))
	}
	p := s.m.Puck
	s.goalies(poseSet)
	toGoal := math.Atan2(-p.Y, l.GoalX-0.5-p.X)
	face, pose := toGoal, poseSkating
	switch place {
	case placeCorner: // back toward the blue line; else along the end boards or, pinned, at the boards
		face, pose = side*math.Pi/2, poseBattle
		if l.Clearance(p.X, p.Y) < pinned {
			face = l.outward(p.X, p.Y)
		}
		face += s.normal(0, 0.6)
		if s.chance(0.5) {
			face = math.Pi + s.normal(0, 0.6)
		}
	case placeBehind:
		face = -side * math.Pi / 2
	}
	cx, cy := behind(p, face)
	s.put(0, cx, cy, 0.05, pose)
	s.face(0, face, headingNoise)
	s.checker(place, pose)
	// The rest take their stations; whoever has the puck leaves his open.
	s.put(1, l.GoalX-s.uniform(1.8, 3.5), s.normal(0, 0.8), 0.3, poseBattle)
	s.put(2, s.uniform(l.SpotX-2, l.SpotX+2), -side*s.uniform(4, 8), 0.7, poseSkating)
	s.put(3, l.BlueX+s.uniform(1, 3), side*s.uniform(3, 7), 0.7, poseSkating)
	s.put(4, l.BlueX+s.uniform(1, 3), -side*s.uniform(3, 7), 0.7, poseSkating)
	s.put(6, l.GoalX-s.uniform(1.2, 2.8), s.normal(0, 1), 0.3, poseBattle)
	s.put(7, l.GoalX-s.uniform(2, 4), -side*s.uniform(1.5, 3), 0.5, poseSkating)
	s.put(8, s.uniform(l.BlueX+4, l.SpotX), side*s.uniform(1.5, 5), 0.7, poseSkating)
	s.put(9, s.uniform(l.BlueX+4, l.SpotX), -side*s.uniform(1.5, 5), 0.7, poseSkating)
	s.watch(1, 5)
	s.watch(6, 10)
	s.officials()
	s.m.Shot = s.chance(placeShot[place])
	s.m.Subject = 0
	if (place == placeCorner || place == placeHalfWall) && s.chance(0.3) {
		s.m.Subject = Defenders // the battle from the checker's side
	}
}

// checker places the first checker within a stick's length on the goal's side.
func (s *scene) checker(place int, pose float64) {
	p := s.m.Puck
	away := s.uniform(1.0, 2.2)
	if place == placeCorner {
		away = s.uniform(0.5, 0.9)
	}
	dx, dy := s.lay.GoalX-1-p.X, -p.Y
	d := math.Max(math.Hypot(dx, dy), 1e-6)
	s.put(Defenders, p.X+away*dx/d, p.Y+away*dy/d, 0.1, pose)
	s.look(Defenders, p.X, p.Y)
}

func (s *scene) zonePlace() int {
	u := s.rng.Float64()
	for i, share := range placeShare {
		if u -= share; u < 0 {
			return i
		}
	}
	return placeSlot
}

func (s *scene) zonePuck(place int, side float64) Puck {
	l := s.lay
	switch place {
	case placeCorner:
		return Puck{s.uniform(l.GoalX-3, l.HalfLength-0.6), side * (l.HalfWidth - s.uniform(0.4, 3)), 0}
	case placeHalfWall:
		return Puck{s.uniform(l.BlueX+4, l.SpotX+3), side * (l.HalfWidth - s.uniform(0.5, 4)), 0}
	case placePoint:
		return Puck{l.BlueX + s.uniform(0.8, 4), side * s.uniform(0, l.HalfWidth-2), 0}
	case placeBehind:
		back := (l.GoalX + l.GoalDepth + l.HalfLength) / 2
		return Puck{back + s.normal(0, 0.3), side * s.uniform(0, 4), 0}
	default:
		return Puck{s.uniform(l.SpotX-5, l.GoalX-3), side * s.uniform(0, 8), 0}
	}
}

// whatPlace names the place of a puck put there by the user's events.
func (s *scene) whatPlace(p Puck) int {
	l := s.lay
	switch {
	case p.X > l.GoalX && math.Abs(p.Y) < 4:
		return placeBehind
	case p.X > l.GoalX-3 && math.Abs(p.Y) > l.HalfWidth-4:
		return placeCorner
	case p.X < l.BlueX+4:
		return placePoint
	case math.Abs(p.Y) > l.HalfWidth-4.5:
		return placeHalfWall
	}
	return placeSlot
}

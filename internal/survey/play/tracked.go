package play

import (
	"context"
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/survey/rink"
)

// Filled counts what tracked moments did not say and the sampler's rules filled.
type Filled struct {
	Moments, People, Pucks, Phases, Weights, Subjects, Headings, Heights, Ends int
}

// String says what was filled: "12 bodies, 3 subjects"; "" for nothing.
func (f Filled) String() string {
	var out []string
	for _, c := range []struct {
		n    int
		what string
	}{
		{f.People, "unseen persons"}, {f.Pucks, "pucks"}, {f.Phases, "phases"}, {f.Weights, "news weights"}, {f.Ends, "ends attacked"},
		{f.Subjects, "subjects"}, {f.Headings, "faces' directions"}, {f.Heights, "heights"},
	} {
		if c.n > 0 {
			out = append(out, fmt.Sprintf("%d %s", c.n, c.what))
		}
	}
	return strings.Join(out, ", ")
}

// Tracked builds a set of the tracked moments, one for one. What a moment does
// not say is filled: an unseen person as the sampler places the role, with the
// seeds of [Sample]; an unseen puck 0.9 m before the subject; a face toward the
// puck; phase, weight and attacked end as for events ([Around]); the subject is
// the attacking skater nearest to the puck. All is counted.
func Tracked(ctx context.Context, r rink.Rink, tracks []Track, a Assumptions, seed uint64) (*Set, Filled, error) {
	fills := make([]Filled, len(tracks))
	set, err := build(ctx, LayoutOf(r), a, seed, len(tracks), func(s *scene, i int) { fills[i] = s.tracked(tracks[i]) })
	sum := Filled{Moments: len(tracks)}
	for _, f := range fills {
		sum.People, sum.Pucks, sum.Phases, sum.Weights = sum.People+f.People, sum.Pucks+f.Pucks, sum.Phases+f.Phases, sum.Weights+f.Weights
		sum.Subjects, sum.Headings, sum.Heights, sum.Ends = sum.Subjects+f.Subjects, sum.Headings+f.Headings, sum.Heights+f.Heights, sum.Ends+f.Ends
	}
	return set, sum, err
}

// tracked makes the moment of a track.
func (s *scene) tracked(t Track) (f Filled) {
	puck := t.Puck
	if !t.Seen {
		f.Pucks++
		puck = t.unseenPuck()
	}
	team, end := s.attack(t, puck)
	if t.End == 0 {
		f.Ends++
	}
	phase, at := t.Phase, Puck{puck.X * float64(end), puck.Y * float64(end), puck.Z}
	if !t.Phased {
		f.Phases++
		phase = s.phaseAt(at)
	}
	period := t.Period
	if period == 0 {
		period = s.ass.Game.Ends.periodOf(team, end)
	}
	s.begin(phase, period, team, end)
	if t.Weight > 0 {
		s.m.Weight = t.Weight
	} else {
		f.Weights++
	}
	at = s.onIce(at)
	s.play(&at)
	if t.Shot != 0 {
		s.m.Shot = t.Shot > 0
	}
	s.m.Puck = puck
	s.seat(t, team, &f)
	return f
}

// unseenPuck is a guess at a puck that was not seen: on the stick of the
// subject, or of the first body, else at centre ice.
func (t Track) unseenPuck() Puck {
	at := Puck{}
	for i, b := range t.Bodies {
		if i == 0 || b.Subject {
			at = Puck{X: b.X, Y: b.Y}
			if !math.IsNaN(b.Heading) {
				sin, cos := math.Sincos(b.Heading)
				at.X, at.Y = b.X+stickReach*cos, b.Y+stickReach*sin
			}
		}
	}
	return at
}

// attack tells who attacks which end: as the file says; else past a blue line
// the nearer goal is attacked, by those whose goalkeeper does not guard it;
// else the team whose skater is nearest to the puck attacks the goal that its
// own goalkeeper does not guard; else the puck's half tells.
func (s *scene) attack(t Track, puck Puck) (team, end int) {
	team, nearest := -1, math.Inf(1)
	guards := [2]int{} // the end that each team's goalkeeper stands at
	for _, b := range t.Bodies {
		switch d := math.Hypot(b.X-puck.X, b.Y-puck.Y); {
		case b.Role == Goalkeeper:
			guards[b.Team] = int(sign(b.X))
		case b.Role == Skater && d < nearest:
			team, nearest = b.Team, d
		}
	}
	end = t.End
	if end == 0 && math.Abs(puck.X) > s.lay.BlueX {
		end = int(sign(puck.X))
	}
	if end != 0 && t.Period > 0 {
		team = s.ass.Game.Ends.attacker(end, t.Period)
	}
	for k, g := range guards {
		switch {
		case g == 0:
		case end != 0 && t.Period == 0 && g == end: // who does not guard the end attacks it
			team = 1 - k
		case end != 0 && t.Period == 0:
			team = k
		case end == 0 && team == k:
			end = -g
		case end == 0 && team >= 0:
			end = g
		}
	}
	if end == 0 {
		end = int(sign(puck.X))
	}
	return max(team, 0), end
}

// seat gives the tracked bodies their places in the moment's row, then finds
// room for those who were not seen near where the sampler had them.
func (s *scene) seat(t Track, team int, f *Filled) {
	drawn := s.m.People
	s.in, s.onside = [People]bool{}, false
	subject := -1
	for _, b := range t.Bodies {
		i := s.place(b, team)
		s.in[i] = true
		p := &s.m.People[i]
		p.X, p.Y = b.X, b.Y
		if p.Heading = b.Heading; math.IsNaN(b.Heading) {
			f.Headings++
			s.look(i, s.m.Puck.X, s.m.Puck.Y)
		}
		if p.Height = b.Height; math.IsNaN(b.Height) {
			f.Heights++
			p.Height = drawn[i].Height
		}
		if b.Subject {
			subject = i
		}
	}
	for i := range People {
		if !s.in[i] {
			f.People++
			s.put(i, drawn[i].X, drawn[i].Y, 0, 1)
			s.m.People[i].Height, s.m.People[i].Heading = drawn[i].Height, drawn[i].Heading
		}
	}
	if subject < 0 {
		f.Subjects++
		subject = s.nearestAttacker()
	}
	s.m.Subject = subject
}

// nearestAttacker is the attacking skater nearest to the puck.
func (s *scene) nearestAttacker() int {
	best, least := Attackers, math.Inf(1)
	for i := Attackers; i < Defenders; i++ {
		p := s.m.People[i]
		if d := math.Hypot(p.X-s.m.Puck.X, p.Y-s.m.Puck.Y); d < least {
			best, least = i, d
		}
	}
	return best
}

// place returns the first free place of a body's role.
func (s *scene) place(b Body, team int) int {
	from := 0
	switch {
	case b.Role == Skater && b.Team == team:
		from = Attackers
	case b.Role == Skater:
		from = Defenders
	case b.Role == Goalkeeper && b.Team == team:
		from = AttackerGoalie
	case b.Role == Goalkeeper:
		from = DefenderGoalie
	default:
		places := refereePlaces
		if b.Role == Linesman {
			places = linesmanPlaces
		}
		for _, i := range places {
			if from = Officials + i; !s.in[from] {
				break
			}
		}
		return from
	}
	for s.in[from] {
		from++
	}
	return from
}

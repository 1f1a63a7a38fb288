package play

import (
	"context"
	"math"
	"strings"

	"example.org/rinkpane/internal/survey/rink"
)

// phaseNamed reads a phase's name, or what happened: a "shot" is a moment of
// the phase that its place implies, a "goal" a celebration.
func phaseNamed(s string) (Phase, bool) {
	s = strings.ToLower(strings.NewReplacer(" ", "-", "_", "-").Replace(s))
	for _, p := range Phases() {
		if s == p.String() {
			return p, true
		}
	}
	switch s {
	case "goal":
		return Celebration, true
	case "faceoff":
		return FaceOff, true
	case "shot":
		return shotPhase, true
	}
	return 0, false
}

// shotPhase marks an event known only to be a shot.
const shotPhase = phases

func phaseNames() string {
	var names []string
	for _, p := range Phases() {
		names = append(names, p.String())
	}
	return strings.Join(names, ", ")
}

// Around builds n moments round the events' puck places: players are placed
// about each puck as its phase has them, with the same seeds as [Sample]. With
// fewer events than moments each event is used again with other players; with
// more, they are taken at even intervals. An event's weight multiplies its phase's.
//
// An event without a team belongs to the team that attacks the nearer end; one
// without a period takes its turn; a shot, a goal, a scramble or zone play past
// a blue line goes at the nearer goal, whatever the period; one without a phase follows from its place:
// a scramble within 4.5 m of the goal, zone play behind the blue line, else a
// rush.
func Around(ctx context.Context, r rink.Rink, events []Event, a Assumptions, seed uint64, n int) (*Set, error) {
	if len(events) == 0 {
		return nil, errNoEvents
	}
	return build(ctx, LayoutOf(r), a, seed, n, func(s *scene, i int) {
		k := i % len(events)
		if len(events) > n {
			k = int(int64(i) * int64(len(events)) / int64(n))
		}
		s.around(events[k])
	})
}

// nearGoal is how near the goal a puck makes a scramble, metres.
const nearGoal = 4.5

func (s *scene) around(ev Event) {
	period, team := ev.Period, ev.Team
	if period == 0 {
		period = 1 + s.rng.IntN(3)
	}
	if team < 0 {
		team = s.ass.Game.Ends.attacker(int(sign(ev.X)), period)
	}
	toward := s.attacked(ev, team, period)
	end := float64(toward)
	at := Puck{ev.X * end, ev.Y * end, 0}
	phase := ev.Phase
	if !ev.Known || phase == shotPhase {
		phase = s.phaseAt(at)
	}
	s.begin(phase, period, team, toward)
	s.m.Weight *= ev.Weight
	at = s.onIce(at)
	s.play(&at)
	s.absent()
	if ev.Known {
		s.m.Shot = ev.Phase == shotPhase
	}
}

// attacked returns the end that an event's team attacks. A shot, a goal, a
// scramble or zone play past a blue line tells it by its place, which also holds
// in a rink where the home team begins toward end A; otherwise the period tells it.
func (s *scene) attacked(ev Event, team, period int) int {
	if ev.Known && math.Abs(ev.X) > s.lay.BlueX {
		switch ev.Phase {
		case shotPhase, Celebration, NetFront, ZonePlay:
			return int(sign(ev.X))
		}
	}
	return s.ass.Game.Ends.Attacks(team, period)
}

// phaseAt tells the phase from where the puck is, in the attack's frame.
func (s *scene) phaseAt(p Puck) Phase {
	switch {
	case p.X < s.lay.GoalX && math.Hypot(s.lay.GoalX-p.X, p.Y) < nearGoal:
		return NetFront
	case p.X > s.lay.BlueX+2:
		return ZonePlay
	}
	return Rush
}

package game

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/survey/play"
)

// View is what a hole shows of the moments that somebody waits for.
type View struct {
	Value float64 // mean score by news weight, in [0, 1], without unit
	// Seen is the share of the news that the hole sees at all, from 0 to 1.
	Seen float64
	// Goals is the share of the goals, as the celebrations after them, that face the hole,
	// from 0 to 1; NaN for a goalkeeper, whose goals nobody waits for.
	Goals float64
	// Phases is the mean score by phase, in [0, 1]; NaN for a phase that is not waited for.
	Phases [phases]float64
}

// view adds up what a hole shows of some kinds of moments.
func (s *shown) view(of []kind) View {
	var all cell
	var phases [phases]cell
	for _, k := range of {
		for p, c := range s[k.index()] {
			all, phases[p] = all.plus(c), phases[p].plus(c)
		}
	}
	v := View{Value: share(all.score, all.weight), Seen: share(all.seen, all.weight)}
	for p, c := range phases {
		v.Phases[p] = share(c.score, c.weight)
	}
	goals := phases[play.Celebration]
	v.Goals = share(goals.seen, goals.weight)
	return v
}

func (c cell) plus(d cell) cell {
	return cell{c.weight + d.weight, c.score + d.score, c.seen + d.seen}
}

// share is part over all, NaN of nothing.
func share(part, all float64) float64 {
	if all == 0 {
		return math.NaN()
	}
	return part / all
}

// Worth is what a hole is worth to a request in a period of a game.
type Worth struct {
	View
	Follows Follow
	// Barred says why the hole cannot be given to them; zero: it can.
	Barred say.Sentence
}

// Worth returns what a hole is worth to somebody's request in a period of a game. The
// hole and the person's lenses are among those that the table was made for.
func (s Season) Worth(t *Table, g Game, a Ask, period int, hole string) Worth {
	w := Worth{View: t.bags[bagKey(a.Lenses)][t.holes[hole]].view(a.Request.Follows.kinds(g, period)), Follows: a.Request.Follows}
	w.Barred = s.barred(g, a, period, hole)
	if w.Barred.IsZero() && w.Value == 0 {
		w.Barred = say.Make("none of the lenses %s sees anything of what is followed through %s", say.Names(a.Lenses), hole)
	}
	return w
}

// barred says why somebody cannot have a hole, whatever it shows.
func (s Season) barred(g Game, a Ask, period int, hole string) say.Sentence {
	h, _ := s.Arena.Hole(hole)
	works := a.Works.At(s.Arena)
	why := s.WhyClosed(g, hole)
	switch {
	case !a.Wants(period):
		return say.Make("%s does not ask for period %d", a.Name, period)
	case why != "":
		return say.Make("%s is closed: %s", hole, why)
	case slices.Contains(a.Cannot, hole):
		return say.Make("%s cannot use %s", a.Name, hole)
	case a.Camera == Remote:
	case a.Works.Asked() && !works.Works(h.Height):
		return say.Make("%s works from %v to %v above the ice; %s is at %v", a.Name, works.Low, works.High, hole, h.Height)
	case a.Works.Crowds(s.Arena, h.Station):
		return say.Make("at %s the elbows of %s are in a neighbour's seat", hole, a.Name)
	}
	return say.Sentence{}
}

// Why says in words what speaks for a hole.
func (w Worth) Why() say.Sentence {
	percent := func(x float64) int { return int(math.Round(100 * x)) }
	switch {
	case !w.Barred.IsZero():
		return w.Barred
	case w.Follows == HomeGoalkeeper || w.Follows == AwayGoalkeeper:
		return say.Make("the goalkeeper you follow: %d %% of the play before the goal is seen from this hole", percent(w.Seen))
	case w.Follows == Home || w.Follows == Away:
		return say.Make("the goals of the team you follow: %d %% of them face this hole", percent(w.Goals))
	}
	return say.Make("the goals you follow: %d %% of them face this hole", percent(w.Goals))
}

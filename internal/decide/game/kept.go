package game

import (
	"cmp"
	"slices"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/seat"
)

// keeper works out which holes are kept for cameras at one game.
type keeper struct {
	season Season
	game   Game
	asks   []Ask
	night  *seat.Night // with its worth and the seats given by hand
}

// keep fills in the holes that are kept at a game at which such a camera asks: those that
// reservations name, and as many more as the rule sets ask for.
func (k keeper) keep() {
	for _, r := range k.season.Reservations {
		who := k.with(r.For, 0)
		if len(who) == 0 || !r.Games.Has(k.game) {
			continue
		}
		for _, hole := range r.Holes {
			for period := 1; period <= k.game.Periods; period++ {
				if covers(r.Periods, period) {
					k.put(seat.Kept{Hole: hole, Period: period, For: who, Rule: r.Rule})
				}
			}
		}
	}
	for _, rule := range k.season.Keeps {
		for period := 1; period <= k.game.Periods; period++ {
			if who := k.with(Camera(rule.For), period); len(who) > 0 && k.game.named(rule.Games) && covers(rule.Periods, period) {
				k.rule(rule, who, period)
			}
		}
	}
}

func (k keeper) put(kept seat.Kept) { k.night.Kept = append(k.night.Kept, kept) }

// with lists who asks for a period with a kind of camera, for the game where it is 0.
func (k keeper) with(camera Camera, period int) (who []string) {
	for _, a := range k.asks {
		if a.Camera == camera && (period == 0 || a.Wants(period)) {
			who = append(who, a.ID)
		}
	}
	return who
}

// rule keeps what a rule asks for in a period: of each group the holes that are worth most
// to those cameras together. One that is kept for them already, or was given to one of
// them by hand, counts; one that a hand gave to somebody else is not to be had.
func (k keeper) rule(rule rules.Keep, who []string, period int) {
	for _, group := range rule.Groups {
		var free []string
		worth := map[string]float64{}
		lacks, any := rule.Holes, false
		for _, hole := range group.Holes {
			if !slices.Contains(k.season.Holes, hole) || !k.attacked(rule.Attacked, hole, period) {
				continue
			}
			any = true
			holder, kept := k.holder(hole, period), k.keptFor(hole, period)
			switch {
			case slices.Contains(kept, who[0]): // kept for this kind of camera, maybe for more periods
				lacks--
			case kept != nil, holder != "" && !slices.Contains(who, holder):
			default:
				if worth[hole] = k.worth(hole, period, who); worth[hole] > 0 {
					free = append(free, hole)
				}
				if holder != "" {
					worth[hole] += float64(len(who)) // ahead of all that are free
				}
			}
		}
		slices.SortStableFunc(free, func(a, b string) int { return cmp.Compare(worth[b], worth[a]) })
		for _, hole := range free[:max(0, min(lacks, len(free)))] {
			k.put(seat.Kept{Hole: hole, Period: period, For: who, Rule: rule.Rule})
		}
		if lacks -= len(free); any && lacks > 0 {
			k.night.Unkept = append(k.night.Unkept, seat.Unkept{Period: period, Where: group.Name, Lacks: lacks, For: who, Rule: rule.Rule})
		}
	}
}

// attacked reports whether a hole stands at the end that a team attacks in a period; ""
// stands for whichever team.
func (k keeper) attacked(by, hole string, period int) bool {
	return by == "" || k.game.Ends.Attacks(map[string]int{"home": 0, "away": 1}[by], period) == k.season.EndOf(hole)
}

// keptFor lists for whom a hole is kept already, nil for nobody.
func (k keeper) keptFor(hole string, period int) []string {
	i := slices.IndexFunc(k.night.Kept, func(kept seat.Kept) bool { return kept.Hole == hole && kept.Period == period })
	if i < 0 {
		return nil
	}
	return k.night.Kept[i].For
}

// holder is who a hand gave a hole to, "" for nobody.
func (k keeper) holder(hole string, period int) string {
	i := slices.IndexFunc(k.night.Fixed, func(s seat.Seat) bool { return s.Hole == hole && s.Period == period })
	if i < 0 {
		return ""
	}
	return k.night.Fixed[i].Who
}

// worth adds up what a hole is worth to some of those who ask; 0 where none can work it.
func (k keeper) worth(hole string, period int, who []string) (sum float64) {
	at := slices.Index(k.night.Holes, hole)
	for i, a := range k.night.Asks {
		if slices.Contains(who, a.Who) {
			sum += max(0, k.night.Worth[period-1][i][at])
		}
	}
	return sum
}

package words

import (
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/measure/say"
)

// periodsOf tells things of a night by their periods, each thing once: of equal words
// the periods in which they are said.
type periodsOf struct {
	said    []string
	periods map[string][]int
}

func (p *periodsOf) add(words string, period int) {
	if p.periods == nil {
		p.periods = map[string][]int{}
	}
	if !slices.Contains(p.said, words) {
		p.said = append(p.said, words)
	}
	p.periods[words] = append(p.periods[words], period)
}

// in says in which periods words are said.
func (p *periodsOf) in(words string) string { return inPeriods(p.periods[words]) }

// inPeriods says "in period 1", "in periods 1 and 2".
func inPeriods(of []int) string {
	names := make([]string, len(of))
	for i, p := range of {
		names[i] = fmt.Sprint(p)
	}
	if len(of) > 1 {
		return "in periods " + say.Names(names)
	}
	return "in period " + names[0]
}

// Keep says what a rule keeps for cameras.
func Keep(k rules.Keep) string {
	groups := make([]string, len(k.Groups))
	for i, g := range k.Groups {
		groups[i] = g.Name
	}
	of := "each of " + say.Names(groups)
	switch len(groups) {
	case 0:
		of = "no place that has a hole"
	case 1:
		of = groups[0]
	}
	out := say.Count(k.Holes, "hole") + " of " + of + " for " + k.For
	if k.Attacked != "" {
		out += ", at the end that the " + k.Attacked + " team attacks"
	}
	if len(k.Periods) > 0 {
		out += ", " + inPeriods(k.Periods)
	}
	games := "every game"
	if len(k.Games) > 0 {
		games = "games that are " + strings.Join(k.Games, " or ")
	}
	return out + ", at " + games + "; " + k.Rule + "."
}

// KeptHoles says which holes of a night are kept for whom, by what rule, and what a rule
// would keep and cannot.
func KeptHoles(n seat.Seating) (out []string) {
	type owner struct{ who, rule string }
	var owners []owner
	kept := map[owner]*periodsOf{}
	for _, k := range n.Kept {
		o := owner{say.Names(k.For), k.Rule}
		if kept[o] == nil {
			owners, kept[o] = append(owners, o), &periodsOf{}
		}
		kept[o].add(k.Hole, k.Period)
	}
	for _, o := range owners {
		var when []string
		holes := map[string][]string{}
		for _, hole := range kept[o].said {
			in := kept[o].in(hole)
			if holes[in] = append(holes[in], hole); len(holes[in]) == 1 {
				when = append(when, in)
			}
		}
		for i, in := range when {
			when[i] = say.Names(holes[in]) + " " + in
		}
		out = append(out, fmt.Sprintf("Kept for %s: %s; %s.", o.who, strings.Join(when, ", "), o.rule))
	}
	var lacks periodsOf
	for _, u := range n.Unkept {
		lacks.add(fmt.Sprintf("%s for %s in %s; %s", say.Count(u.Lacks, "hole"), say.Names(u.For), u.Where, u.Rule), u.Period)
	}
	for _, u := range lacks.said {
		out = append(out, fmt.Sprintf("Not kept %s: %s: hands gave the others, they are closed, or nobody with such a camera can work them.", lacks.in(u), u))
	}
	return out
}

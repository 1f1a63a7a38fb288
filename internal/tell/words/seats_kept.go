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
	periods map[string][]string
}

func (p *periodsOf) add(words string, period int) {
	if p.periods == nil {
		p.periods = map[string][]string{}
	}
	if !slices.Contains(p.said, words) {
		p.said = append(p.said, words)
	}
	p.periods[words] = append(p.periods[words], fmt.Sprint(period))
}

// in says "in period 1", "in periods 1 and 2".
func (p *periodsOf) in(words string) string {
	if of := p.periods[words]; len(of) > 1 {
		return "in periods " + say.Names(of)
	}
	return "in period " + p.periods[words][0]
}

// Keep says what a rule keeps for cameras.
func Keep(k rules.Keep) string {
	out := say.Count(k.Holes, "hole") + " of each of "
	var groups []string
	for _, g := range k.Groups {
		groups = append(groups, g.Name)
	}
	if len(groups) < 2 {
		out = say.Count(k.Holes, "hole") + " of "
	}
	if out += say.Names(groups); len(groups) == 0 {
		out += "no place that has a hole"
	}
	out += " for " + k.For
	if k.Attacked != "" {
		out += ", at the end that the " + k.Attacked + " team attacks"
	}
	if len(k.Periods) > 0 {
		var periods periodsOf
		for _, p := range k.Periods {
			periods.add("", p)
		}
		out += ", " + periods.in("")
	}
	if out += ", at every game"; len(k.Games) > 0 {
		out = strings.TrimSuffix(out, "every game") + "games that are " + strings.Join(k.Games, " or ")
	}
	return out + "; " + k.Rule + "."
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

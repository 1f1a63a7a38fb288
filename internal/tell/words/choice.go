package words

import (
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// Choice tells an answer of choose: how the search ended, what is best and why,
// what is there today, the next best sets, the prices of the rules, and the
// panes left out.
func Choice(a choose.Answer, sys unit.System) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s, %d moments (seed %d)\n%s\n", a.Arena.Name, say.Count(a.Candidates, "candidate place"), a.Moments, a.Seed, ChoiceOutcome(a))
	if len(a.Clash) > 0 {
		b.WriteString("These clash; give up one of them:\n")
		for _, k := range a.Clash {
			b.WriteString("  " + table.Wrap("- "+k.In(sys), "    "))
		}
	}
	if len(a.Holes) > 0 && a.Margin > 0 {
		b.WriteString(table.Wrap(ChoiceSamples(a), ""))
	}
	if len(a.Holes) > 0 {
		for _, line := range ChoiceWorking(a, sys) {
			b.WriteString(table.Wrap(line, ""))
		}
		b.WriteString("A value of 1 sees every moment perfectly once.")
		if a.Took > 0 {
			fmt.Fprintf(&b, " Took %.1f s.", a.Took.Seconds())
		}
		b.WriteString("\n")
	}
	b.WriteString("\n")
	for i, t := range ChoiceTables(a, sys) {
		if i > 0 {
			b.WriteString("\n")
		}
		b.WriteString(t.Text())
		for _, line := range after(a, t.Title, sys) {
			b.WriteString(table.Wrap(line, "  "))
		}
	}
	return b.String()
}

// after returns what is said under a table.
func after(a choose.Answer, title string, sys unit.System) (lines []string) {
	switch title {
	case ladderTitle:
		return afterLadder(a)
	case chosenTitle:
		lines = []string{"worth: value lost without it; loss: when its pane stays whole and the rest is chosen anew", ""}
		for _, h := range a.Holes {
			lines = append(lines, h.Words(sys)+": "+h.Why.In(sys)+anywhere(h, sys))
		}
		return append(append(lines, ""), ChoiceStandings(a)...)
	case nextTitle:
		return alike(a)
	case pricesTitle:
		return []string{"A pane that only the rule left out bars is tried at its middle; another place on it may be better."}
	}
	return nil
}

// alike says between what other moments leave each next best set's loss, and names
// those whose loss is within what the moments can tell.
func alike(a choose.Answer) []string {
	var numbers, between []string
	for k, o := range a.Alternatives {
		between = append(between, fmt.Sprintf("%.4f to %.4f", o.Lost-o.Margin, o.Lost+o.Margin))
		if o.Lost <= o.Margin {
			numbers = append(numbers, fmt.Sprint(k+1))
		}
	}
	lines := []string{"Lost over all that the sampler may draw, both sets judged by the same moments (95 %): " + strings.Join(between, "; ") + "."}
	if len(numbers) == 0 {
		return lines
	}
	return append(lines, "As good as the best, as far as these moments can tell: "+strings.Join(numbers, ", ")+".")
}

// anywhere says from where to where a hole may stand as well, as far as the moments
// can tell; nothing where no other place is as good.
func anywhere(h choose.Choice, sys unit.System) string {
	if n := len(h.AsGood); n > 1 {
		return fmt.Sprintf(" Anywhere from %s to %s is as good, as far as the moments can tell.", h.AsGood[0].Words(sys), h.AsGood[n-1].Words(sys))
	}
	return ""
}

// ChoiceSamples says how far the proof reaches: for these moments, and how far others
// move it.
func ChoiceSamples(a choose.Answer) string {
	what := "proof"
	if a.Status != solve.Optimal {
		what = "bound"
	}
	words := fmt.Sprintf("The %s is for these %d moments; over all that the sampler may draw the value is within %.4f of that (95 %%).", what, a.Moments, a.Margin)
	if o := a.Others; o.Number > 0 {
		words += fmt.Sprintf(" In %d other samples the set is worth %.4f to %.4f, and no other set beats it by more than %.4f.", o.Number, o.Low, o.High, o.Regret)
	}
	return words
}

// ChoicePeople says how many holes are worked at once, and that all values count so.
func ChoicePeople(a choose.Answer) string {
	return fmt.Sprintf("%s at once, one lens a person: values are those of the best %d in each phase of play.", say.Count(a.People, "hole"), a.People)
}

// ChoiceOutcome says in a sentence or two how the search ended.
func ChoiceOutcome(a choose.Answer) string {
	holes := say.Count(len(a.Holes), "hole")
	switch {
	case len(a.Holes) == 0 && a.Status == solve.Stopped:
		return "Stopped before a set of holes was found."
	case len(a.Holes) == 0 && a.Candidates == 0:
		return "No pane may hold a hole."
	case len(a.Holes) == 0 && a.Status == solve.Optimal:
		return "The best set is empty: what is forbidden leaves no place that sees anything."
	case len(a.Holes) == 0:
		return "No set of holes keeps the rules and wishes."
	}
	words := fmt.Sprintf("Best set: %s, value %.4f; proved: no legal set is worth more than %.4f.", holes, a.Value, a.Bound)
	if a.Status != solve.Optimal {
		words = fmt.Sprintf("Best set so far: %s, value %.4f; none is worth more than %.4f (gap %.2f %%).", holes, a.Value, a.Bound, 100*a.Gap())
	}
	if a.People > 0 {
		words += "\n" + ChoicePeople(a)
	}
	if len(a.Unfinished) > 0 {
		words += fmt.Sprintf("\nStopped before these were complete: %s.", strings.Join(a.Unfinished, ", "))
	}
	return words
}

// ChoiceStandings compares the best with what is there, a line each.
func ChoiceStandings(a choose.Answer) (lines []string) {
	line := func(what string, s choose.Standing) {
		if len(s.Holes) > 0 && a.Value > 0 {
			holes := say.Count(len(s.Holes), "hole")
			if s.Of > len(s.Holes) {
				holes = fmt.Sprintf("the best %d of %d holes", len(s.Holes), s.Of)
			}
			lines = append(lines, fmt.Sprintf("%s: %s, value %.4f, %.0f %% of the best (rules: %s)", what, holes, s.Value, 100*s.Value/a.Value, s.Verdict))
		}
	}
	line("Cut today", a.Today)
	if a.Drawn.Of != a.Today.Of {
		line("Cut and planned", a.Drawn)
	}
	return lines
}

// The tables' titles.
const (
	ladderTitle   = "From what is cut today to the best"
	frontierTitle = "What each amount of money buys"
	chosenTitle   = "The best set"
	nextTitle     = "Next best sets"
	pricesTitle   = "What each rule costs"
	excludedTitle = "Panes without a place"
)

// ChoiceTables returns the answer's tables, those without rows left out.
func ChoiceTables(a choose.Answer, sys unit.System) []table.Table {
	best := names(a.Set(0), sys)
	var next []option
	for k, alt := range a.Alternatives {
		set := names(alt.Holes, sys)
		next = append(next, option{k + 1, alt, minus(best, set), minus(set, best)})
	}
	return slices.DeleteFunc([]table.Table{
		ChoiceLadder(a, sys), ChosenHoles.Of(chosenTitle, a.Holes, sys), ChoiceCrews(a.Crews, sys), append(bought(a), bar).Of(frontierTitle, rungsOf(a, a.Frontier), sys), options.Of(nextTitle, next, sys), ChoicePrices.Of(pricesTitle, a.Prices, sys), causes.Of(excludedTitle, a.Excluded, sys),
	}, func(t table.Table) bool { return len(t.Rows) == 0 })
}

// option is a next best set as its row tells it.
type option struct {
	number int
	choose.Option
	without, instead []string
}

func names(set []choose.Candidate, sys unit.System) []string {
	out := make([]string, len(set))
	for i, c := range set {
		out[i] = c.Say(sys)
	}
	return out
}

func minus(a, b []string) []string {
	return slices.DeleteFunc(slices.Clone(a), func(s string) bool { return slices.Contains(b, s) })
}

// shorten joins names as far as a column of so many letters is wide and counts
// the rest.
func shorten(names []string, width int) string {
	for k := len(names); k > 0; k-- {
		s := strings.Join(names[:k], ", ")
		if k < len(names) {
			s += fmt.Sprintf(", +%d", len(names)-k)
		}
		if len(s) <= width || k == 1 {
			return s
		}
	}
	return "-"
}

package words

import (
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// rung is a step as its row tells it, beside the best set of all.
type rung struct {
	choose.Step
	costs cost.Costs
	share float64 // of the best
	gain  float64 // of what today's holes lack of the dearest step
}

// What says what a step does: "keep all, cut 2", "give up 1, cut 4".
func (r rung) What() string {
	cut, gone := len(r.Cut()), len(r.GivenUp)
	switch {
	case cut == 0 && gone == 0:
		return "cut today"
	case gone == 0:
		return fmt.Sprintf("keep all, cut %d", cut)
	}
	return fmt.Sprintf("give up %d, cut %d", gone, cut)
}

func rungShare(head, name string, of func(rung) float64) table.Field[rung] {
	return table.Field[rung]{Column: table.Column{Head: head, Name: name, Right: true}, Cell: func(r rung, _ unit.System) table.Cell {
		if of(r) == 0 {
			return table.None()
		}
		return table.Number(fmt.Sprintf("%.1f %%", roundedDown(1000*of(r))/10), of(r))
	}}
}

// rungs are the columns of steps; money's head names the currency.
func rungs(costs cost.Costs) table.Fields[rung] {
	return table.Fields[rung]{
		text("step", "step", func(r rung, _ unit.System) string { return r.What() }),
		number("holes", "holes", "%.0f", func(r rung) float64 { return float64(len(r.Holes)) }),
		valued(func(r rung) (value, bound float64) { return r.Value, r.Bound }),
		rungShare("of the best", "share", func(r rung) float64 { return r.share }),
		rungShare("of as many", "share_of_as_many", func(r rung) float64 {
			if r.Alike == 0 {
				return 0
			}
			return min(1, r.Value/r.Alike)
		}),
		list("given up", "given_up", 14, func(r rung) []string { return ids(r.GivenUp) }),
		number("panes", "panes_to_buy", "%.0f", func(r rung) float64 { return float64(r.Bill.Panes) }),
		number(costs.Currency, "cost_"+strings.ToLower(costs.Currency), "%.0f", func(r rung) float64 { return float64(r.Bill.Money) }),
		number("days", "days_closed", "%.1f", func(r rung) float64 { return r.costs.Days(r.Bill) }),
	}
}

// roundedDown rounds down, but for what is rounding itself: less than all is not told
// as all.
func roundedDown(x float64) float64 { return math.Floor(x + 1e-6) }

// barWidth is how long a full bar is, in letters.
const barWidth = 38

var bar = table.Field[rung]{Column: table.Column{Head: "of what money can add"}, Cell: func(r rung, _ unit.System) table.Cell {
	return table.Words(strings.TrimSpace(strings.Repeat("#", int(r.gain*barWidth+0.5)) + fmt.Sprintf(" %.0f %%", roundedDown(100*r.gain))))
}}

func ids(holes []choose.Candidate) []string {
	out := make([]string, len(holes))
	for i, c := range holes {
		out[i] = c.Hole.ID
	}
	return out
}

func rungsOf(a choose.Answer, steps []choose.Step) []rung {
	out := make([]rung, len(steps))
	best := a.Value
	for i, s := range steps {
		out[i] = rung{Step: s, costs: a.Costs, share: s.Value / best}
		if first, last := steps[0].Value, steps[len(steps)-1].Value; last > first {
			out[i].gain = (s.Value - first) / (last - first)
		}
	}
	return out
}

// ChoiceLadder returns the table of the steps, from what is cut today to the best.
func ChoiceLadder(a choose.Answer, sys unit.System) table.Table {
	return rungs(a.Costs).Of(ladderTitle, rungsOf(a, a.Ladder), sys)
}

// ChoiceFrontier returns the table of what each amount of money buys, without the
// bars that text draws.
func ChoiceFrontier(a choose.Answer, sys unit.System) table.Table {
	return bought(a).Of(frontierTitle, rungsOf(a, a.Frontier), sys)
}

func bought(a choose.Answer) table.Fields[rung] {
	columns := rungs(a.Costs)
	return append(columns.Pick("cost_"+strings.ToLower(a.Costs.Currency)), columns.Pick("step", "value", "panes_to_buy", "days_closed")...)
}

// ChoiceStep names a step: "keep all, cut 2".
func ChoiceStep(s choose.Step) string { return rung{Step: s}.What() }

// afterLadder says what the steps leave unsaid, and that the costs are nobody's quote.
func afterLadder(a choose.Answer) (lines []string) {
	if sum := LadderSum(a); sum != "" {
		lines = append(lines, sum)
	}
	lines = append(lines, LadderKey)
	if note := CostsNote(a.Costs, "name your own with --costs FILE"); note != "" {
		lines = append(lines, note)
	}
	return lines
}

// LadderKey explains the columns of the steps.
const LadderKey = "of as many: beside the best set of as many holes, cut anew; panes: to buy, one for each hole given up and each that is ordered made; days: with the ice closed."

// LadderSum says in a sentence what keeping all brings, and what is paid for the
// rest of the best; "" where no step keeps all.
func LadderSum(a choose.Answer) string {
	keep, ok := a.Keeping()
	if !ok || a.Value <= 0 {
		return ""
	}
	all, share := a.Ladder[len(a.Ladder)-1], roundedDown(1000*keep.Value/a.Value)/10
	line := fmt.Sprintf("Keeping all %d and cutting %d more brings %.1f %% of the best", len(keep.Kept()), len(keep.Cut()), share)
	more := all.Bill.Money - keep.Bill.Money
	if more <= 0 {
		return line + "."
	}
	return line + fmt.Sprintf(" for %d %s; the last %.1f %% cost %d %s more and give up %s.", keep.Bill.Money, a.Costs.Currency,
		100-share, more, a.Costs.Currency, say.Count(len(all.GivenUp), "hole"))
}

// CostsNote says where the costs come from, if that is not the user's own alone, and
// how to give one's own.
func CostsNote(c cost.Costs, cure string) string {
	switch {
	case c.Invented:
		return "The costs are invented; " + cure + "."
	case len(c.Silent) > 0:
		return "The costs file leaves out, and so counts as nothing: " + strings.Join(c.Silent, ", ") + "."
	}
	return ""
}

// ChoiceShort says what the least gain costs, when the budget buys none.
func ChoiceShort(a choose.Answer, budget cost.Money) string {
	least, ok := a.Cheapest.Get()
	if !ok {
		return fmt.Sprintf("%d %s buys nothing, and no other sum buys a better set", budget, a.Costs.Currency)
	}
	return fmt.Sprintf("%d %s buys nothing; the cheapest step (%s) costs %d %s", budget, a.Costs.Currency, rung{Step: least}.What(), least.Bill.Money, a.Costs.Currency)
}

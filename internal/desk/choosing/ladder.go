package choosing

import (
	"html/template"
	"strconv"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// ladderView is the steps from what is cut today to the best, and what each
// amount of money buys.
type ladderView struct {
	Steps, Money  stepsView
	Sum           string
	Key, CostNote string
	Plot          template.HTML
}

// stepsView is a table of steps, each of which can be looked at.
type stepsView struct {
	table.Table
	Rows []stepRow
}

type stepRow struct {
	URL    string
	Chosen bool
	Cells  []table.Cell
}

// Size of the plot of value against cost, in millimetres of the drawing.
const (
	frontierWide = 96
	frontierHigh = 58
)

// ladderOf tells the steps; nil where there are none.
func ladderOf(a choose.Answer, at shell.Address, job, name string) *ladderView {
	if len(a.Ladder) == 0 {
		return nil
	}
	sys := at.Units(a.Arena.Units)
	rows := func(t table.Table, prefix string) stepsView {
		out := stepsView{Table: t}
		for i, cells := range t.Rows {
			id := prefix + strconv.Itoa(i)
			out.Rows = append(out.Rows, stepRow{at.Beside("/choose", "job", job, "set", id) + "#looked-at", id == name, cells})
		}
		return out
	}
	v := &ladderView{
		Steps: rows(words.ChoiceLadder(a, sys), stepName), Sum: words.LadderSum(a), Key: words.LadderKey,
		CostNote: words.CostsNote(a.Costs, "give your own below"),
	}
	if len(a.Frontier) > 1 {
		v.Money = rows(words.ChoiceFrontier(a, sys), moneyName)
		v.Plot = template.HTML(sheet.InlineSVG(chart.Frontier(a).Draw(frontierWide, frontierHigh)))
	}
	return v
}

func stepWords(s choose.Step) string { return words.ChoiceStep(s) }

// leftOut is a hole of the arena that a set leaves out.
type leftOut struct{ glass.Hole }

// IsCut reports that its pane has to be replaced by a whole one.
func (l leftOut) IsCut() bool { return l.State == glass.Cut }

// fateView is a fate's sign with its words.
type fateView struct {
	Sign  template.HTML
	Words string
}

// fates are the signs that the map of a step needs.
func fates(c chart.Content) (out []fateView) {
	for _, f := range chart.Fates() {
		for _, has := range c.Fates {
			if has == f {
				out = append(out, fateView{template.HTML(sheet.InlineSVG(chart.FateKey(f))), string(f)})
				break
			}
		}
	}
	if len(c.AsGood) > 0 {
		d, words := chart.AsGoodKey()
		out = append(out, fateView{template.HTML(sheet.InlineSVG(d)), words})
	}
	return out
}

// mapOf is the map of what is looked at. Every set is drawn as a step: what
// stays, what is cut new and what is given up.
func (s shown) mapOf(sys unit.System) chart.Content {
	step := s.step
	if step == nil {
		step = &choose.Step{Holes: s.set()}
		for _, l := range s.left() {
			if l.IsCut() {
				step.GivenUp = append(step.GivenUp, choose.Candidate{Hole: l.Hole, Place: s.of.Arena.PlaceOf(l.Station)})
			}
		}
	}
	c := chart.OfStep(s.of, *step, sys)
	if s.n == 0 {
		c.AsGood = chart.AsGood(s.of)
	}
	c.Bare = true
	return c
}

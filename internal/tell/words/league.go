package words

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/table"
)

// LeagueText tells a league: its arenas beside one another, what to cut, and what the
// rules cost.
func LeagueText(l league.League) string {
	var b strings.Builder
	for _, t := range LeagueTables(l) {
		fmt.Fprintf(&b, "%s\n%s\n", t.Title, t.Shown().Text())
	}
	for _, line := range LeagueNotes(l) {
		b.WriteString(table.Wrap(line, ""))
	}
	return b.String()
}

// LeagueTables are the arenas, what to cut, and the files without an answer, each where
// there is some.
func LeagueTables(l league.League) (out []table.Table) {
	var answered []league.Row
	var without []leagueCause
	var cuts, weakest []leagueHole
	for _, r := range l.Rows {
		a, ok := r.Answer.Get()
		if r.Cause != "" {
			without = append(without, leagueCause{r.File, r.Cause})
		}
		if !ok {
			continue
		}
		answered = append(answered, r)
		of, _ := r.Arena.Get()
		if h, ok := a.Weakest(); ok {
			weakest = append(weakest, leagueHole{r.Name(), of, h, ""})
		}
		for _, h := range a.ToCut() {
			cuts = append(cuts, leagueHole{r.Name(), of, h, "cut"})
		}
		for _, h := range a.GivenUp {
			cuts = append(cuts, leagueHole{r.Name(), of, league.Hole{Hole: h}, "give up"})
		}
	}
	var seasons []league.Played
	var shorts []leagueShort
	for _, r := range l.Seasons {
		if p, ok := r.Answer.Get(); ok {
			seasons = append(seasons, p)
			for _, s := range p.Short {
				shorts = append(shorts, leagueShort{p.Name, s})
			}
		} else {
			without = append(without, leagueCause{r.File, r.Cause})
		}
	}
	var looks []league.Looked
	for _, r := range l.Looks {
		if a, ok := r.Answer.Get(); ok {
			looks = append(looks, a)
		} else {
			without = append(without, leagueCause{r.File, r.Cause})
		}
	}
	columns := leagueRows
	if len(l.Other) == 0 {
		columns = columns.Pick("arena", "verdict", "broken", "today", "best", "holes", "to_cut", "to_give_up", "cost")
	}
	for _, t := range []table.Table{
		columns.Of("Arenas, by "+strings.Join(l.Rules, ", "), answered, l.Units),
		leagueHoles.Pick("arena", "hole", "where", "pane", "worth").Of("The weakest hole of each best set", weakest, l.Units),
		leagueHoles.Pick("arena", "do", "where", "pane", "height_m", "worth").Of("What to cut, and which holes to give up", cuts, l.Units),
		leagueSeasons.Of("Seasons, each seated from its first game to its last", seasons, l.Units),
		leagueShorts.Of("Requests without a seat", shorts, l.Units),
		leagueLooks.Of("Games looked back on", looks, l.Units),
		leagueCauses.Of("Without an answer", without, l.Units),
	} {
		if len(t.Rows) > 0 {
			out = append(out, t)
		}
	}
	return out
}

// answerOf is a row's answer; rows without one are not in the tables that ask.
func answerOf(r league.Row) league.Answer {
	a, _ := r.Answer.Get()
	return a
}

var leagueRows = table.Fields[league.Row]{
	left("arena", "arena", league.Row.Name),
	left("rules", "verdict", func(r league.Row) string { return Status(answerOf(r).Verdict) }),
	numbered("broken", "broken", func(r league.Row) string { return fmt.Sprint(len(answerOf(r).Broken)) }),
	number("today", "today", "%.3f", func(r league.Row) float64 { return answerOf(r).Today }),
	number("best", "best", "%.3f", func(r league.Row) float64 { return answerOf(r).Value }),
	{Column: table.Column{Head: "others", Name: "other_rules", Right: true}, Cell: func(r league.Row, _ unit.System) table.Cell {
		if o, ok := r.Other.Get(); ok {
			return table.Number(fmt.Sprintf("%.3f", o.Value), o.Value)
		}
		return table.None()
	}},
	numbered("holes", "holes", func(r league.Row) string { return fmt.Sprint(len(answerOf(r).Holes)) }),
	numbered("cut", "to_cut", func(r league.Row) string { return fmt.Sprint(len(answerOf(r).ToCut())) }),
	numbered("give up", "to_give_up", func(r league.Row) string { return fmt.Sprint(len(answerOf(r).GivenUp)) }),
	text("cost", "cost", func(r league.Row, _ unit.System) string {
		if a := answerOf(r); a.Bill.Money > 0 {
			return fmt.Sprintf("%d %s", a.Bill.Money, a.Currency)
		}
		return "-"
	}),
}

// leagueHole is a hole with its arena.
type leagueHole struct {
	name string
	of   arena.Arena
	league.Hole
	do string
}

var leagueHoles = table.Fields[leagueHole]{
	left("arena", "arena", func(h leagueHole) string { return h.name }),
	left("hole", "hole", func(h leagueHole) string {
		if h.New {
			return "new"
		}
		return h.ID
	}),
	left("do", "do", func(h leagueHole) string { return h.do }),
	text("where", "where", func(h leagueHole, sys unit.System) string { return h.of.PlaceOf(h.Station).Say(sys) }),
	left("pane", "pane", func(h leagueHole) string { return h.Pane }),
	length("height", "height_m", func(h leagueHole) unit.Length { return h.Height }),
	{Column: table.Column{Head: "worth", Name: "worth", Right: true}, Cell: func(h leagueHole, _ unit.System) table.Cell {
		if h.Worth == 0 {
			return table.None()
		}
		return table.Number(fmt.Sprintf("%.4f", h.Worth), h.Worth)
	}},
}

// LeagueNotes say what the tables come to: how many arenas keep the rules, what the league
// is worth and costs, and what one rule set costs against another.
func LeagueNotes(l league.League) []string {
	t := l.Total()
	switch {
	case t.Arenas == 0:
		return nil
	case t.Answered == 0:
		return []string{fmt.Sprintf("0 of %s answered.", say.Count(t.Arenas, "arena"))}
	}
	out := []string{fmt.Sprintf("%d of %s answered. As they stand, %d of those keep the rules of %s.", t.Answered, say.Count(t.Arenas, "arena"), t.Passing, strings.Join(l.Rules, ", "))}
	for _, r := range l.Rows {
		if a := answerOf(r); a.Today > a.Value && a.Without == "" {
			out = append(out, r.Name()+": what is cut is worth more than the best legal set, and breaks the rules or cannot be proved to keep them.")
		}
		if a := answerOf(r); a.Without != "" {
			out = append(out, r.Name()+": "+a.Without+".")
		}
	}
	worth := fmt.Sprintf("All arenas together are worth %.3f today and %.3f with the best legal sets: %s to cut, %d to give up", t.Today, t.Value, say.Count(t.Cut, "hole"), t.GivenUp)
	if t.Currency != "" && t.Bill.Money > 0 {
		worth += fmt.Sprintf(", about %d %s by costs that are invented where nobody gave any", t.Bill.Money, t.Currency)
	}
	out = append(out, worth+". A value of 1 sees every moment of an arena's games once.")
	if len(l.Other) == 0 {
		return out
	}
	here, there := strings.Join(l.Rules, ", "), strings.Join(l.Other, ", ")
	price := fmt.Sprintf("Over the %s with both answers: %.3f under %s, %.3f under %s. ", say.Count(t.Both, "arena"), t.Here, here, t.There, there)
	switch {
	case t.Price() > 0:
		price += fmt.Sprintf("%s cost the league %.3f (%.0f %%) against %s.", here, t.Price(), 100*t.Price()/t.There, there)
	case t.Price() < 0:
		price += fmt.Sprintf("%s would cost the league %.3f (%.0f %%) against %s.", there, -t.Price(), -100*t.Price()/t.Here, here)
	default:
		price += "Neither costs the league anything against the other."
	}
	return append(out, price)
}

// LeagueVerdict says of one arena in a line how it stands.
func LeagueVerdict(r league.Row) string {
	a := answerOf(r)
	if a.Verdict == rules.Pass {
		return fmt.Sprintf("It keeps the rules as it stands. Worth %.3f today, %.3f at best.", a.Today, a.Value)
	}
	return fmt.Sprintf("As it stands it does not keep, or the survey cannot answer: %s. Worth %.3f today, %.3f at best.", strings.Join(a.Broken, ", "), a.Today, a.Value)
}

package wire

import (
	"example.org/rinkpane/internal/decide/league"
)

// LeagueJob is a job of a league: the contract's names.
type LeagueJob struct {
	ID    string `json:"id"`
	Arena string `json:"arena"` // name; a file's name where it cannot be read
	Kind  string `json:"kind"`  // "choose", "choose-other", "book"
	State string `json:"state"` // "waiting", "at work", "done", "failed", "given up"
	Cause string `json:"cause"` // why it failed
}

// League encodes a league with its jobs and the files that were written.
func League(l league.League, jobs []LeagueJob, files []string) Object {
	t := l.Total()
	total := Object{
		"arenas", t.Arenas, "answered", t.Answered, "passing", t.Passing, "today", t.Today, "best", t.Value,
		"to_cut", t.Cut, "to_give_up", t.GivenUp, "cost", t.Bill.Money, "panes_to_buy", t.Bill.Panes, "hours_closed", t.Bill.Hours, "currency", t.Currency,
	}
	if len(l.Other) > 0 {
		total = append(total, "compared", t.Both, "under_rules", t.Here, "under_other_rules", t.There, "price", t.Price())
	}
	return Object{
		"jobs", jobs, "rule_sets", l.Rules, "other_rule_sets", l.Other,
		"arenas", Each(l.Rows, leagueRow),
		"total", total, "files", files,
	}
}

func leagueRow(r league.Row) Object {
	out := Object{"arena", r.Name(), "file", r.File, "cause", r.Cause}
	a, ok := r.Answer.Get()
	if !ok {
		return append(out, "verdict", nil)
	}
	var other *float64
	if o, ok := r.Other.Get(); ok {
		other = &o.Value
	}
	var weakest any
	if h, ok := a.Weakest(); ok {
		weakest = leagueHole(h)
	}
	given := []string{}
	for _, h := range a.GivenUp {
		given = append(given, h.ID)
	}
	return append(out,
		"verdict", a.Verdict, "fails", a.Fails, "unknown", a.Unknown, "broken", a.Broken, "today", a.Today, "today_holes", a.TodayHoles,
		"best", a.Value, "bound", a.Bound, "under_other_rules", other, "weakest", weakest, "holes", Each(a.Holes, leagueHole),
		"to_cut", len(a.ToCut()), "give_up", given, "cost", a.Bill.Money, "currency", a.Currency, "without", a.Without, "book_pages", r.Pages)
}

func leagueHole(h league.Hole) Object {
	return Object{"id", h.ID, "pane", h.Pane, "station_m", h.Station, "height_m", h.Height, "cut", h.Cut(), "new", h.New, "worth", h.Worth, "size_mm", []float64{h.Size.W.Millimetres(), h.Size.H.Millimetres()}}
}

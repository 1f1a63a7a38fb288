package wire

import (
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/decide/recap"
)

// LeagueJob is a job of a league: the contract's names.
type LeagueJob struct {
	ID    string `json:"id"`
	Arena string `json:"arena"` // name, or that of the season or game; a file's name where it cannot be read
	Kind  string `json:"kind"`  // "choose", "choose-other", "book", "season", "recap"
	State string `json:"state"` // "waiting", "at work", "done", "failed", "given up"
	Cause string `json:"cause"` // why it failed
	// TookS is how long the last try took, or has taken so far, in seconds; 0 where nobody knows.
	TookS float64 `json:"took_s"`
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
		"seasons", Each(l.Seasons, leagueSeason), "recaps", Each(l.Looks, leagueLook),
	}
}

func leagueSeason(r league.Of[league.Played]) Object {
	out := Object{"file", r.File, "cause", r.Cause}
	p, ok := r.Answer.Get()
	if !ok {
		return out
	}
	return append(out, "season", p.Name, "arena", p.Arena, "games", p.Games, "requests", p.Requests, "met", p.Met,
		"asked_nights", p.Asked, "had_nights", p.Had, "share", p.Share(), "value", p.Value, "proved", p.Proved,
		"least", p.Even.Least, "worst_off", p.Even.WorstOff, "not_kept", p.NotKept,
		"short", Each(p.Short, func(s league.Short) Object {
			return Object{"why", s.Why, "requests", s.Requests, "first", s.First}
		}))
}

func leagueLook(r league.Of[league.Looked]) Object {
	out := Object{"file", r.File, "cause", r.Cause}
	a, ok := r.Answer.Get()
	if !ok {
		return out
	}
	out = append(out, "season", a.Season, "game", a.Game, "title", a.Title, "frames", a.Frames)
	for _, s := range []recap.Sure{recap.Certain, recap.Likely, recap.Ambiguous, recap.Unmatched} {
		out = append(out, string(s), a.Sure[s])
	}
	return append(out, "pictures", a.Bursts, "kept", a.Kept, "lux", spreadOf(a.Lux),
		"holes", Each(a.Holes, func(u league.Used) Object {
			return append(Object{"hole", u.Hole, "frames", u.Frames, "pictures", u.Bursts, "kept", u.Kept}, rates("kept_per_hour", u.PerHour)...)
		}))
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

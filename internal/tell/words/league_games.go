package words

import (
	"fmt"
	"time"

	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

var leagueSeasons = table.Fields[league.Played]{
	left("season", "season", func(p league.Played) string { return p.Name }),
	left("arena", "arena", func(p league.Played) string { return p.Arena }),
	numbered("games", "games", func(p league.Played) string { return fmt.Sprint(p.Games) }),
	numbered("requests", "requests", func(p league.Played) string { return fmt.Sprint(p.Requests) }),
	explained(shareIfTold("met", "met", func(p league.Played) unit.Maybe[float64] { return partOf(p.Met, p.Requests) }), "requests that have a seat"),
	explained(share("of their best", "share", league.Played.Share), "what all together have of the best that each could have had alone"),
	number("worth", "value", "%.2f", func(p league.Played) float64 { return p.Value }),
	numbered("proved", "proved", func(p league.Played) string { return fmt.Sprintf("%d of %d", p.Proved, p.Games) }),
	share("least", "least", func(p league.Played) float64 { return p.Even.Least }),
	left("who", "worst_off", func(p league.Played) string { return p.Even.WorstOff }),
	numbered("not kept", "not_kept", func(p league.Played) string { return fmt.Sprint(p.NotKept) }),
}

// partOf is a part of a whole in [0, 1], not known of none.
func partOf(part, of int) unit.Maybe[float64] {
	if of == 0 {
		return unit.Maybe[float64]{}
	}
	return unit.Known(float64(part) / float64(of))
}

// leagueShort is a cause of requests without a seat, with its season.
type leagueShort struct {
	season string
	league.Short
}

var leagueShorts = table.Fields[leagueShort]{
	left("season", "season", func(s leagueShort) string { return s.season }),
	numbered("requests", "requests", func(s leagueShort) string { return fmt.Sprint(s.Requests) }),
	left("first game", "first", func(s leagueShort) string { return s.First }),
	left("why", "why", func(s leagueShort) string { return whyWords(s.Why) }),
}

var leagueLooks = table.Fields[league.Looked]{
	left("season", "season", func(a league.Looked) string { return a.Season }),
	left("game", "game", func(a league.Looked) string { return a.Game }),
	left("who played", "title", func(a league.Looked) string { return a.Title }),
	numbered("frames", "frames", func(a league.Looked) string { return fmt.Sprint(a.Frames) }),
	shareIfTold("matched", "matched", func(a league.Looked) unit.Maybe[float64] {
		return partOf(a.Sure[recap.Certain]+a.Sure[recap.Likely], a.Frames)
	}),
	numbered("pictures", "pictures", func(a league.Looked) string { return fmt.Sprint(a.Bursts) }),
	numbered("kept", "kept", func(a league.Looked) string { return fmt.Sprint(a.Kept) }),
	text("most kept at", "hole", func(a league.Looked, _ unit.System) string {
		best := league.Used{}
		for _, u := range a.Holes {
			if u.Hole != "" && u.Kept > best.Kept {
				best = u
			}
		}
		if best.Kept == 0 {
			return "-"
		}
		return fmt.Sprintf("%s, %d", best.Hole, best.Kept)
	}),
}

// Took says how long work took, "" where nobody knows.
func Took(d time.Duration) string {
	switch {
	case d <= 0:
		return ""
	case d < time.Second:
		return "under 1 s"
	case d < time.Minute:
		return fmt.Sprintf("%.0f s", d.Seconds())
	}
	return fmt.Sprintf("%.0f min", d.Minutes())
}

// leagueCause is a file without an answer, and why.
type leagueCause struct{ file, why string }

var leagueCauses = table.Fields[leagueCause]{
	left("file", "file", func(c leagueCause) string { return c.file }),
	left("why", "why", func(c leagueCause) string { return c.why }),
}

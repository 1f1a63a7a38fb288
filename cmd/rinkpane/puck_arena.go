package main

import (
	"fmt"
	"io"
	"strings"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/wire"
)

// guardJSON is one hole's guard; contract field names share_of_shots and passes_per_hour.
type guardJSON struct {
	Hole            string              `json:"hole"`
	Pane            string              `json:"pane"`
	Rank            int                 `json:"rank"`
	ThickMM         float64             `json:"thick_mm"`
	ThickAssumed    bool                `json:"thick_assumed"`
	Assumed         []wire.Assumption   `json:"assumed"`
	FlatWindowMM    [2]float64          `json:"flat_window_mm"`
	FlatLimitDeg    *float64            `json:"flat_limit_deg"`
	AnyLimitDeg     *float64            `json:"any_limit_deg"`
	ShareOfShots    float64             `json:"share_of_shots"`
	ShareAtPane     unit.Maybe[float64] `json:"share_at_pane"` // null: a low window
	PassesPerHour   float64             `json:"passes_per_hour"`
	Game            passesJSON          `json:"game"`
	Practice        passesJSON          `json:"practice"`
	MeanEnergyJ     float64             `json:"mean_energy_j"`
	GreatestEnergyJ float64             `json:"greatest_energy_j"`
	Sector          *sectorJSON         `json:"sector"`
	Reach           []reachJSON         `json:"reach"`
}

type passesJSON struct {
	PerHour    float64 `json:"passes_per_hour"`
	Minutes    float64 `json:"open_minutes"`
	Expected   float64 `json:"expected_passes"`
	AtLeastOne float64 `json:"probability_of_one_or_more"`
}

type sectorJSON struct {
	HalfAngleDeg *float64 `json:"half_angle_deg"`
	FromDeg      float64  `json:"from_deg"`
	ToDeg        float64  `json:"to_deg"`
	TypicalM     float64  `json:"landing_half_m"`
	FarM         float64  `json:"landing_95_percent_m"`
	FarthestM    float64  `json:"landing_farthest_m"`
}

type reachJSON struct {
	What     string   `json:"what"`
	Passes   bool     `json:"passes"`
	PastMM   float64  `json:"past_mm"`
	LimitDeg *float64 `json:"limit_deg"`
	Toward   string   `json:"toward"`
}

func guardsJSON(guards []puck.Guard, sys unit.System) []guardJSON {
	rank := make(map[string]int, len(guards))
	for i, g := range puck.Rank(guards) {
		rank[g.Hole] = i + 1
	}
	out := make([]guardJSON, len(guards))
	for i, g := range guards {
		out[i] = guardJSON{
			Hole: g.Hole, Pane: g.Pane, Rank: rank[g.Hole],
			ThickMM: g.Opening.Thick().Millimetres(), ThickAssumed: g.ThickAssumed, Assumed: wire.Assumed(g.Assumed, sys),
			FlatWindowMM: [2]float64{g.FlatWindow.W.Millimetres(), g.FlatWindow.H.Millimetres()},
			FlatLimitDeg: degrees(g.FlatLimit), AnyLimitDeg: degrees(g.AnyLimit),
			ShareOfShots: g.ShareOfShots, ShareAtPane: g.ShareAtPane, PassesPerHour: g.Game.PerHour,
			Game: passesJSON(g.Game), Practice: passesJSON(g.Practice),
			MeanEnergyJ: g.MeanJ, GreatestEnergyJ: g.MostJ,
			Sector: sectorOf(g.Sector), Reach: reachOf(g.Reach),
		}
	}
	return out
}

// sectorOf is null when no shot of the model passes.
func sectorOf(s puck.Sector) *sectorJSON {
	if !s.Passing {
		return nil
	}
	return &sectorJSON{
		HalfAngleDeg: degrees(s.HalfAngle), FromDeg: s.From.Degrees(), ToDeg: s.To.Degrees(),
		TypicalM: s.Typical.Metres(), FarM: s.Far.Metres(), FarthestM: s.Farthest.Metres(),
	}
}

func reachOf(reach []puck.Reach) []reachJSON {
	out := make([]reachJSON, len(reach))
	for i, r := range reach {
		out[i] = reachJSON{What: r.What, Passes: r.Passes, PastMM: r.Past.Millimetres(), LimitDeg: degrees(r.Limit), Toward: r.Toward}
	}
	return out
}

// writeGuards prints the holes, the most exposed first.
func writeGuards(out io.Writer, a arena.Arena, guards []puck.Guard) {
	sys := a.Units
	fmt.Fprintf(out, "%s: what comes through an open hole, the most exposed first\n\n", a.Name)
	fmt.Fprintf(out, "%-10s %-8s %-16s %9s %9s %13s %11s %9s\n", "hole", "pane", "flat window", "flat to", "any to", "one puck in", "pucks per", "mean")
	fmt.Fprintf(out, "%-10s %-8s %-16s %9s %9s %13s %11s %9s\n", "", "", "", "deg", "deg", "struck pucks", "1000 h open", "energy J")
	ranked := puck.Rank(guards)
	for _, g := range ranked {
		fmt.Fprintf(out, "%-10s %-8s %-16s %9s %9s %13s %11.3g %9.0f\n", g.Hole, g.Pane, g.FlatWindow.Format(sys),
			angleCell(g.FlatLimit), angleCell(g.AnyLimit), oneIn(g.ShareOfShots), 1000*g.Game.PerHour, g.MeanJ)
	}
	var assumed []arena.Assumption
	for _, g := range ranked {
		assumed = append(assumed, g.Assumed...)
	}
	writeAssumed(out, assumed, sys)
	fmt.Fprintf(out, "\nkeep clear behind the hole (angles from the pane's normal, + toward rising station)\n\n")
	fmt.Fprintf(out, "%-10s %16s %14s %12s %12s %12s\n", "hole", "nine in ten, deg", "all within, deg", "half land by", "95 % by", "farthest")
	for _, g := range ranked {
		if !g.Sector.Passing {
			fmt.Fprintf(out, "%-10s no shot of the model passes\n", g.Hole)
			continue
		}
		s := g.Sector
		fmt.Fprintf(out, "%-10s %16s %14s %12s %12s %12s\n", g.Hole, fmt.Sprintf("%.0f to %.0f", s.From.Degrees(), s.To.Degrees()),
			"+-"+angleCell(s.HalfAngle), about(s.Typical, sys), about(s.Far, sys), about(s.Farthest, sys))
	}
	writeReach(out, ranked, sys)
	writeChances(out, ranked)
	writeLines(out, puck.LeftOut())
	fmt.Fprintln(out)
	writeLines(out, glass.Cautions())
}

// writeAssumed says what the answer rests on that the survey lacks, each once.
func writeAssumed(out io.Writer, list []arena.Assumption, sys unit.System) {
	said := map[string]bool{}
	for _, reason := range arena.Reasons(list, sys) {
		if !said[reason] {
			writeLines(out, []string{"Assumed: " + reason + "."})
		}
		said[reason] = true
	}
}

// textColumns is the width that tables and paragraphs keep to.
const textColumns = 98

// writeLines prints sentences, each from a line's beginning, broken at words.
func writeLines(out io.Writer, lines []string) {
	for _, line := range lines {
		column := 0
		for _, word := range strings.Fields(line) {
			switch {
			case column == 0:
			case column+1+len(word) > textColumns:
				fmt.Fprint(out, "\n  ")
				column = 2
			default:
				fmt.Fprint(out, " ")
				column++
			}
			fmt.Fprint(out, word)
			column += len(word)
		}
		fmt.Fprintln(out)
	}
}

// about prints a distance that a model gives, no finer than it is known: to a
// tenth of a metre or a foot.
func about(l unit.Length, sys unit.System) string {
	if sys == unit.Imperial {
		return fmt.Sprintf("%.0f ft", l.Feet())
	}
	return fmt.Sprintf("%.1f m", l.Metres())
}

func writeReach(out io.Writer, guards []puck.Guard, sys unit.System) {
	fmt.Fprintf(out, "\nreach through the hole, past the face it comes out of\n\n")
	fmt.Fprintf(out, "%-10s", "hole")
	if len(guards) > 0 {
		for _, r := range guards[0].Reach {
			fmt.Fprintf(out, " %20s", r.What)
		}
	}
	fmt.Fprintln(out)
	for _, g := range guards {
		fmt.Fprintf(out, "%-10s", g.Hole)
		for _, r := range g.Reach {
			text := "does not pass"
			if r.Passes {
				text = r.Past.Format(sys) + " to " + r.Toward
			}
			fmt.Fprintf(out, " %20s", text)
		}
		fmt.Fprintln(out)
	}
}

func writeChances(out io.Writer, guards []puck.Guard) {
	game, practice := 0.0, 0.0
	for _, g := range guards {
		game += g.Game.Expected
		practice += g.Practice.Expected
	}
	if len(guards) == 0 {
		return
	}
	fmt.Fprintf(out, "\nall holes open for %g minutes of play: %.2g pucks expected; for %g minutes of practice: %.2g\n\n",
		guards[0].Game.Minutes, game, guards[0].Practice.Minutes, practice)
}

func angleCell(m unit.Maybe[unit.Angle]) string {
	q, ok := m.Get()
	if !ok {
		return "-"
	}
	return fmt.Sprintf("%.0f", q.Degrees())
}

// oneIn prints a small share as its reciprocal.
func oneIn(share float64) string {
	switch n := 1 / share; {
	case share <= 0 || n > 1e12:
		return "never"
	case n >= 1e6:
		return fmt.Sprintf("%.1f million", n/1e6)
	default:
		return fmt.Sprintf("%.0f", n)
	}
}

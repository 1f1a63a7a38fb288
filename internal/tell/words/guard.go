package words

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
)

// Guards are the columns of what comes through each hole while its cover is out.
func Guards() table.Fields[puck.Guard] {
	sector := func(of func(puck.Sector, unit.System) string) func(puck.Guard, unit.System) table.Cell {
		return func(g puck.Guard, sys unit.System) table.Cell {
			if !g.Sector.Passing {
				return table.None()
			}
			return table.Words(of(g.Sector, sys))
		}
	}
	lands := func(head, name string, of func(puck.Sector) unit.Length) table.Field[puck.Guard] {
		return inUnits(head, name, true, sector(func(s puck.Sector, sys unit.System) string { return Within(of(s), sys) }))
	}
	row := func(head, name string, of func(puck.Sector) unit.Length) table.Field[puck.Guard] {
		return numbered(head, name, func(g puck.Guard) string {
			if !g.Sector.Passing {
				return "-"
			}
			return fmt.Sprint(g.Seating.Row(of(g.Sector)))
		})
	}
	cleared := func(of func(puck.Guard, unit.System) string) func(puck.Guard, unit.System) table.Cell {
		return func(g puck.Guard, sys unit.System) table.Cell {
			if !g.Sector.Bounded() {
				return table.None()
			}
			return table.Words(of(g, sys))
		}
	}
	aside := func(head, name string, of func(left, right unit.Length) unit.Length) table.Field[puck.Guard] {
		return inUnits(head, name, true, cleared(func(g puck.Guard, sys unit.System) string { return Within(of(g.Sector.Aside()), sys) }))
	}
	return table.Fields[puck.Guard]{
		left("hole", "hole", func(g puck.Guard) string { return g.Hole }),
		left("pane", "pane", func(g puck.Guard) string { return g.Pane }),
		inUnits("flat window", "flat_window", false, func(g puck.Guard, sys unit.System) table.Cell {
			return table.Words(g.FlatWindow.Format(sys))
		}),
		explained(numbered("flat to", "flat_limit_deg", func(g puck.Guard) string { return Closes(g.FlatLimit) }),
			"the angle from the pane's normal past which a flat puck no longer passes"),
		explained(numbered("any to", "any_limit_deg", func(g puck.Guard) string { return Closes(g.AnyLimit) }),
			"the same for a puck turned as it likes"),
		explained(numbered("of struck, one in", "one_in", func(g puck.Guard) string { return oneIn(g.ShareHigh) + " to " + oneIn(g.ShareOfShots) }),
			"from the high count to those that pass clean"),
		explained(numbered("in 1000 h play", "per_1000_h_game", func(g puck.Guard) string { return PerThousandHours(g.Game) }),
			"pucks in 1000 hours open: from those that pass clean to the high count; plan with the high one"),
		numbered("in 1000 h practice", "per_1000_h_practice", func(g puck.Guard) string { return PerThousandHours(g.Practice) }),
		numbered("mean energy", "mean_energy_j", func(g puck.Guard) string { return fmt.Sprintf("%.0f J", g.MeanJ) }),
		explained(inUnits("keep clear", "sector_deg", true, cleared(func(g puck.Guard, _ unit.System) string { return Bearings(g.Sector) })),
			"between these angles from the pane's normal, + toward rising station, and as far as said; past each of the three bounds a puck comes less than once in "+Grouped(puck.GamesClear)+" games with the cover out, by clean passes raised as the high counts are"),
		inUnits("as far as", "clear_m", true, cleared(func(g puck.Guard, sys unit.System) string { return Within(g.Sector.Clear, sys) })),
		explained(inUnits("all within", "half_angle_deg", true, sector(func(s puck.Sector, _ unit.System) string { return Closes(s.HalfAngle) })),
			"degrees to either side of the normal"),
		lands("half land by", "landing_half_m", func(s puck.Sector) unit.Length { return s.Typical }),
		lands("95 % by", "landing_95_percent_m", func(s puck.Sector) unit.Length { return s.Far }),
		lands("99.9 % by", "landing_farthest_m", func(s puck.Sector) unit.Length { return s.Farthest }),
		inUnits("clear rows 1 to", "rows_clear", true, cleared(func(g puck.Guard, _ unit.System) string { return fmt.Sprint(g.Seating.Row(g.Sector.Clear)) })),
		row("half land by row", "row_half", func(s puck.Sector) unit.Length { return s.Typical }),
		row("95 % by row", "row_95_percent", func(s puck.Sector) unit.Length { return s.Far }),
		row("99.9 % by row", "row_farthest", func(s puck.Sector) unit.Length { return s.Farthest }),
		explained(aside("left of it", "aside_left", func(left, _ unit.Length) unit.Length { return left }),
			"how far the sector reaches to the side of the hole, as you face the ice"),
		aside("right of it", "aside_right", func(_, right unit.Length) unit.Length { return right }),
	}
}

// GuardTables are what comes through the holes, the most exposed first, what to keep clear
// behind them, and what reaches through.
func GuardTables(guards []puck.Guard, sys unit.System) []table.Table {
	ranked := puck.Rank(guards)
	return []table.Table{
		Guards().Pick("hole", "pane", "flat_window", "flat_limit_deg", "any_limit_deg", "one_in", "per_1000_h_game", "mean_energy_j").Of("while its cover is out", ranked, sys),
		Guards().Pick("hole", "sector_deg", "clear_m", "half_angle_deg", "landing_half_m", "landing_95_percent_m", "landing_farthest_m").Of("keep clear behind the hole", ranked, sys),
		Guards().Pick("hole", "rows_clear", "aside_left", "aside_right", "row_half", "row_95_percent", "row_farthest").Of("seats to clear"+rowsOf(guards, sys), ranked, sys),
		through(ranked).Of("reach through the hole, past the face it comes out of", ranked, sys),
	}
}

// rowsOf says which rows are counted.
func rowsOf(guards []puck.Guard, sys unit.System) string {
	if len(guards) == 0 {
		return ""
	}
	s := guards[0].Seating
	return fmt.Sprintf(": rows %s deep, the first %s behind the glass", s.Deep.Format(sys), s.First.Format(sys))
}

// Seats says which seats to clear behind a hole: "rows 1 to 15 behind the glass, from
// 38 ft left to 34 ft right of the hole as you face the ice".
func Seats(g puck.Guard, sys unit.System) string {
	if !g.Sector.Bounded() {
		return "too few pucks pass for seats to be cleared"
	}
	last := g.Seating.Row(g.Sector.Clear)
	if last == 0 {
		return "the passage before the first row"
	}
	rows := fmt.Sprintf("rows 1 to %d", last)
	if last == 1 {
		rows = "row 1"
	}
	left, right := g.Sector.Aside()
	return fmt.Sprintf("%s behind the glass, from %s left to %s right of the hole as you face the ice", rows, Within(left, sys), Within(right, sys))
}

// InGames says in how many games with all covers out a puck comes through, and between
// which bounds: "once in 570 games ...".
func InGames(guards []puck.Guard) string {
	g, ok := puck.Together(guards)
	if !ok {
		return "By the model of struck pucks none passes an open hole."
	}
	out := fmt.Sprintf("cover%s out for %g minutes of every game", map[bool]string{true: "", false: "s"}[len(guards) == 1], guards[0].Game.Minutes)
	if len(guards) > 1 {
		out = fmt.Sprintf("all %d ", len(guards)) + out
	} else {
		out = "the " + out
	}
	return fmt.Sprintf("With %s a puck comes through %s: how often pucks are struck is own judgement, and the figure between is the ends' geometric mean. Plan with once in %s.",
		out, onceIn(g), Grouped(g.Often))
}

// OnceIn says in how many games a puck comes through one of some openings, covers out.
func OnceIn(guards []puck.Guard) string {
	g, ok := puck.Together(guards)
	if !ok {
		return "none passes"
	}
	return onceIn(g)
}

func onceIn(g puck.Games) string {
	return fmt.Sprintf("about once in %s games, between once in %s and once in %s", Grouped(g.Middle), Grouped(g.Often), Grouped(g.Seldom))
}

// Grouped prints a count of 1 or more to two digits, thousands apart: "3,500".
func Grouped(n float64) string {
	if n < 1 {
		return "1"
	}
	step := math.Pow(10, max(0, math.Floor(math.Log10(n))-1))
	return thousands(int(step * math.Round(n/step)))
}

// GuardNotes say what the guard rests on that the survey lacks, and how often a puck
// comes through.
func GuardNotes(guards []puck.Guard, sys unit.System) []string {
	var assumed []arena.Assumption
	for _, g := range puck.Rank(guards) {
		assumed = append(assumed, g.Assumed...)
	}
	out := Assumed(assumed, sys)
	if len(guards) > 0 {
		out = append(out, chances(guards)+". "+InGames(guards))
	}
	return out
}

// GuardsText tells the holes, the most exposed first, what to keep clear behind
// them, and what reaches through.
func GuardsText(name string, guards []puck.Guard, sys unit.System) string {
	var b strings.Builder
	notes := GuardNotes(guards, sys)
	assumed := notes[:max(len(notes)-1, 0)]
	fmt.Fprintf(&b, "%s: what comes through an open hole, the most exposed first\n", name)
	for i, t := range GuardTables(guards, sys) {
		title := t.Title
		t.Title = ""
		b.WriteString("\n" + title + "\n\n" + t.Text())
		if keys := t.Keys(); keys != "" {
			b.WriteString(table.Wrap(keys, ""))
		}
		if i > 0 {
			continue
		}
		for _, said := range assumed {
			b.WriteString(table.Wrap(said, "  "))
		}
	}
	if len(guards) > 0 {
		b.WriteString("\n" + table.Wrap(notes[len(notes)-1], "") + "\n")
	}
	for _, line := range append(append(puck.LeftOut(), ""), glass.Cautions()...) {
		b.WriteString(table.Wrap(line, "  "))
	}
	return b.String()
}

// Assumed says what an answer rests on that the survey lacks, each once.
func Assumed(list []arena.Assumption, sys unit.System) []string {
	var out []string
	for _, reason := range arena.Reasons(list, sys) {
		if said := "Assumed: " + reason + "."; !slices.Contains(out, said) {
			out = append(out, said)
		}
	}
	return out
}

// Window tells what one hole lets through at an angle from the pane's normal: a flat
// puck, and tumbling ones.
func Window(o puck.Opening, at unit.Angle, tumbling puck.Window, sys unit.System) string {
	p := page{sys: sys}
	closes := func(m unit.Maybe[unit.Angle]) string {
		if q, ok := m.Get(); ok {
			return fmt.Sprintf("%.1f deg from the normal", q.Degrees())
		}
		return "never open"
	}
	area := fmt.Sprintf("%.1f cm2", tumbling.AreaM2*1e4)
	if sys == unit.Imperial {
		area = fmt.Sprintf("%.2f sq in", tumbling.AreaM2/(unit.Inch.Metres()*unit.Inch.Metres()))
	}
	p.say("hole %s in a pane of %s, puck at %s from the normal\n\n", o.Size(), o.Thick(), at.Format())
	if flat := o.Flat(at); flat.W > 0 {
		p.say("flat puck       window for its centre %s\n", flat)
	} else {
		p.say("flat puck       does not pass at this angle\n")
	}
	p.say("  closes at     %s\n", closes(o.FlatLimit()))
	p.say("tumbling puck   %.1f %% of the orientations pass, mean window %s\n", 100*tumbling.Pass, area)
	p.say("  closes at     %s, whatever the orientation\n\n", closes(o.AnyLimit()))
	p.lines(slices.Concat(puck.LeftOut(), []string{""}, glass.Cautions())...)
	return p.String()
}

// through are the columns of what reaches through: a column a thing.
func through(guards []puck.Guard) table.Fields[puck.Guard] {
	out := Guards().Pick("hole")
	if len(guards) == 0 {
		return out
	}
	for i, r := range guards[0].Reach {
		out = append(out, inUnits(r.What, fmt.Sprintf("reach_%d", i+1), true, func(g puck.Guard, sys unit.System) table.Cell {
			return table.Words(Through(g.Reach[i], sys))
		}))
	}
	return out
}

// Through says how far something reaches through a hole.
func Through(r puck.Protrusion, sys unit.System) string {
	if !r.Passes {
		return "does not pass"
	}
	return r.Past.Format(sys) + " to the " + r.Toward
}

func chances(guards []puck.Guard) string {
	gameLow, gameHigh := puck.Expected(guards, func(g puck.Guard) puck.Passes { return g.Game })
	practiceLow, practiceHigh := puck.Expected(guards, func(g puck.Guard) puck.Passes { return g.Practice })
	return fmt.Sprintf("all holes open for %g minutes of play: %.2g to %.2g pucks expected; for %g minutes of practice: %.2g to %.2g",
		guards[0].Game.Minutes, gameLow, gameHigh, guards[0].Practice.Minutes, practiceLow, practiceHigh)
}

// Closes says at which angle an opening closes, or that it never does.
func Closes(m unit.Maybe[unit.Angle]) string {
	if q, ok := m.Get(); ok {
		return fmt.Sprintf("%.0f deg", q.Degrees())
	}
	return "never opens"
}

// PerThousandHours prints between which bounds how many pucks come through in
// 1000 open hours lies, two digits and no powers of ten.
func PerThousandHours(p puck.Passes) string {
	low, high := few(1000*p.PerHour), few(1000*p.PerHourHigh)
	if low == high || p.PerHourHigh <= p.PerHour {
		return low
	}
	return low + " to " + high
}

// few prints a small number.
func few(n float64) string {
	const least = 0.001
	switch {
	case n == 0:
		return "0"
	case n < least:
		return "under 0.001"
	case n < 10:
		return fmt.Sprintf("%.2g", n)
	default:
		return fmt.Sprintf("%.0f", n)
	}
}

// oneIn prints a small share as its reciprocal.
func oneIn(share float64) string {
	switch n := 1 / share; {
	case share <= 0 || n > 1e12:
		return "never"
	case n >= 1e6:
		return fmt.Sprintf("%.1f million", n/1e6)
	default:
		return Grouped(n)
	}
}

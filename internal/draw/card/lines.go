package card

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// Head says which game and whose card, in two lines.
func (c Card) Head() (gameLine, who string) {
	gameLine = c.Game.Start.Format("Mon 2 Jan 15:04")
	if c.Game.Universal {
		gameLine += " UTC"
	}
	who = c.Person.Name
	if c.Person.Outlet != "" {
		who += ", " + c.Person.Outlet
	}
	return gameLine + "  " + c.Game.Teams(), who
}

// Mount says which lens goes into the hole and how far it turns.
func (p Post) Mount() string {
	degrees := func(a unit.Angle) string { return fmt.Sprintf("%.0f°", math.Floor(a.Degrees())) }
	turns, can := p.Turns.Get()
	clean, clear := p.Clean.Get()
	switch {
	case !can:
		return fmt.Sprintf("%s: %s does not pass light straight ahead", p.Hole, p.Lens.Name)
	case !clear:
		return fmt.Sprintf("%s: %s, turns %s each way, corners dark", p.Hole, p.Lens.Name, degrees(turns))
	}
	return fmt.Sprintf("%s: %s, turns %s each way, clean corners to %s", p.Hole, p.Lens.Name, degrees(turns), degrees(clean))
}

// Duties says what goes with the holes: what to keep clear behind them, and the covers.
func (c Card) Duties(sys unit.System) []string {
	var out, covers []string
	c.each(func(p Post) {
		if p.Sector.Bounded() {
			out = append(out, fmt.Sprintf("Keep clear behind %s: %s.", p.Hole, words.Within(p.Sector.Clear, sys)))
		}
		cover := "of " + p.Hole
		if p.Cover != "" {
			cover = p.Cover
		}
		covers = append(covers, cover)
	})
	return []string{
		strings.Join(out, " "),
		"Cover " + say.Names(covers) + ": in whenever nobody is at the hole. Nothing past the rink face during play.",
	}
}

// each calls f for every hole of the card once.
func (c Card) each(f func(Post)) {
	met := map[string]bool{}
	for _, p := range c.Posts {
		if !met[p.Hole] {
			f(p)
		}
		met[p.Hole] = true
	}
}

// Nexts says who comes next to each hole that is handed over, and where to go.
func (c Card) Nexts() []string {
	var out []string
	for k, t := range c.Turns {
		if t.Hole == "" {
			continue
		}
		last := k == len(c.Turns)-1
		switch {
		case t.Next != "":
			out = append(out, fmt.Sprintf("After period %d %s has %s.", t.Period, t.Next, t.Hole))
		case last:
			out = append(out, fmt.Sprintf("After period %d the cover of %s goes in.", t.Period, t.Hole))
		case c.Turns[k+1].Hole != t.Hole:
			out = append(out, fmt.Sprintf("After period %d the cover of %s goes in; nobody comes.", t.Period, t.Hole))
		}
	}
	return out
}

// Exposure is the table of what to set, by zone of the ice before the holes: for faces,
// wide open, by the light as surveyed.
func (c Card) Exposure(sys unit.System) table.Table {
	var rows []light.Row
	met := map[string]bool{}
	for _, p := range c.Posts {
		for _, row := range p.Light {
			if key := row.Zone + row.Stop.Format(); !met[key] {
				met[key], rows = true, append(rows, row)
			}
		}
	}
	slices.SortStableFunc(rows, func(a, b light.Row) int { return cmp.Compare(a.Zone, b.Zone) })
	return words.Light().Pick("zone", "shutter", "stop", "face_iso_nominal").Of("exposure", rows, sys)
}

// Ends says who attacks an end of the rink in which periods, a line for each team: "1, 3:
// Herons attack".
func (c Card) Ends(end int) []string {
	var out []string
	for team := range 2 {
		var periods []string
		for period := 1; period <= c.Game.Periods; period++ {
			if c.Game.Ends.Attacks(team, period) == end {
				periods = append(periods, fmt.Sprint(period))
			}
		}
		if len(periods) > 0 {
			out = append(out, strings.Join(periods, ", ")+": "+c.Game.Team(team)+" attack")
		}
	}
	return out
}

// Assumed says what the card takes without anybody having said or measured it.
func (c Card) Assumed() (out []say.Sentence) {
	if c.Game.EndsAssumed {
		out = append(out, say.Make("Ends as the arena says; the game says none."))
	}
	if slices.ContainsFunc(c.Posts, func(p Post) bool { return slices.ContainsFunc(p.Light, light.Row.Guessed) }) {
		out = append(out, say.Make("ISO with ?: nobody measured the light there."))
	}
	return out
}

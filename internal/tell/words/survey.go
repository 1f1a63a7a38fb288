package words

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/starter"
	"example.org/rinkpane/internal/tell/table"
)

// Survey tells what an arena's survey holds and what it lacks.
func Survey(a arena.Arena, rep starter.Report, sys unit.System) string {
	p := page{sys: sys}
	title := a.Name
	if a.Place != "" {
		title += ", " + a.Place
	}
	var bare unit.Length
	for _, s := range rep.Unsurveyed {
		bare += s.Length()
	}
	p.say("%s\n", title)
	p.hang("boards   ", "%s round: %s behind %s, %s open before benches, %s not surveyed", rep.Perimeter, rep.Glazed, say.Count(rep.Panes, "pane"), rep.Open, bare)
	p.say("holes    %s\nlight    %s\n", holeCounts(a.Holes), say.Count(len(a.Light.Readings), "reading"))
	if rep.Complete() {
		p.say("\nNothing is missing.\n")
	}
	if len(rep.Unsurveyed) > 0 {
		p.say("\nBoards without panes: no hole can stand there, and nothing is drawn or chosen\n%s", table.Fields[starter.Stretch]{
			length("from station", "from_m", func(s starter.Stretch) unit.Length { return a.Rink.Wrap(s.From) }),
			length("to station", "to_m", func(s starter.Stretch) unit.Length { return a.Rink.Wrap(s.To) }),
			length("length", "length_m", starter.Stretch.Length),
		}.Of("", rep.Unsurveyed, sys).Text())
	}
	if len(rep.Doubts) > 0 {
		p.say("\nLikely a slip of the pen\n")
	}
	for _, d := range rep.Doubts {
		p.WriteString(table.Hang("  ", DoubtAbout(d)+": "+d.Says.In(sys)) + table.Hang("      -> ", d.Cure.In(sys)))
	}
	p.gaps("Missing, what it costs, and what to do", rep.Gaps)
	if len(rep.Origins) > 0 {
		p.say("\nWhere the numbers come from\n%s", origins.Of("", rep.Origins, sys).Text())
	}
	p.gaps("Guessed, what that costs, and what to do", rep.Guesses)
	return p.String()
}

// origins are the columns of the table of sources.
var origins = table.Fields[starter.Origin]{
	left("part", "part", func(o starter.Origin) string { return o.Part }),
	number("measured", "measured", "%.0f", func(o starter.Origin) float64 { return float64(o.Measured) }),
	number("drawing", "drawing", "%.0f", func(o starter.Origin) float64 { return float64(o.Drawing) }),
	number("frames", "frames", "%.0f", func(o starter.Origin) float64 { return float64(o.Frames) }),
	number("guess", "guess", "%.0f", func(o starter.Origin) float64 { return float64(o.Guess) }),
	number("not said", "unsaid", "%.0f", func(o starter.Origin) float64 { return float64(o.Unsaid) }),
}

// DoubtAbout names what a doubt is about: "zones: home-bench", "boards".
func DoubtAbout(d starter.Doubt) string {
	if d.Of == "" {
		return d.Part
	}
	return d.Part + ": " + d.Of
}

// gaps tells what is missing or guessed, what it costs, and what to do.
func (p *page) gaps(title string, list []starter.Gap) {
	if len(list) > 0 {
		p.say("\n%s\n", title)
	}
	for _, g := range list {
		head := g.Part + ": " + g.Field
		if len(g.Of) > 0 {
			head += " of " + Ranges(g.Of)
		}
		if len(g.Holes) > 0 {
			_, noun, _ := strings.Cut(say.Count(len(g.Holes), "hole"), " ")
			head += fmt.Sprintf(" (with %s %s)", noun, strings.Join(g.Holes, ", "))
		}
		p.WriteString(table.Hang("  ", head) + table.Hang("      ", g.Costs) + table.Hang("      -> ", g.Cure))
	}
}

// Begun tells of a survey that was begun in a file, and what it takes for granted.
func Begun(path string, a arena.Arena, notes []string) string {
	p := page{sys: a.Units}
	p.say("%s: %s, %s. Measure and correct it, then:\n  rinkpane survey %[1]s\n  rinkpane check %[1]s\n", path, say.Count(len(a.Panes), "pane"), say.Count(len(a.Holes), "planned hole"))
	for _, n := range notes {
		p.WriteString(table.Hang("Note: ", n))
	}
	return p.String()
}

func holeCounts(holes []glass.Hole) string {
	by := map[glass.State]int{}
	for _, h := range holes {
		by[h.State]++
	}
	var parts []string
	for _, state := range []glass.State{glass.Cut, glass.Planned, glass.Off} {
		if by[state] > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", by[state], state))
		}
	}
	if len(parts) == 0 {
		return "none"
	}
	return strings.Join(parts, ", ")
}

// shownIDs is how many ids a line of text names before it counts the rest.
const shownIDs = 12

// Ranges names ids, the first few and how many more.
func Ranges(ids []string) string {
	if len(ids) <= shownIDs {
		return strings.Join(ids, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(ids[:shownIDs-2], ", "), len(ids)-shownIDs+2)
}

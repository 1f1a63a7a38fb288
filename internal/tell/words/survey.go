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
	if len(rep.Gaps) > 0 {
		p.say("\nMissing, what it costs, and what to do\n")
	}
	for _, g := range rep.Gaps {
		head := g.Part + ": " + g.Field
		if len(g.Of) > 0 {
			head += " of " + ranges(g.Of)
		}
		if len(g.Holes) > 0 {
			_, noun, _ := strings.Cut(say.Count(len(g.Holes), "hole"), " ")
			head += fmt.Sprintf(" (with %s %s)", noun, strings.Join(g.Holes, ", "))
		}
		p.WriteString(table.Hang("  ", head) + table.Hang("      ", g.Costs) + table.Hang("      -> ", g.Cure))
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

// ranges names ids, the first few and how many more.
func ranges(ids []string) string {
	if len(ids) <= shownIDs {
		return strings.Join(ids, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(ids[:shownIDs-2], ", "), len(ids)-shownIDs+2)
}

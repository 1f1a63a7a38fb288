package words

import (
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/answer/gain"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// Gain tells what a hole brings over shooting through its pane: the lines for
// whoever pays first, then the table by angle.
func Gain(g gain.Answer, sys unit.System) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Hole %s or pane %s: %s at %s, %s\n\n", g.Hole, g.Pane, g.Lens, g.Focal.Format(unit.Metric), g.Stop.Format())
	for _, line := range GainLines(g, sys) {
		b.WriteString(table.Wrap(line, ""))
	}
	t := GainAngles().Of("", g.Rows, sys)
	b.WriteString("\n" + t.Text() + "\n" + table.Wrap(t.Keys(), ""))
	if len(g.Assumed) > 0 {
		b.WriteString("\n" + Lines(Assumed(g.Assumed, sys)...))
	}
	return b.String()
}

// GainLines are the answer in sentences, the first for whoever pays.
func GainLines(g gain.Answer, sys unit.System) []string {
	w := g.Within
	lines := []string{
		fmt.Sprintf("The hole reaches %s of a game's moments. There it keeps the whole contrast and takes %s of light; the pane would take %s and leave %s of a dark jersey's fine contrast when new, %s when worn.",
			Percent(g.Reached), stops(w.HolePass), stops(w.PanePass), Percent(w.NewContrast), Percent(w.WornContrast)),
	}
	if g.Reached < 0.995 { // else less than the percent told
		lines = append(lines, fmt.Sprintf("The other %s lie too far to the side: through the pane only, which over all moments takes %s and leaves %s (new) or %s (worn).",
			Percent(1-g.Reached), stops(g.All.PanePass), Percent(g.All.NewContrast), Percent(g.All.WornContrast)))
	}
	worn := fmt.Sprintf("haze %.1f %% new and %.1f %% worn (--haze or haze: in the arena file states your pane's, by ASTM D1003; dirt and fog count as haze)", 100*g.New.Haze, 100*g.Worn.Haze)
	if g.HazeKnown {
		worn = fmt.Sprintf("haze %.1f %% new; told as worn is the pane's own, %.1f %%", 100*g.New.Haze, 100*g.Worn.Haze)
	}
	return append(lines, fmt.Sprintf("Over the glass an eye would have to be more than %s above the ice.", g.Top.Format(sys)),
		fmt.Sprintf("Assumed: %s; stands behind the camera %s as bright as the scene (--stands).", worn, Percent(g.Mirror)))
}

func stops(pass float64) string {
	if pass <= 0 {
		return "all"
	}
	return fmt.Sprintf("%.1f stop", math.Abs(math.Log2(pass)))
}

// GainAngles are the columns of what a hole gains by angle.
func GainAngles() table.Fields[gain.Row] {
	number := func(head, name, form, key string, of func(gain.Row) float64) table.Field[gain.Row] {
		return explained(inUnits(head, name, true, func(r gain.Row, _ unit.System) table.Cell {
			return table.Number(fmt.Sprintf(form, of(r)), of(r))
		}), key)
	}
	lost := func(head, name, key string, of func(gain.Row) float64) table.Field[gain.Row] {
		return explained(inUnits(head, name, true, func(r gain.Row, _ unit.System) table.Cell {
			if of(r) <= 0.5/1024 {
				return table.Cell{Text: "dark", Value: ""}
			}
			return table.Number(fmt.Sprintf("%.1f", math.Abs(math.Log2(of(r)))), -math.Log2(of(r)))
		}), key)
	}
	return table.Fields[gain.Row]{
		number("angle", "angle_deg", "%.0f", "degrees from straight through the pane", func(r gain.Row) float64 { return r.Angle.Degrees() }),
		share("moments", "moments_share", func(r gain.Row) float64 { return r.Share }),
		lost("hole", "hole_stops", "stops lost in the middle of the picture, through the hole", func(r gain.Row) float64 { return r.Hole.Centre }),
		lost("corner", "hole_stops_corner", "in its worst corner", func(r gain.Row) float64 { return r.Hole.Corner }),
		lost("pane", "pane_stops", "stops lost through the pane", func(r gain.Row) float64 { return r.New.Transmission }),
		explained(share("new", "contrast_new", func(r gain.Row) float64 { return r.New.Contrast }), "fine contrast of a dark jersey that a new pane leaves"),
		explained(share("worn", "contrast_worn", func(r gain.Row) float64 { return r.Worn.Contrast }), "that a worn one leaves"),
		explained(share("mirrors", "mirrored_share", func(r gain.Row) float64 { return r.New.Mirrored() }), "share of the stands' light that the pane mirrors into the lens"),
		number("ghost", "ghost_px", "%.0f px", "how far the second image stands off", func(r gain.Row) float64 { return r.GhostPx }),
		number("of", "ghost_percent", "%.1f %%", "its strength", func(r gain.Row) float64 { return 100 * r.New.Ghost.Strength }),
	}
}

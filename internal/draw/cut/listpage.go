package cut

import (
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// listPages are the cut list over the arena: holes, panes, covers, spares.
func (p Plan) listPages(l List, paper sheet.Paper) []*sheet.Drawing {
	n := 0
	f := sheet.NewFlow(func() (*sheet.Drawing, sheet.Rect) {
		n++
		g := p.newPage(paper, fmt.Sprintf("cut-list-%d", n), "Cut list",
			sheet.Field{Name: "Holes to draw", Value: strconv.Itoa(l.Holes)}, sheet.Field{Name: "Covers", Value: strconv.Itoa(l.Covers)},
			sheet.Field{Name: "Spare panes", Value: strconv.Itoa(l.Spares)}, sheet.Field{Name: "Spare covers", Value: strconv.Itoa(l.CoverSpare)})
		return g.d, g.area
	})
	f.Heading("Holes and panes")
	f.Table(p.holeTable(l))
	f.Heading("Spare drilled panes and covers")
	f.Notes(fmt.Sprintf("At %.3g breaks a drilled pane and season, and %.3g covers lost or broken a hole and season, so many last a season with %.3g %% certainty (exact Poisson). Panes of one row can stand in for one another; each kind needs its own spares.",
		l.Options.BreakRate, l.Options.CoverRate, 100*l.Options.Certainty))
	f.Table(spareTable(l))
	if rows := refusedTable(l); len(rows.Rows) > 0 {
		f.Heading("Not drawn")
		f.Table(rows)
	}
	return f.Sheets()
}

func (p Plan) holeTable(l List) sheet.Table {
	t := sheet.Table{
		Size: tableSize,
		Head: []string{"hole", "state", "pane", "material", "thick", "pane, width x height", "mass, kg", "drilled, kg", "hole", "corner", "route", "cover's plug"},
		Align: []sheet.Anchor{sheet.Start, sheet.Start, sheet.Start, sheet.Start, sheet.End, sheet.End, sheet.End, sheet.End,
			sheet.End, sheet.End, sheet.Start, sheet.End},
	}
	sys := p.Arena.Units
	weighed := map[string]bool{}
	for _, r := range l.Rows {
		j := r.Job
		if len(r.Refused) > 0 {
			t.Rows = append(t.Rows, []string{j.Hole.ID, stateWord(j), j.Hole.Pane, "not drawn, see below"})
			continue
		}
		whole, drilled := fmt.Sprintf("%.1f", j.Whole), fmt.Sprintf("%.1f", j.Mass)
		if weighed[j.Pane.ID] {
			whole, drilled = "same pane", "" // one pane with several holes weighs once
		}
		weighed[j.Pane.ID] = true
		pane := j.Face.Width.FormatFine(sys) + " x " + j.Face.Height.FormatFine(sys)
		t.Rows = append(t.Rows, []string{
			j.Hole.ID, stateWord(j), j.Pane.ID, string(j.Material.Name), j.Thick.FormatFine(sys), pane,
			whole, drilled,
			fine(j.Hole.Size, sys), j.Corner.FormatFine(sys), string(j.Route), fine(j.Cover.Plug, unit.Metric),
		})
	}
	t.Rows = append(t.Rows, []string{"all", "", "", "", "", "", "", fmt.Sprintf("%.1f", l.Mass)})
	t.Classes = make([]string, len(t.Rows))
	t.Classes[len(t.Rows)-1] = "strong"
	return t
}

// fine prints a size for a drawing: "5 1/2 in x 4 1/2 in".
func fine(s unit.Size, sys unit.System) string {
	return s.W.FormatFine(sys) + " x " + s.H.FormatFine(sys)
}

func spareTable(l List) sheet.Table {
	t := sheet.Table{
		Size: tableSize, Head: []string{"what", "holes", "in use", "spares to keep"},
		Align: []sheet.Anchor{sheet.Start, sheet.Start, sheet.End, sheet.End},
	}
	for _, g := range l.Groups {
		t.Rows = append(t.Rows, []string{"pane: " + g.Pane, strings.Join(g.Holes, ", "), strconv.Itoa(g.Count), strconv.Itoa(g.Spares)})
	}
	t.Rows = append(t.Rows, []string{"covers", "all", strconv.Itoa(l.Covers), strconv.Itoa(l.CoverSpare)})
	return t
}

func refusedTable(l List) sheet.Table {
	t := sheet.Table{Size: tableSize, Head: []string{"hole", "why there is no drawing"}}
	for _, r := range l.Rows {
		if len(r.Refused) > 0 {
			t.Rows = append(t.Rows, []string{r.Job.Hole.ID, strings.Join(r.Refused, "; ")})
		}
	}
	return t
}

// CSV returns the cut list for a spreadsheet: one row a hole, SI units in the
// column names.
func (l List) CSV(p Plan) []byte {
	var b strings.Builder
	w := csv.NewWriter(&b)
	head := []string{
		"hole", "state", "pane", "material", "thick_mm", "pane_width_mm", "pane_height_mm", "curved", "hole_left_mm", "hole_up_mm",
		"hole_width_mm", "hole_height_mm", "corner_mm", "rounding_mm", "route", "plug_width_mm", "plug_height_mm", "mass_kg", "drilled_mass_kg", "not_drawn", "plan",
	}
	mm := func(v unit.Length) string { return strconv.FormatFloat(v.Millimetres(), 'f', 2, 64) }
	rows := [][]string{head}
	weighed := map[string]bool{}
	for _, r := range l.Rows {
		j := r.Job
		if len(r.Refused) > 0 {
			row := make([]string, len(head))
			row[0], row[1], row[2], row[len(row)-2], row[len(row)-1] = j.Hole.ID, stateWord(j), j.Hole.Pane, strings.Join(r.Refused, "; "), p.Mark
			rows = append(rows, row)
			continue
		}
		whole, drilled := strconv.FormatFloat(j.Whole, 'f', 3, 64), strconv.FormatFloat(j.Mass, 'f', 3, 64)
		if weighed[j.Pane.ID] {
			whole, drilled = "", "" // so that the column adds up: a pane with several holes weighs once
		}
		weighed[j.Pane.ID] = true
		rows = append(rows, []string{
			j.Hole.ID, stateWord(j), j.Pane.ID, string(j.Material.Name), mm(j.Thick), mm(j.Face.Width), mm(j.Face.Height),
			strconv.FormatBool(j.Face.Curved), mm(j.Face.Left), mm(j.Face.Up), mm(j.Hole.Size.W), mm(j.Hole.Size.H), mm(j.Corner), mm(j.Rounding),
			string(j.Route), mm(j.Cover.Plug.W), mm(j.Cover.Plug.H), whole, drilled, "", p.Mark,
		})
	}
	// A strings.Builder does not fail, and no field can: the writer's error is always nil.
	_ = w.WriteAll(rows)
	return []byte(b.String())
}

package cut

import (
	"fmt"
	"slices"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/tell/table"
)

// listPages are the cut list over the arena: what is to be made, what exists,
// what is not allowed, spares.
func (p ShopOrder) listPages(l List, paper sheet.Paper) []*sheet.Drawing {
	return p.document(paper, "", 1, func(s *set) { s.listPages(l) })
}

func (s *set) listPages(l List) {
	work, exist := l.Sums()
	panes, covers := l.Spares()
	n := 0
	f := sheet.NewFlow(func() (*sheet.Drawing, sheet.Rect) {
		n++
		g := s.page(lying, fmt.Sprintf("cut-list-%d", n), "Cut list", marks{},
			sheet.Field{Name: "To make", Value: work.Words()}, sheet.Field{Name: "Exist already", Value: exist.Words()},
			sheet.Field{Name: "Spares", Value: say.Count(panes, "pane") + ", " + say.Count(covers, "cover")})
		return g.d, g.area
	})
	sys := s.Arena.Units
	section := func(head string, rows []ListRow, sum Sum) {
		if len(rows) == 0 {
			return
		}
		f.Heading(head)
		t := holeFields(s.Mark).Of(head, rows, sys).Shown()
		t.Add("all")
		t.Rows[len(rows)][len(t.Columns)-1] = table.Words(fmt.Sprintf("%.1f", sum.MassKG))
		t.Strong = append(make([]bool, len(rows)), true)
		f.Table(t, sheet.SizeTable)
	}
	rows := func(keep func(ListRow) bool) []ListRow {
		return slices.DeleteFunc(slices.Clone(l.Rows), func(r ListRow) bool { return !keep(r) })
	}
	section("To be made", rows(func(r ListRow) bool { return r.Work() == toMake }), work)
	section("Existing: nothing is cut", rows(func(r ListRow) bool { return r.Work() == exists }), exist)
	reasons := func(head, column string, of func(ListRow) []say.Sentence) {
		if list := rows(func(r ListRow) bool { return len(of(r)) > 0 }); len(list) > 0 {
			f.Heading(head)
			f.Table(reasonFields(column, of).Of(head, list, sys), sheet.SizeTable)
		}
	}
	reasons("Not drawn", "why there is no drawing", func(r ListRow) []say.Sentence { return r.Refused })
	reasons("NOT PASSED: not allowed as drawn", "why", func(r ListRow) []say.Sentence { return r.Job.NotPassed })
	reasons("NOT PROVED: the survey lacks something", "what", func(r ListRow) []say.Sentence { return r.Job.NotProved })
	f.Heading("Spare drilled panes and covers")
	o := l.Options
	f.Notes(fmt.Sprintf("At %.3g breaks a drilled pane and season, and %.3g covers lost or broken a hole and season, these spares together last a season with %.3g %% certainty (asked: %.3g %%; exact Poisson over all kinds, least mass to keep).",
		o.BreakRate, o.CoverRate, 100*l.Reached, 100*o.Certainty),
		"Pieces of one row differ by no more than the tolerances of the drawings, each from every other, so that any can stand in for any.")
	f.Table(spareFields().Of("Spares", slices.Concat(l.Panes, l.Covers), sys), sheet.SizeTable)
}

// Words says the sum in a few words.
func (s Sum) Words() string {
	return say.Count(s.Panes, "pane") + ", " + say.Count(s.Holes, "hole") + ", " + say.Count(s.Covers, "cover")
}

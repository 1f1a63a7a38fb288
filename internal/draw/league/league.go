// Package league answers: what does a league's office read about all its arenas in one
// book? The tables of package words, the arenas' values beside one another, and for each
// arena the best legal set on its map.
package league

import (
	"context"
	"fmt"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/words"
)

// Distances on the page, mm.
const (
	margin   = 16.0
	titleGap = 10.0
	rowHigh  = 7.0
	axisHigh = 18.0
)

// barsOnPage is how many arenas stand in one chart of values.
const barsOnPage = 24

// Book is what is printed, and for whom.
type Book struct {
	league.League
	Title   string
	Paper   sheet.Paper
	Creator string // program and release
}

// PDF returns the book and how many pages it has. It ends with ctx.
func (b Book) PDF(ctx context.Context) (data []byte, pages int, err error) {
	f := sheet.NewFlow(func() (*sheet.Drawing, sheet.Rect) {
		d := b.Paper.Portrait().Sheet("league", chart.Styles())
		d.Title = b.Title
		d.Add(sheet.LayerText, "head", sheet.Text{At: sheet.Pt(margin, margin), S: b.Title, VAlign: sheet.Top})
		return d, sheet.Rect{X: margin, Y: margin + titleGap, W: d.W - 2*margin, H: d.H - 2*margin - titleGap}
	})
	f.Notes(words.LeagueNotes(b.League)...)
	for _, p := range b.values() {
		d := p.Draw(f.Room().W, axisHigh+rowHigh*float64(len(p.Rows)))
		f.Need(d.H)
		f.Heading(d.Title)
		f.Drawing(d)
	}
	for _, t := range words.LeagueTables(b.League) {
		f.Heading(t.Title)
		f.Table(t.Shown(), sheet.SizeSmall)
	}
	marks := map[int][]sheet.Bookmark{}
	for i, r := range b.Rows {
		if err := ctx.Err(); err != nil {
			return nil, 0, err
		}
		b.arena(f, i, r, marks)
	}
	f.Heading("Cautions")
	f.Notes(glass.Cautions()...)
	var out []sheet.Page
	for i, d := range f.Sheets() {
		p := sheet.Page{Drawing: d, Bookmarks: marks[i]}
		d.Add(sheet.LayerText, "folio", sheet.Text{
			At: sheet.Pt(d.W-margin, d.H-margin/2), S: fmt.Sprintf("page %d of %d", i+1, len(f.Sheets())), Anchor: sheet.End, VAlign: sheet.Centre,
		})
		out = append(out, p)
	}
	data, err = sheet.PDF(ctx, sheet.Info{Title: b.Title, Subject: "Photo holes of a league's arenas", Creator: b.Creator}, out...)
	return data, len(out), err
}

// arena sets one arena: its best set on the map, and what to do for it.
func (b Book) arena(f *sheet.Flow, i int, r league.Row, marks map[int][]sheet.Bookmark) {
	a, ok := r.Answer.Get()
	of, known := r.Arena.Get()
	if !ok || !known {
		return
	}
	chosen := a.Chosen(of)
	status := map[string]rules.Status{}
	for _, h := range chosen.Holes {
		status[h.ID] = rules.Pass // the set was proved to keep the rules
	}
	d := chart.SmallMap(fmt.Sprintf("map-%d", i), chosen, status)
	f.Need(d.H + 4*titleGap)
	page := len(f.Sheets()) - 1
	marks[page] = append(marks[page], sheet.Bookmark{Title: r.Name()})
	f.Heading(r.Name())
	f.Drawing(d)
	f.Notes(words.LeagueVerdict(r))
}

// values are charts of the arenas' values: from today's to the proved bound, the best at
// the mark.
func (b Book) values() (out []chart.Intervals) {
	for i, r := range b.Rows {
		a, ok := r.Answer.Get()
		if !ok {
			continue
		}
		if n := len(out); n == 0 || len(out[n-1].Rows) == barsOnPage {
			out = append(out, chart.Intervals{
				Name: fmt.Sprintf("values-%d", i), Title: "Value of each arena: from what is cut today to the best legal set",
				Desc: "The value of what is cut today, of the best legal set, and the bound above which no set is.", Axis: "value, no unit",
			})
		}
		c := &out[len(out)-1]
		c.Rows = append(c.Rows, chart.Interval{Name: fmt.Sprint(len(c.Rows) + 1), Note: r.Name(), At: a.Value, Low: a.Today, High: max(a.Bound, a.Value)})
	}
	return out
}

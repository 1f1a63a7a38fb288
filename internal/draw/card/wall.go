package card

import (
	"context"
	"fmt"
	"slices"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/seat"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/tell/table"
)

// Wall is the seat sheet of a game, for the wall of the press room: who works which hole
// in which period.
type Wall struct {
	Season game.Season
	Game   game.Game
	Seats  []seat.Seat
}

// Table is the seats, a row a hole, a column a period.
func (w Wall) Table() table.Table {
	t := table.New("hole", "end")
	t.Columns[0].Name, t.Columns[1].Name = "hole", "end"
	for period := 1; period <= w.Game.Periods; period++ {
		t.Columns = append(t.Columns, table.Column{Head: fmt.Sprintf("period %d", period), Name: fmt.Sprintf("period_%d", period)})
	}
	t.Title = "Seats, " + w.Game.Teams()
	for _, hole := range w.Season.Holes {
		row := []string{hole, game.EndName(w.Season.EndOf(hole))}
		for period := 1; period <= w.Game.Periods; period++ {
			row = append(row, w.at(hole, period))
		}
		t.Add(row...)
	}
	return t
}

// at says who is at a hole in a period.
func (w Wall) at(hole string, period int) string {
	k := slices.IndexFunc(w.Seats, func(s seat.Seat) bool { return s.Hole == hole && s.Period == period })
	if k >= 0 {
		p, _ := w.Season.Person(w.Seats[k].Who)
		return p.Name
	}
	switch why := w.Season.WhyClosed(w.Game, hole); {
	case why != "" && period == 1: // once is enough
		return "closed: " + why
	case why != "":
		return "closed"
	}
	return "cover in"
}

// Attacks says who attacks which end, a line a period.
func (w Wall) Attacks() []string {
	var out []string
	for period := 1; period <= w.Game.Periods; period++ {
		line := fmt.Sprintf("Period %d", period)
		if at, ok := w.Game.At(game.PeriodStage(period)); ok {
			line += ", " + at.Format("15:04")
		}
		for team := range 2 {
			line += fmt.Sprintf("%s %s attack end %s", [2]string{":", ","}[team], w.Game.Team(team), game.EndName(w.Game.Ends.Attacks(team, period)))
		}
		out = append(out, line)
	}
	return out
}

// Day says when the stages of the day begin.
func (w Wall) Day() []string {
	var out []string
	for _, s := range w.Game.Day {
		out = append(out, s.At.Format("15:04")+"  "+s.Name)
	}
	return out
}

// The seat sheet's type, larger than a book's: it is read from two steps away. In
// millimetres.
const (
	wallTitle  = 9.0
	wallText   = 4.6
	wallTable  = 6.2
	wallMargin = 14.0
)

// WallPDF sets the seat sheet on one page, lying on its longer side.
func WallPDF(ctx context.Context, w Wall, o Options) ([]byte, error) {
	d := w.drawing(o)
	return sheet.PDF(ctx, sheet.Info{Title: d.Title, Subject: "who works which hole in which period", Creator: o.Creator}, sheet.Page{Drawing: d})
}

// drawing sets the sheet in the largest type in which everything has room.
func (w Wall) drawing(o Options) *sheet.Drawing {
	const smallest, stride = 0.5, 0.05
	for k := 1.0; ; k -= stride {
		if d, fits := w.set(o, k); fits || k < smallest {
			return d
		}
	}
}

// set sets the sheet in a scale of type, and reports whether it has room.
func (w Wall) set(o Options, k float64) (*sheet.Drawing, bool) {
	d := o.Paper.Landscape().Sheet("seats", chart.Styles().Merge(styles()))
	d.Title = "Seats, " + w.Game.Teams()
	g, _ := d.Group(sheet.LayerText, "")
	wide, y, text := d.W-2*wallMargin, wallMargin, k*wallText
	when := w.Game.Start.Format("Monday 2 January 2006, 15:04")
	if w.Game.Universal {
		when += " UTC"
	}
	line := func(class, s string, face sheet.Face, size float64) {
		g.Add(class, sheet.Text{At: sheet.Pt(wallMargin, y), S: face.Shorten(s, size, wide), Size: size, VAlign: sheet.Top})
		y += 1.5 * size
	}
	line("card-hole", w.Game.Teams(), sheet.Bold, k*wallTitle)
	line("note", when+"  "+w.Season.Arena.Name, sheet.Regular, text)
	y += 2
	l := sheet.FitTable(w.Table(), k*wallTable, wide)
	y += l.Draw(g, sheet.Pt(wallMargin, y), 0, l.Rows()) + 5*k
	half, end := wide*0.72, y
	for side, lines := range [][]string{w.Attacks(), w.Day()} {
		at := y
		for _, s := range lines {
			x, room := wallMargin+float64(side)*(half+4), [2]float64{half, wide - half - 4}[side]
			at += g.Paragraph("note", sheet.Regular, sheet.Pt(x, at), s, text, room, 1.3*text) + 0.6
		}
		end = max(end, at)
	}
	foot := d.H - wallMargin
	g.Add("caption", sheet.Text{At: sheet.Pt(wallMargin, foot), Size: sheet.SizeText, S: "The cover is in whenever nobody is at the hole. Nothing past the rink face during play. " + o.Creator})
	return d, end < foot-2*sheet.SizeText
}

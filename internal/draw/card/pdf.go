package card

import (
	"context"
	"errors"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// Options say how cards are set.
type Options struct {
	Units   unit.System
	Paper   sheet.Paper // four cards a sheet; the zero value: a page a card, for a phone
	Dark    bool        // light letters on a dark ground
	Creator string      // the program and its version
}

// PDF sets cards as a PDF, in their order.
func PDF(ctx context.Context, cards []Card, o Options) ([]byte, error) {
	if len(cards) == 0 {
		return nil, errors.New("no card to draw: nobody has a seat")
	}
	var pages []sheet.Page
	var page *sheet.Drawing
	for i, c := range cards {
		d := c.Drawing(o.Units, o.Dark)
		if o.Paper.W == 0 {
			pages = append(pages, sheet.Page{Drawing: d, Bookmarks: []sheet.Bookmark{{Title: c.Person.Name}}})
			continue
		}
		if i%4 == 0 {
			page = o.Paper.Portrait().Sheet("cards", chart.Styles().Merge(styles()))
			page.Title = "Cards of " + c.Game.Teams()
			pages = append(pages, sheet.Page{Drawing: page})
		}
		placeQuarter(page, d, i%4)
	}
	return sheet.PDF(ctx, sheet.Info{Title: "Cards, " + cards[0].Game.Teams(), Subject: "who works which hole, with what", Creator: o.Creator}, pages...)
}

// placeQuarter sets a card into a quarter of a sheet, as large as it has room, with lines
// to cut along.
func placeQuarter(page, card *sheet.Drawing, quarter int) {
	w, h := page.W/2, page.H/2
	scale := min(w/cardW, h/cardH, 1)
	x, y := float64(quarter%2)*w, float64(quarter/2)*h
	page.Place("cards", card, sheet.Pt(x+(w-scale*cardW)/2, y+(h-scale*cardH)/2), scale)
	if quarter == 0 {
		page.Add("cut", "card-cut", sheet.Line{A: sheet.Pt(w, 0), B: sheet.Pt(w, page.H)})
		page.Add("cut", "card-cut", sheet.Line{A: sheet.Pt(0, h), B: sheet.Pt(page.W, h)})
	}
}

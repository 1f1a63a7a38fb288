package book

import (
	"context"
	"fmt"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/cores"
)

// chapters sets the whole book. The error is ctx's.
func (c Content) chapters(ctx context.Context) ([]chapter, error) {
	s := c.setter()
	front, room := s.front()
	out := append([]chapter{front}, s.maps()...)
	for i, h := range c.Plan.Holes {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		cores.Tell(ctx, "setting the pages", float64(i)/float64(len(c.Plan.Holes)))
		out = append(out, s.hole(h))
	}
	out = append(out,
		s.chapter("kit", "Kit", s.kit), s.chapter("covers", "Covers and tethers", s.covers),
		s.chapter("rules", "Rule findings", s.rules), s.guardChapter(), s.sign())
	first := make([]int, len(out))
	n := 1
	for i, ch := range out {
		first[i] = n
		n += len(ch.pages)
	}
	contents(front.pages[0], room, out, first)
	number(out, n-1, c.stamp())
	return out, nil
}

// guardChapter ranks the holes and shows the sectors on the plan.
func (s setter) guardChapter() chapter {
	ch := s.chapter("guard", "Guard: what an open hole lets through", s.ranking)
	d, area := s.page("sectors", "Sectors to be kept clear while a cover is out")
	place(d, fitted(area, func(width float64) *sheet.Drawing {
		return chart.GuardMap(s.c.Arena, s.c.Plan.Guards, "", width)
	}), area)
	ch.pages = append(ch.pages, d)
	return ch
}

// number puts the page's number at its foot, outside the frame.
func number(chapters []chapter, total int, stamp string) {
	n := 0
	for _, ch := range chapters {
		for _, d := range ch.pages {
			n++
			d.Add(sheet.LayerFrame, "folio", sheet.Text{
				At: sheet.Pt(d.W-sheet.Margin, d.H-sheet.Margin/2), S: fmt.Sprintf("page %d of %d", n, total), Anchor: sheet.End, VAlign: sheet.Centre,
			})
			d.Desc = stamp
		}
	}
}

// stamp is the mark by which rinkpane cut --verify knows the plan of the book.
func (c Content) stamp() string { return cut.ShopOrder{Revision: c.Plan.Revision}.Stamp() }

// Print is a book as a PDF.
type Print struct {
	Data  []byte
	Pages int
	Lack  sheet.Lack // letters that its fonts do not hold
}

// PDF returns the book set in pages. It ends early with ctx's error when ctx ends.
func (c Content) PDF(ctx context.Context) (Print, error) {
	chapters, err := c.chapters(ctx)
	if err != nil {
		return Print{}, err
	}
	var out []sheet.Page
	var lack sheet.Lack
	holes := false
	for _, ch := range chapters {
		for i, d := range ch.pages {
			p := sheet.Page{Drawing: d}
			if i == 0 {
				if ch.level == 1 && !holes {
					holes = true
					p.Bookmarks = append(p.Bookmarks, sheet.Bookmark{Title: "Holes"})
				}
				p.Bookmarks = append(p.Bookmarks, sheet.Bookmark{Title: ch.title, Level: ch.level})
			}
			out, lack = append(out, p), lack.And(d.Lacking())
		}
	}
	data, err := sheet.PDF(ctx, sheet.Info{
		Title: "Arena book: " + c.Arena.Name, Subject: "Photo holes of " + c.Arena.Name + ", plan revision " + c.Mark,
		Keywords: c.stamp(), Creator: c.Options.Creator,
	}, out...)
	return Print{data, len(out), lack}, err
}

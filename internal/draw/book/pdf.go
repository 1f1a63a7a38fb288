package book

import (
	"context"
	"time"

	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/cores"
)

// bind sets the whole book, the cover first. The error is ctx's.
func (c Content) bind(ctx context.Context) ([]bound, error) {
	s := c.setter()
	out := []bound{{chapter: chapter{title: "Cover"}, pages: []*sheet.Drawing{s.cover()}}}
	all := s.chapters()
	for i, ch := range all {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		cores.Tell(ctx, "setting the pages", float64(i)/float64(len(all)))
		out = append(out, s.set(ch))
	}
	var pages []*sheet.Drawing
	first := make([]int, len(out))
	for i, ch := range out {
		first[i] = len(pages)
		pages = append(pages, ch.pages...)
	}
	front := front(out)
	s.contents(out[1].pages[0], out[1:], first[1:], front)
	s.number(pages, front)
	for _, ch := range out {
		for i, d := range ch.pages {
			ch.pages[i] = s.grid.onPaper(d)
		}
	}
	return out, nil
}

// front is how many pages stand before page 1: the cover and the summary.
func front(chapters []bound) int { return len(chapters[0].pages) + len(chapters[1].pages) }

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
	chapters, err := c.bind(ctx)
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
		Keywords: c.stamp(), Creator: c.Options.Creator, Date: c.dated(), Tagged: true, Front: front(chapters),
	}, out...)
	return Print{data, len(out), lack}, err
}

// dated is the book's date as given; zero when none is.
func (c Content) dated() time.Time {
	at, err := time.Parse(time.DateOnly, c.Options.Date)
	if err != nil {
		return time.Time{} // told on the cover as it was written
	}
	return at
}

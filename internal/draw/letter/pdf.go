package letter

import (
	"context"
	"errors"
	"fmt"

	"example.org/rinkpane/internal/draw/sheet"
)

// leastPaper is the width in millimetres of the narrowest paper that has room: a4 has
// 210, letter 215.9.
const leastPaper = 209.0

// Print is a letter as a PDF.
type Print struct {
	Data []byte
	Lack sheet.Lack // letters that its fonts do not hold
}

// Room refuses paper that is too small for a letter.
func Room(paper sheet.Paper) error {
	if paper.Portrait().W < leastPaper {
		return fmt.Errorf("%s: too small for a letter; take a4, letter or larger", paper.Name)
	}
	return nil
}

// PDF returns the letter as one page. It refuses paper that is too small, and more
// new holes than one page has room for. It ends with ctx.
func (c Content) PDF(ctx context.Context) (Print, error) {
	if err := Room(c.Options.Paper); err != nil {
		return Print{}, err
	}
	d, ok := c.page()
	if !ok {
		return Print{}, errors.New("too many new holes for one page: ask for fewer, or on larger paper")
	}
	data, err := sheet.PDF(ctx, sheet.Info{
		Title: d.Title, Subject: "What is asked, why, at what cost and risk", Creator: c.Options.Creator,
	}, sheet.Page{Drawing: d})
	return Print{data, d.Lacking()}, err
}

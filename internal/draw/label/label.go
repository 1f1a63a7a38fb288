// Package label answers: how does a phone know a cover? It sets sheets of labels, one
// for each cover, with the cover's id, its hole and a QR code that names both.
//
// The QR code (ISO/IEC 18004, error correction M) holds an address: whoever points a
// phone at a cover comes to the page at the glass. Assumption: label papers are as cut as their
// makers say; print at full size, without fitting to the page.
package label

import (
	"context"
	"fmt"
	"image/color"
	"net/url"
	"strings"

	"github.com/boombuler/barcode"
	"github.com/boombuler/barcode/qr"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/form"
)

// Paper is a sheet of labels, from its top left corner; lengths in millimetres.
type Paper struct {
	Name         string
	sheet        string // the paper's own name
	columns, row int
	w, h         float64 // of a label
	x, y         float64 // of the first label's corner
	across       float64 // from a label's left edge to the next one's
}

// Papers lists the usual label papers, named for their paper and how many labels are on
// it: sizes as sold, from memory, no maker's number.
func Papers() []Paper {
	const inch = 25.4
	return []Paper{
		{"a4-24", "a4", 3, 8, 70, 37, 0, 0.5, 70},
		{"a4-14", "a4", 2, 7, 99.1, 38.1, 4.65, 15.15, 101.6},
		{"letter-30", "letter", 3, 10, 2.625 * inch, inch, 3.0 / 16 * inch, inch / 2, 2.75 * inch},
		{"letter-10", "letter", 2, 5, 4 * inch, 2 * inch, 5.0 / 32 * inch, inch / 2, 4.1875 * inch},
	}
}

// ParsePaper reads a label paper's name.
func ParsePaper(s string) (Paper, error) {
	var names []string
	for _, p := range Papers() {
		if p.Name == s {
			return p, nil
		}
		names = append(names, p.Name)
	}
	return Paper{}, fmt.Errorf("label paper %s: write %s", form.Quote(s), form.Choices(names))
}

// Label is what one label says.
type Label struct {
	Cover, Hole, Arena string
	Says               string // what the QR code holds
}

// Address is what a cover's QR code holds: the page at the glass on the desk at base, as
// "https://desk.example/phone/harbour-hall#B1-1". Without a base it names the two only.
func Address(base, arena, cover string) string {
	if base == "" {
		return arena + " " + cover
	}
	return strings.TrimSuffix(base, "/") + "/phone/" + url.PathEscape(arena) + "#" + url.PathEscape(cover)
}

// Millimetres of a label that its cutter may be off by, and of its parts.
const (
	margin   = 2.5
	quiet    = 4 // modules of white that a QR code needs around it, a count
	roundOff = 2.0
	textGap  = 2.0
	bleed    = 0.03 // rows of modules reach so far into the next, or a hairline stands between them
)

// Sheets sets labels on a paper, row by row; another sheet follows when one is full.
func Sheets(labels []Label, p Paper) ([]*sheet.Drawing, error) {
	paper, err := sheet.ParsePaper(p.sheet)
	if err != nil {
		return nil, err
	}
	var out []*sheet.Drawing
	each := p.columns * p.row
	for i, l := range labels {
		if i%each == 0 {
			d := paper.Portrait().Sheet(fmt.Sprintf("labels-%d", len(out)+1), styles())
			d.Title = fmt.Sprintf("Labels of covers, sheet %d", len(out)+1)
			out = append(out, d)
		}
		n := i % each
		at := sheet.Rect{X: p.x + float64(n%p.columns)*p.across, Y: p.y + float64(n/p.columns)*p.h, W: p.w, H: p.h}
		if err := l.draw(out[len(out)-1], at); err != nil {
			return nil, fmt.Errorf("label of cover %s: %w", l.Cover, err)
		}
	}
	return out, nil
}

// PDF sets labels as a PDF to print.
func PDF(ctx context.Context, labels []Label, p Paper, creator string) ([]byte, error) {
	sheets, err := Sheets(labels, p)
	if err != nil {
		return nil, err
	}
	pages := make([]sheet.Page, len(sheets))
	for i, d := range sheets {
		pages[i] = sheet.Page{Drawing: d}
	}
	return sheet.PDF(ctx, sheet.Info{Title: "Labels of covers", Subject: "one for each cover", Creator: creator}, pages...)
}

func styles() sheet.Stylesheet {
	return sheet.Base().Merge(sheet.Stylesheet{
		{Class: "module", Style: sheet.Style{Fill: sheet.Ink}},
		{Class: "cover", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Bold}},
		{Class: "edge", Style: sheet.Style{Stroke: sheet.Slate.Alpha(0.4), Width: sheet.W25}},
	})
}

// draw sets one label: the code to the left, the words beside it.
func (l Label) draw(d *sheet.Drawing, at sheet.Rect) error {
	code, err := qr.Encode(l.Says, qr.M, qr.Auto)
	if err != nil {
		return err
	}
	g, _ := d.Group(sheet.LayerText, "")
	g.Add("edge", sheet.RoundRect(at.Inset(roundOff/2), roundOff))
	side := at.H - 2*margin
	modules(g, code, sheet.Rect{X: at.X + margin, Y: at.Y + margin, W: side, H: side})
	x, room := at.X+margin+side+textGap, at.W-side-textGap-2*margin
	size := sheet.Bold.FitSize(l.Cover, at.H/3, sheet.SizeText, room)
	g.Add("cover", sheet.Text{At: sheet.Pt(x, at.Y+at.H*0.42), S: sheet.Bold.Shorten(l.Cover, size, room), Size: size})
	for i, s := range []string{"hole " + l.Hole, l.Arena, "in unless somebody works it"} {
		g.Add("note", sheet.Text{At: sheet.Pt(x, at.Y+at.H*0.42+4*float64(i+1)), S: sheet.Regular.Shorten(s, sheet.SizeSmall, room), Size: sheet.SizeSmall})
	}
	return nil
}

// modules fills the dark modules of a code in a square with its quiet zone, those side by
// side in one piece, so that no hairline stands between them.
func modules(g *sheet.Group, code barcode.Barcode, in sheet.Rect) {
	n := code.Bounds().Dx()
	step := in.W / float64(n+2*quiet)
	dark := func(x, y int) bool { return x < n && color.GrayModel.Convert(code.At(x, y)).(color.Gray).Y < 128 }
	for y := range n {
		for x := 0; x < n; x++ {
			from := x
			for dark(x, y) {
				x++
			}
			if x > from {
				g.Add("module", sheet.RoundRect(sheet.Rect{X: in.X + float64(from+quiet)*step, Y: in.Y + float64(y+quiet)*step, W: float64(x-from) * step, H: step + bleed}, 0))
			}
		}
	}
}

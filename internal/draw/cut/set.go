package cut

import (
	"fmt"
	"math"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/words"
)

// set is the sheets of one document while they are drawn, in their order.
type set struct {
	ShopOrder
	paper  sheet.Paper
	about  string  // of which pane, hole or window the document is, for its number; "" of the arena
	growth float64 // how many times larger the next sheet is printed than it is laid out
	of     int     // how many sheets the document has
	sheets []*sheet.Drawing
}

// passes is how often a document is drawn at most until the number of sheets that stands
// on them is the one it has: once as usual, once to say how many it is, once to spare.
const passes = 3

// document draws a document's sheets on a paper and returns them as they are printed.
// It is drawn once when it has as many sheets as usual: one for each of its parts.
func (p ShopOrder) document(paper sheet.Paper, about string, usual int, draw func(*set)) []*sheet.Drawing {
	s := &set{ShopOrder: p, paper: paper, about: about, of: usual}
	for range passes {
		s.sheets, s.growth = nil, paper.Growth()
		draw(s)
		if len(s.sheets) == s.of {
			break
		}
		s.of = len(s.sheets)
	}
	for i, d := range s.sheets {
		s.sheets[i] = d.Grown()
	}
	return s.sheets
}

// tighter are the shares of their usual size down to which letters are set smaller before
// a part of a document runs over to another sheet: own choice.
var tighter = [...]float64{1, 0.93, 0.86}

// part draws what belongs together on one sheet if it has room there with letters a
// little smaller, else on as many as it takes.
func (s *set) part(draw func()) {
	from := len(s.sheets)
	for _, k := range tighter {
		s.sheets, s.growth = s.sheets[:from], k*s.paper.Growth()
		if draw(); len(s.sheets) <= from+1 {
			return
		}
	}
	s.sheets, s.growth = s.sheets[:from], s.paper.Growth()
	draw()
}

// page is one sheet being drawn: its drawing and the area left inside the frame.
type page struct {
	d    *sheet.Drawing
	area sheet.Rect
	sys  unit.System
}

// pagePad is the white between frame and drawing, mm.
const pagePad = 5.0

// way is how a paper lies.
type way bool

const (
	lying   way = false
	upright way = true
)

// ways are both, the usual one first.
func ways() []way { return []way{lying, upright} }

// page frames the next sheet of the document; what a job says of itself across its
// sheets stands on it.
func (s *set) page(w way, name, title string, m marks, fields ...sheet.Field) page {
	paper := s.paper.Landscape()
	if w == upright {
		paper = s.paper.Portrait()
	}
	return s.frame(paper.Laid(name, s.growth, styles()), title, m, fields...)
}

// probe frames a sheet that is no part of the document, to learn the room on it.
func (s *set) probe(w way, m marks, fields ...sheet.Field) page {
	scratch := *s
	scratch.sheets = nil
	return scratch.page(w, "", "", m, fields...)
}

// frame takes a drawing for the next sheet and gives it frame, title block and check bars.
func (s *set) frame(d *sheet.Drawing, title string, m marks, fields ...sheet.Field) page {
	s.sheets = append(s.sheets, d)
	d.Layers = layers()
	d.Title, d.Desc = title, s.Stamp()
	area := d.Frame(sheet.TitleBlock{
		Title: title, Subject: s.subject(), Caution: strings.Join(append([]string{words.ApprovalSentence(s.Approval)}, glass.Cautions()...), " "),
		Fields: append(fields, sheet.Field{Name: "Plan revision", Value: s.Mark}),
		Issue:  append(s.fields(s.about), sheet.Field{Name: "Sheet", Value: fmt.Sprintf("%d of %d", len(s.sheets), s.of)}),
	})
	d.CheckBars(sheet.LayerFrame, d.Border())
	g := page{d: d, area: area.Inset(pagePad), sys: s.Arena.Units}
	m.word = s.unapproved(m.word)
	g.across(m)
	return g
}

// column starts a column of text in a box on a sheet; what does not fit goes
// on to sheets of its own.
func (s *set) column(g page, box sheet.Rect, w way, m marks) *sheet.Flow {
	return sheet.FlowOn(g.d, box, func() (*sheet.Drawing, sheet.Rect) {
		next := s.page(w, g.d.Name+"-more", g.d.Title+", continued", m)
		return next.d, next.area
	})
}

// scales are those of ISO 5455:1979 (from memory) for what our sheets show, largest
// first, sheet over part.
func scales() []float64 {
	return []float64{10, 5, 2, 1, 1.0 / 2, 1.0 / 5, 1.0 / 10, 1.0 / 20, 1.0 / 50, 1.0 / 100, 1.0 / 200, 1.0 / 500, 1.0 / 1000}
}

// scaleFor returns the largest scale not above most at which a part fits a box on the
// next sheet, in millimetres as it is laid out, and the smallest there is when none does.
func (s *set) scaleFor(w, h unit.Length, boxW, boxH, most float64) (k float64) {
	for _, k = range scales() {
		if k <= most && w.Millimetres()*k <= boxW*s.growth && h.Millimetres()*k <= boxH*s.growth {
			break
		}
	}
	return k
}

// largest finds the way of the paper on which a view has the largest scale, by a function
// that tells it. Letters are set smaller for it, where that brings a larger scale.
func (s *set) largest(ways []way, scale func(way) float64) (k float64, as way) {
	usual := s.growth
	best := usual
	for _, t := range tighter {
		s.growth = min(usual, t*s.paper.Growth())
		for _, w := range ways {
			if got := scale(w); got > k {
				k, as, best = got, w, s.growth
			}
		}
	}
	s.growth = best
	return k, as
}

// laid is a scale as a sheet is laid out, before it is printed larger.
func (g page) laid(scale float64) float64 { return scale / g.d.Growth }

// scaleText prints a scale: "1:20", "2:1".
func scaleText(s float64) string {
	if s >= 1 {
		return fmt.Sprintf("%.3g:1", s)
	}
	return fmt.Sprintf("1:%.4g", math.Round(1/s))
}

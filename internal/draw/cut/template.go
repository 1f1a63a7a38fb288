package cut

import (
	"math"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
)

// Sizes of a template in millimetres.
const (
	barHeight   = 4.0
	barMetric   = 100.0
	barUpright  = 50.0
	barInches   = 4 * 25.4
	templateTop = 34.0 // bars and notes above the outline
	around      = 21.0 // paper left above and below the hole's outline
	beside      = 9.0  // and to its sides
	leastWide   = 150.0
	templateEnd = 4.0  // a line of notes below
	wordsAside  = 3.0  // the words stand so far right of the upright centre line
	wordsReach  = 16.0 // and reach so far above and below the level one
	wordsBelow  = 16.0 // more below, where a small hole has no room for its name and height
)

// Full is the paper on which a template is one sheet, however large.
const Full = "full"

// Template returns the full-size template of a hole on a paper, as one sheet
// where it fits and else as tiles with register marks; paper Full gives one
// sheet as large as needed. Two bars of 100 mm and 4 in prove the print's scale.
func (p ShopOrder) Template(j Job, paper string) ([]*sheet.Drawing, error) {
	w := max(j.Hole.Size.W.Millimetres()+2*beside, leastWide)
	h := templateTop + j.Hole.Size.H.Millimetres() + 2*around + templateEnd
	if !p.roomInside(j) {
		h += wordsBelow
	}
	if paper == Full {
		return []*sheet.Drawing{p.template(j, w+sheet.FilingMargin+sheet.Margin+2*pagePad, h+2*sheet.Margin+2*pagePad+blockHeight)}, nil
	}
	size, err := sheet.ParsePaper(paper)
	if err != nil {
		return nil, err
	}
	for _, s := range []sheet.Paper{size.Portrait(), size.Landscape()} {
		if w+sheet.FilingMargin+sheet.Margin+2*pagePad <= s.W && h+2*sheet.Margin+2*pagePad+blockHeight <= s.H {
			return []*sheet.Drawing{p.template(j, s.W, s.H)}, nil
		}
	}
	whole := p.template(j, w+sheet.FilingMargin+sheet.Margin+2*pagePad, h+2*sheet.Margin+2*pagePad+blockHeight)
	return whole.Tile(sheet.Tiling{Paper: size})
}

// blockHeight is room enough for a title block with its cautions on a narrow sheet, mm.
const blockHeight = 54.0

func (p ShopOrder) template(j Job, w, h float64) *sheet.Drawing {
	paper := sheet.Paper{W: w, H: h}
	return p.document(paper, j.Hole.ID, 1, func(s *set) {
		s.growth = 1 // the outline is full size whatever the paper
		g := s.frame(paper.Laid("template", 1, styles()), "Hole "+j.Hole.ID+": template, full size", j.marks(),
			sheet.Field{Name: "Pane", Value: j.Pane.ID}, sheet.Field{Name: "Scale", Value: "1:1"}, sheet.Field{Name: "Route", Value: string(j.Route)})
		t := template{page: g, job: j, roomInside: p.roomInside(j)}
		t.bars()
		t.outline()
	})[0]
}

type template struct {
	page
	job        Job
	roomInside bool
}

// words are a template's name for its hole and, in three lines, how high it stands.
func (j Job) words(g page) (name string, say []string) {
	return "Hole " + j.Hole.ID, []string{"this line: " + g.place(j.Face.Up), "above the top of the boards,", g.place(j.Hole.Height) + " above the ice"}
}

// roomInside reports whether a hole's outline has room for the words to the
// right of its centre, clear of the rounded corner and the pilot hole.
func (p ShopOrder) roomInside(j Job) bool {
	name, say := j.words(page{sys: p.Arena.Units})
	x := sheet.Bold.Width(name, sheet.SizeTitle)
	for _, s := range say {
		x = max(x, sheet.Regular.Width(s, sheet.SizeText))
	}
	x += wordsAside + 2
	w, h, r := j.Hole.Size.W.Millimetres()/2, j.Hole.Size.H.Millimetres()/2, j.Corner.Millimetres()
	switch dx, dy := x-(w-r), wordsReach-(h-r); {
	case x > w || wordsReach > h:
		return false
	case j.Pilot() > 0:
		return x <= w-2*r || wordsReach <= h-2*r
	default:
		return dx <= 0 || dy <= 0 || math.Hypot(dx, dy) <= r
	}
}

// bars draws the check bars, two along and one upright, filled from outer edge to outer edge, and what
// to do with them.
func (t template) bars() {
	g, text := t.group(sheet.LayerEngrave), t.group(sheet.LayerText)
	y := t.area.Y
	for _, b := range []struct {
		long  float64
		label string
	}{{barMetric, "100 mm"}, {barInches, "4 in"}} {
		g.Add("bar", sheet.RoundRect(sheet.Rect{X: t.area.X, Y: y, W: b.long, H: barHeight}, 0))
		text.Add("note", sheet.Text{At: sheet.Pt(t.area.X+barInches+4, y+barHeight/2), S: b.label, VAlign: sheet.Centre})
		y += barHeight + 3
	}
	upright := sheet.Rect{X: t.area.X + t.area.W - barHeight, Y: t.area.Y + templateTop + 2, W: barHeight, H: barUpright}
	g.Add("bar", sheet.RoundRect(upright, 0))
	text.Add("note", sheet.Text{At: sheet.Pt(upright.X-1, upright.Y), S: "50 mm", Anchor: sheet.End, VAlign: sheet.Top})
	y += 1
	use := "Then cut out the template and lay it on the shooting side."
	switch {
	case t.job.Material.MadeToOrder():
		use = "Then lay the template on the delivered pane: FOR CHECKING ONLY, NEVER CUT THIS PANE."
	case t.job.Route == Order:
		use = "Then lay the template on the delivered pane, to check it."
	}
	for _, s := range []string{
		"Measure all bars, outer edge to outer edge, before cutting. If one is off by more than 0.3 mm (1/64 in), the print is not full size: print again at 100 %, without fitting to the page.",
		use,
	} {
		y += text.Paragraph("note", sheet.Regular, sheet.Pt(t.area.X, y), s, sheet.SizeText, t.area.W, lineHeight)
	}
}

// outline draws the hole with its pilot holes and the lines that place it.
func (t template) outline() {
	j := t.job
	w, h, r := j.Hole.Size.W.Millimetres(), j.Hole.Size.H.Millimetres(), j.Corner.Millimetres()
	c := sheet.Pt(t.area.X+t.area.W/2, t.area.Y+templateTop+around+h/2)
	hole := rim(c, j.Hole.Size, 1)
	t.group(workOf(j.Exists()).layer()).Add("cut-line", sheet.RoundRect(hole, r))
	datum := t.group(sheet.LayerDatum)
	left, right := hole.X-beside+4, hole.X+w+beside-4
	datum.Add("centre-line", sheet.Line{A: sheet.Pt(left, c.Y), B: sheet.Pt(right, c.Y)})
	datum.Add("centre-line", sheet.Line{A: sheet.Pt(c.X, hole.Y-around+5), B: sheet.Pt(c.X, hole.Y+h+around-5)})
	if j.Pilot() > 0 {
		j.drill(t.group(sheet.LayerDrill), hole, r)
	}
	t.places(hole, c)
}

// places says beside the centre lines how far they are from the pane's edges.
func (t template) places(hole sheet.Rect, c sheet.Point) {
	g := t.group(sheet.LayerText)
	f := t.job.Face
	name, say := t.job.words(t.page)
	foot := hole.Y + hole.H + 7
	if t.roomInside {
		for i, s := range say {
			g.Add("note", sheet.Text{At: sheet.Pt(c.X+wordsAside, c.Y+3+lineHeight*float64(i)), S: s, VAlign: sheet.Top})
		}
		g.Add("title", sheet.Text{At: sheet.Pt(c.X+wordsAside, c.Y-6), S: name})
	} else {
		y := hole.Y + hole.H + around - 2
		size := sheet.Bold.FitSize(name, sheet.SizeTitle, sheet.SizeText, t.area.W)
		g.Add("title", sheet.Text{At: sheet.Pt(c.X, y), S: name, Size: size, Anchor: sheet.Middle, VAlign: sheet.Top})
		for i, s := range []string{strings.Replace(say[0], "this", "level", 1) + " " + say[1], say[2]} {
			g.Add("note", sheet.Text{At: sheet.Pt(c.X, y+8+lineHeight*float64(i)), S: s, Anchor: sheet.Middle, VAlign: sheet.Top})
		}
	}
	g.Add("note", sheet.Text{At: sheet.Pt(c.X-2, foot), S: t.place(t.job.front(f.Left)) + " from the left edge", Anchor: sheet.End, VAlign: sheet.Top})
	g.Add("note", sheet.Text{At: sheet.Pt(c.X+2, foot), S: t.place(t.job.front(f.Right())) + " from the right edge", VAlign: sheet.Top})
	g.Add("head", sheet.Text{At: sheet.Pt(c.X+3, hole.Y-12), S: "UP, shooting side toward you"})
	tip := sheet.Pt(c.X, hole.Y-around+2)
	g.Add("bar", sheet.Polygon(tip, tip.Polar(6, -math.Pi/2-0.35), tip.Polar(6, -math.Pi/2+0.35)))
}

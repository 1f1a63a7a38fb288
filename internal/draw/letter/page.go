package letter

import (
	"strconv"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// Distances on the page, mm.
const (
	margin   = 16.0
	gap      = 7.0 // between columns
	mapWidth = 120.0
	signHigh = 30.0
	footHigh = 4.0
)

// Type on the page: as large as lets everything stand on it, no smaller than what
// people read without glasses at arm's length.
const (
	largest  = 1.1
	smallest = 0.8
	stride   = 0.05
)

// page sets everything on one page, in the largest type in which it has room, which
// grows with the paper; ok is false when it has none.
func (c Content) page() (d *sheet.Drawing, ok bool) {
	for _, growth := range []float64{c.Options.Paper.Growth(), 1} {
		for k := largest; k >= smallest; k -= stride {
			if d, spare := c.set(k, growth); spare >= 0 {
				return d.Grown(), true
			}
		}
	}
	return nil, false
}

// set sets the page in a scale of type on a paper that is printed larger by a growth, and
// returns the height left over, in mm.
func (c Content) set(k, growth float64) (*sheet.Drawing, float64) {
	d := c.Options.Paper.Portrait().Laid("letter", growth, chart.Styles().Merge(styles()))
	d.Title = "Photo holes at " + c.Answer.Arena.Name
	wide := d.W - 2*margin
	g, _ := d.Group(sheet.LayerText, "")
	top := &column{g, k, margin, margin, wide}
	c.head(top)

	picture := chart.PlanMap(c.small(), mapWidth)
	d.Place("map", picture, sheet.Pt(margin, top.y), 1)
	side := top.part(mapWidth+gap, wide-mapWidth-gap)
	side.section("Why", words.StepWhy(c.Step))
	side.section("Gain over the pane", words.GainInShort(c.Gains))
	side.section("Risk", words.RiskInShort(c.Guards, c.Options.Units))
	top.y = max(top.y+picture.H, side.y) + 1
	top.table(words.Asked(c.Step, c.Options.Units))

	half := (wide - gap) / 2
	left, right := top.part(0, half), top.part(half+gap, half)
	left.heading("Cost")
	left.table(words.StepsThatMatter(c.Answer, c.Step, c.Options.Units))
	left.text(words.CostNote(c.Answer))
	left.section("How sure", words.HowSure(c.Answer, c.Step))
	right.section("Cautions", glass.Cautions()...)
	right.section("Whom to ask", words.WhomToAsk()...)

	foot := d.H - margin - footHigh
	c.sign(&column{g, k, margin, foot - signHigh, wide})
	d.Add(sheet.LayerText, "caption", sheet.Text{At: sheet.Pt(margin, d.H-margin), S: c.foot()})
	return d, foot - signHigh - max(left.y, right.y)
}

// small is what the small map shows: the step's holes alone, the new ones by their
// numbers in the table.
func (c Content) small() chart.Content {
	p := chart.OfStep(c.Answer, c.Step, c.Options.Units)
	p.Bare, p.Key, p.Notes, p.Permitted, p.Undecided = true, true, nil, nil, nil
	p.Arena.Windows, p.Arena.Zones = nil, nil
	n := 0
	for _, h := range c.Step.Story.Each {
		if !h.IsCut() {
			n++
			p.Names[h.Hole.ID] = strconv.Itoa(n)
		}
	}
	return p
}

func (c Content) head(col *column) {
	name := c.Answer.Arena.Name
	if place := c.Answer.Arena.Place; place != "" {
		name += ", " + place
	}
	col.line("letter-over", "For the manager of "+name, sheet.Regular, sheet.SizeText)
	col.line("letter-title", "Photo holes in the protective glass", sheet.Bold, 6)
	col.paragraph("note", words.AskedInShort(c.Answer, c.Step), sheet.SizeHead)
	col.y += 2
}

// sign sets the answer's boxes and the lines to sign on.
func (c Content) sign(col *column) {
	col.heading("Answer")
	x := col.x
	for _, box := range []string{"agreed", "agreed, on conditions:", "not agreed"} {
		col.g.Add("letter-box", sheet.RoundRect(sheet.Rect{X: x, Y: col.y, W: 3, H: 3}, 0))
		col.g.Add("note", sheet.Text{At: sheet.Pt(x+4.5, col.y+1.5), S: box, VAlign: sheet.Centre})
		x += 30
		if box != "agreed" {
			x += 70
		}
	}
	col.y += 12
	for i, line := range []string{"for the rink: name, signature", "date", "asked by: name, signature", "date"} {
		w := []float64{0.33, 0.17, 0.33, 0.17}[i] * col.w
		at := col.x + []float64{0, 0.33, 0.5, 0.83}[i]*col.w
		col.g.Add("letter-line", sheet.Line{A: sheet.Pt(at, col.y), B: sheet.Pt(at+w-4, col.y)})
		col.g.Add("caption", sheet.Text{At: sheet.Pt(at, col.y+1.2), S: line, VAlign: sheet.Top})
	}
}

func (c Content) foot() string {
	return "arena text " + c.Options.Mark + ", " + c.Options.Creator
}

// column is a part of the page that is filled downward.
type column struct {
	g       *sheet.Group
	k       float64 // scale of type
	x, y, w float64 // mm
}

// part returns a column beside others, from the height reached.
func (c *column) part(in, w float64) *column { return &column{c.g, c.k, c.x + in, c.y, w} }

func (c *column) heading(s string) {
	c.y += 1.5 * c.k
	c.line("head", s, sheet.Bold, sheet.SizeHead)
}

func (c *column) section(title string, lines ...string) {
	c.heading(title)
	for _, s := range lines {
		c.text(s)
	}
}

func (c *column) text(s string) { c.paragraph("note", s, sheet.SizeText) }

// leading is the distance between baselines as a share of the type size.
const leading = 1.3

func (c *column) paragraph(class, s string, size float64) {
	size *= c.k
	c.y += c.g.Paragraph(class, sheet.Regular, sheet.Pt(c.x, c.y), s, size, c.w, leading*size) + 0.6
}

func (c *column) line(class, s string, face sheet.Face, size float64) {
	size *= c.k
	c.g.Add(class, sheet.Text{At: sheet.Pt(c.x, c.y), S: face.Shorten(s, size, c.w), Size: size, VAlign: sheet.Top})
	c.y += 1.5 * size
}

func (c *column) table(t table.Table) {
	l := sheet.FitTable(t, sheet.SizeTable*c.k, c.w)
	c.y += l.Draw(c.g, sheet.Pt(c.x, c.y), 0, l.Rows()) + 1.5
}

func styles() sheet.Stylesheet {
	return sheet.Stylesheet{
		{Class: "letter-over", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Regular}},
		{Class: "letter-title", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Bold}},
		{Class: "letter-line", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W25}},
		{Class: "letter-box", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W35}},
	}
}

package cut

import (
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/words"
)

// Sizes of a drawing for a machine, mm.
const (
	outlineMargin = 60.0  // white round it
	leastMachine  = 180.0 // its words have at least so much width
	wordsPerPart  = 130.0 // a part so wide has words of the usual size, a wider one larger
)

// machine is a drawing at full size for a shop's or a factory's machine: x and y
// are 0 at the lower left corner of its area, and bars beside it show its scale.
type machine struct {
	page
	k float64 // how many times the usual size its words have
}

// about is what a machine's drawing says of itself in words.
type about struct {
	name, title string
	lines       []string
	why         []say.Sentence // what it says on a layer of its own, apart from what a machine follows
}

// machineSheet is a drawing for a machine with room for so many millimetres of
// parts, the words above it.
func (p ShopOrder) machineSheet(w, h float64, a about) machine {
	m := machine{page{sys: p.Arena.Units}, max(1, min(w, h)/wordsPerPart)}
	wide, line := max(w, leastMachine), lineHeight*m.k
	a.lines = append(a.lines, "Full size, in millimetres. x and y are 0 at the mark DATUM.", p.Stamp(), words.ApprovalSentence(p.Approval))
	a.lines = append(a.lines, glass.Cautions()...)
	size := sheet.SizeText * m.k
	count := 0
	for _, s := range a.lines {
		count += len(sheet.Regular.Wrap(s, size, wide))
	}
	for _, s := range a.why {
		count += len(sheet.Regular.Wrap(s.In(m.sys), size, wide))
	}
	head := line * float64(count+1)
	m.d = sheet.New(a.name, wide+2*outlineMargin, head+h+2*outlineMargin, styles())
	m.d.Layers, m.d.Title, m.d.Desc = layers(), a.title, p.Stamp()
	m.d.Datum = sheet.Pt(outlineMargin, outlineMargin)
	m.area = sheet.Rect{X: outlineMargin, Y: outlineMargin + head, W: w, H: h}
	y := outlineMargin / 2
	for _, s := range a.why {
		y += m.group(statusLayer).Paragraph("status", sheet.Bold, sheet.Pt(outlineMargin, y), s.In(m.sys), size, wide, line)
	}
	for _, s := range a.lines {
		y += m.group(sheet.LayerText).Paragraph("note", sheet.Regular, sheet.Pt(outlineMargin, y), s, size, wide, line)
	}
	m.bars()
	return m
}

// text sets a line of words in the drawing's own size.
func (m machine) text(layer string, at sheet.Point, s string) {
	m.group(layer).Add("note", sheet.Text{At: at, S: s, Size: sheet.SizeText * m.k, VAlign: sheet.Top})
}

// bars draws a bar of 100 mm along either side, from the datum, and marks the datum.
func (m machine) bars() {
	g := m.group(sheet.LayerText)
	foot := m.area.Y + m.area.H
	tick := func(a, b sheet.Point) { g.Add("edge", sheet.Line{A: a, B: b}) }
	y, x := foot+outlineMargin/2, m.area.X-outlineMargin/2
	tick(sheet.Pt(m.area.X, y), sheet.Pt(m.area.X+barMetric, y))
	tick(sheet.Pt(x, foot), sheet.Pt(x, foot-barMetric))
	for _, at := range []float64{0, barMetric} {
		tick(sheet.Pt(m.area.X+at, y-2), sheet.Pt(m.area.X+at, y+2))
		tick(sheet.Pt(x-2, foot-at), sheet.Pt(x+2, foot-at))
	}
	g.Add("note", sheet.Text{At: sheet.Pt(m.area.X+barMetric+3, y), S: "both bars 100 mm", Size: sheet.SizeText * min(m.k, 3), VAlign: sheet.Centre})
	d := m.group(sheet.LayerDatum)
	d.Add("edge", sheet.Line{A: sheet.Pt(m.area.X-6, foot), B: sheet.Pt(m.area.X, foot)})
	d.Add("edge", sheet.Line{A: sheet.Pt(m.area.X, foot), B: sheet.Pt(m.area.X, foot+6)})
	d.Add("note", sheet.Text{At: sheet.Pt(m.area.X+1, foot+3), S: "DATUM 0, 0", Size: sheet.SizeText * min(m.k, 3), VAlign: sheet.Top})
}

// aboutJob says what a machine's drawing of a job is of.
func (p ShopOrder) aboutJob(j Job, name, title string, lines ...string) about {
	a := about{name: name, title: "Hole " + j.Hole.ID + ": " + title + ", full size"}
	a.lines = append(a.lines, a.title, p.subject()+", pane "+j.Pane.ID+", "+string(j.Material.Name)+", route "+string(j.Route)+", plan "+p.Mark)
	a.lines = append(a.lines, lines...)
	if j.Material.MadeToOrder() {
		a.lines = append(a.lines, "ORDER MADE: NEVER CUT "+strings.ToUpper(j.Material.Noun()))
	}
	a.why = j.marks().why
	return a
}

// aboutPane says what a machine's drawing of a whole pane is of.
func (p ShopOrder) aboutPane(j paneJob, lines ...string) about {
	j.Route = j.route()
	a := p.aboutJob(j.Job, "pane-outline", "pane outline", lines...)
	if len(j.spots) > 1 {
		a.title = j.title() + ": pane outline, full size"
		a.lines[0] = a.title
	}
	a.why = j.marks().why
	return a
}

// roundHole is the outline of a rectangle with round corners: a circle where it is one.
func roundHole(r sheet.Rect, corner unit.Length) sheet.Shape {
	radius := corner.Millimetres()
	if full := slack.Millimetres(); r.W-2*radius < full && r.H-2*radius < full {
		return sheet.Circle{C: sheet.Pt(r.X+r.W/2, r.Y+r.H/2), R: radius}
	}
	return sheet.RoundRect(r, radius)
}

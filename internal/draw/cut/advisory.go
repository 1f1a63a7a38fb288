package cut

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// Room in millimetres around the advisory's plot, and its steps.
const (
	plotLeft   = 14.0
	plotBelow  = 14.0
	plotTop    = 12.0
	curveSteps = 60
	plotShare  = 0.58
)

// advisoryPage plots the stress factor of the hole's shape against its corner
// radius and says what it is not.
func (p Plan) advisoryPage(j Job, paper sheet.Paper) *sheet.Drawing {
	g := p.newPage(paper, "radius", "Hole "+j.Hole.ID+": corner radius, a comparison of shapes",
		sheet.Field{Name: "Pane", Value: j.Pane.ID}, sheet.Field{Name: "Material", Value: string(j.Material.Name)},
		sheet.Field{Name: "Corner radius drawn", Value: g0(p).one(j.Corner)})
	a := advisory{page: g, job: j}
	wide := g.area.W*plotShare - columnGap/2
	a.plot(sheet.Rect{X: g.area.X + plotLeft, Y: g.area.Y + headHeight + plotTop, W: wide - plotLeft, H: g.area.H - headHeight - plotTop - plotBelow})
	a.words(sheet.Rect{X: g.area.X + wide + columnGap, Y: g.area.Y, W: g.area.W - wide - columnGap, H: g.area.H})
	return g.d
}

// g0 is a page without paper, for its units only.
func g0(p Plan) page { return page{sys: p.Arena.Units} }

type advisory struct {
	page
	job Job
}

// plot draws the curve, its axes and the drawing's own radius.
func (a advisory) plot(box sheet.Rect) {
	t := a.group(sheet.LayerText)
	heading(t, a.area.X, a.area.Y, "Stress factor against corner radius")
	size := a.job.Hole.Size
	curve := StressCurve(size, curveSteps)
	if len(curve) == 0 {
		notes(t, a.area.X, box.Y, box.W, "The hole is longer and narrower than the formula's range (shorter side at least 0.3 of the longer): no curve.")
		return
	}
	half := min(size.W, size.H).Millimetres() / 2
	low, high := plotRange(curve)
	x := func(r unit.Length) float64 { return box.X + box.W*r.Millimetres()/half }
	y := func(k float64) float64 { return box.Y + box.H*(high-k)/(high-low) }
	a.axes(box, half, low, high)
	points := make([]sheet.Point, len(curve))
	for i, c := range curve {
		points[i] = sheet.Pt(x(c.Radius), y(c.Factor))
	}
	a.group(sheet.LayerCut).Add("plot", sheet.Lines(points...))
	a.mark(box, curve, x, y)
}

// plotRange returns whole bounds around the curve's factors.
func plotRange(curve []StressPoint) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, c := range curve {
		low, high = min(low, c.Factor), max(high, c.Factor)
	}
	return math.Floor(low), math.Ceil(high)
}

// axes draws a grid with the radius in both units and the factor.
func (a advisory) axes(box sheet.Rect, half, low, high float64) {
	g, t := a.group(sheet.LayerHatch), a.group(sheet.LayerText)
	foot := box.Y + box.H
	for r := 0.0; r <= half+1e-9; r += 10 {
		at := box.X + box.W*r/half
		g.Add("rule-thin", sheet.Line{A: sheet.Pt(at, box.Y), B: sheet.Pt(at, foot)})
		t.Add("caption", sheet.Text{At: sheet.Pt(at, foot+1.6), S: fmt.Sprintf("%.0f", r), Anchor: sheet.Middle, VAlign: sheet.Top})
	}
	for k := low; k <= high+1e-9; k += 0.5 {
		at := box.Y + box.H*(high-k)/(high-low)
		g.Add("rule-thin", sheet.Line{A: sheet.Pt(box.X, at), B: sheet.Pt(box.X+box.W, at)})
		t.Add("caption", sheet.Text{At: sheet.Pt(box.X-1.6, at), S: fmt.Sprintf("%.1f", k), Anchor: sheet.End, VAlign: sheet.Centre})
	}
	for inch := 0.0; inch*25.4 <= half+1e-9; inch += 0.5 {
		at := box.X + box.W*inch*25.4/half
		g.Add("rule", sheet.Line{A: sheet.Pt(at, box.Y-1.5), B: sheet.Pt(at, box.Y)})
		t.Add("caption", sheet.Text{At: sheet.Pt(at, box.Y-2.2), S: (unit.Length(inch) * unit.Inch).FormatFine(unit.Imperial), Anchor: sheet.Middle})
	}
	g.Add("rule", sheet.RoundRect(box, 0))
	t.Add("note", sheet.Text{At: sheet.Pt(box.X+box.W/2, foot+6.2), S: "corner radius, mm (inches above)", Anchor: sheet.Middle, VAlign: sheet.Top})
	t.Add("note", sheet.Text{At: sheet.Pt(box.X-9.5, box.Y+box.H/2), S: "stress factor Kt", Anchor: sheet.Middle, Rotate: math.Pi / 2})
}

// mark shows the radius of the drawing on the curve, or that it lies outside the formula's range.
func (a advisory) mark(box sheet.Rect, curve []StressPoint, x func(unit.Length) float64, y func(float64) float64) {
	g, t := a.group(sheet.LayerEngrave), a.group(sheet.LayerDim)
	r := a.job.Corner
	at := x(r)
	g.Add("plot-drop", sheet.Line{A: sheet.Pt(at, box.Y), B: sheet.Pt(at, box.Y+box.H)})
	const lead = "this drawing:"
	say := "R " + a.one(r)
	k, ok := StressFactor(a.job.Hole.Size, r)
	if !ok {
		first := curve[0]
		t.Note(sheet.Pt(at, box.Y+box.H*0.3), sheet.Pt(at+14, box.Y+box.H*0.25), true, lead, say, fmt.Sprintf("below the formula's range: above %.2f", first.Factor))
		return
	}
	g.Add("plot-mark", sheet.Circle{C: sheet.Pt(at, y(k)), R: 1.4})
	turn, elbow := math.Pi/4, sheet.Pt(at+14, max(y(k)-8, box.Y+8))
	if elbow.X+5+sheet.Regular.Width(say, sheet.SizeText) > box.X+box.W {
		turn, elbow = 3*math.Pi/4, sheet.Pt(at-14, max(y(k)-16, box.Y+8)) // no room to the right of the mark
	}
	t.Note(sheet.Pt(at, y(k)).Polar(1.4, turn), elbow, true, lead, say, fmt.Sprintf("Kt %.2f", k))
}

// words say what the curve compares.
func (a advisory) words(box sheet.Rect) {
	g := a.group(sheet.LayerText)
	y := box.Y
	g.Add("warn", sheet.Text{At: sheet.Pt(box.X, y), S: "A comparison of shapes, no strength check", VAlign: sheet.Top})
	y += headHeight
	y += notes(g, box.X, y, box.W,
		"The stress factor says how many times the stress at the hole's corner exceeds that in a plain, wide sheet of the same material pulled across the hole's longer side.",
		"A larger radius is kinder to the pane, down to where the curve is lowest. The curve is there to compare one radius with another, nothing else.",
		"It does not say what a pane bears: panes are bent and struck, not pulled; it knows no edge, no frame, no age of the material and no puck.",
		"Formula: Peterson's chart 4.62, restated by formula; valid from 0.2 to 1 of half the shorter side.") + blockGap
	if numbers := a.numbers(); len(numbers.Rows) > 0 {
		y += heading(g, box.X, y, "In numbers")
		y += table(g, box.X, y, box.W, numbers) + blockGap
	}
	if !a.job.Material.MadeToOrder() {
		return
	}
	y += heading(g, box.X, y, "The trade's distances for tempered glass")
	notes(g, box.X, y, box.W,
		"Rim to edge at least 2 t, rim to corner at least 6.5 t, fillet at least t, hole at least t + 1/16 in, cut-out at most a third of its side (t: the pane's thickness). The factory's own limits govern.")
}

func (a advisory) numbers() sheet.Table {
	t := sheet.Table{Size: tableSize, Head: []string{"corner radius", "", "Kt"}, Align: []sheet.Anchor{sheet.Start, sheet.End, sheet.End}}
	half := min(a.job.Hole.Size.W, a.job.Hole.Size.H) / 2
	for _, share := range []unit.Length{0.2, 0.3, 0.4, 0.5, 0.75, 1} {
		if k, ok := StressFactor(a.job.Hole.Size, share*half); ok {
			t.Rows = append(t.Rows, []string{fmt.Sprintf("%.2g of half the shorter side", float64(share)), (share * half).FormatFine(unit.Metric), fmt.Sprintf("%.2f", k)})
			t.Classes = append(t.Classes, "")
		}
	}
	if k, ok := StressFactor(a.job.Hole.Size, a.job.Corner); ok {
		t.Rows = append(t.Rows, []string{"this drawing", a.job.Corner.FormatFine(unit.Metric), fmt.Sprintf("%.2f", k)})
		t.Classes = append(t.Classes, "strong")
	}
	return t
}

package cut

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// Room in millimetres on the sheet of a hold.
const (
	holdShare  = 0.60 // of the left column in the width
	holdAround = 18.0 // about the cover in place, for its dimensions
	holdWords  = 80.0 // below it: what to do, and the plug's play
	pieceLeft  = 24.0 // about a piece: for its height, and for a short measure past its edge
	pieceRight = 14.0
	pieceAbove = 12.0
	pieceBelow = 15.0
)

// holdPage draws what keeps a cover in its hole: the cover in place, each piece at full
// size, what to do, and the plug's play over the range of temperatures.
func (s *set) holdPage(j Job) {
	j, about := j.ofCover()
	m, c := j.marks(), j.Cover
	a := s.probe(lying, m).area
	wide := a.W*holdShare - columnGap/2
	span := unit.Size{W: c.Flange.W + 100*unit.Millimetre, H: c.Flange.H + c.TabLong}
	if j.Options.Hold == Strap {
		span = unit.Size{W: j.strapLength(), H: c.Flange.H + c.TabLong}
	}
	scale := s.scaleFor(span.W, span.H, wide-2*holdAround, a.H-headHeight-holdWords, 1)
	name := map[bool]string{false: "turn buttons", true: "a strap"}[j.Options.Hold == Strap]
	g := s.page(lying, "hold", "Hole "+j.Hole.ID+": cover held by "+name+about, m,
		sheet.Field{Name: "Pane", Value: j.Pane.ID}, sheet.Field{Name: "Quantity", Value: "1 set"}, sheet.Field{Name: "In place", Value: scaleText(scale)},
		page{sys: s.Arena.Units}.governing())
	d := holdDrawing{coverDrawing{page: g, job: j, scale: g.laid(scale)}}
	high := d.inPlace(sheet.Rect{X: g.area.X, Y: g.area.Y, W: wide, H: a.H})
	d.pieces(s, g.beside(wide))
	f := s.column(g, sheet.Rect{X: g.area.X, Y: g.area.Y + high, W: wide, H: g.area.H - high}, lying, m)
	f.Numbered(append(j.holdSteps(d.sys), "An own design, no strength check: try it by hand and with pucks before anybody relies on it; the rink may choose another.")...)
	f.Heading(fmt.Sprintf("Play of the plug, %.0f to %.0f deg C", c.Options.Cold, c.Options.Warm))
	f.Table(playFields().Of("", c.Fits, d.sys), sheet.SizeTable)
	f.Notes(fmt.Sprintf("Play is hole less plug, both sides together. Worst case: every tolerance at its end; r.s.s.: their root sum of squares. "+
		"The plug neither jams (least play above 0) nor falls through (the flange holds by %s or more).", d.one(c.Hold)))
}

type holdDrawing struct{ coverDrawing }

// inPlace draws the cover in its hole with what holds it, from the shooting side, and
// returns the height that it takes.
func (d holdDrawing) inPlace(box sheet.Rect) float64 {
	c := d.job.Cover
	heading(d.group(sheet.LayerText), box.X, box.Y, "In place, from the shooting side")
	w, h := d.mm(c.Flange.W), d.mm(c.Flange.H)
	middle := sheet.Pt(box.X+box.W/2, box.Y+headHeight+11+h/2)
	at := sheet.Pt(middle.X-w/2, middle.Y-h/2)
	d.group(sheet.LayerDatum).Add("edge", flangeOutline(c, at, d.scale))
	d.group(sheet.LayerDatum).Add("hidden-edge", sheet.RoundRect(rim(middle, d.job.Hole.Size, d.scale), d.mm(d.job.Corner)))
	if d.job.Options.Hold == Strap {
		d.strap(middle)
	} else {
		d.buttons(middle, w)
	}
	return headHeight + 11 + h + d.mm(c.TabLong) + 5
}

// buttons draws both buttons closed on their blocks, and open dashed.
func (d holdDrawing) buttons(middle sheet.Point, flange float64) {
	list := d.job.pieces()
	button, block := list[0], list[1]
	out := flange/2 + d.mm(blockGap+buttonPivot)
	g := d.group(sheet.LayerDim)
	for _, side := range []float64{-1, 1} {
		c := sheet.Pt(middle.X+side*out, middle.Y)
		d.group(sheet.LayerDatum).Add("edge", sheet.RoundRect(rim(c, block.size, d.scale), d.mm(block.corner)))
		closed := c.Sub(sheet.Pt(side*d.mm(button.size.W/2-buttonPivot), 0))
		open := c.Add(sheet.Pt(0, d.mm(button.size.W/2-buttonPivot)))
		d.group(sheet.LayerDatum).Add("hidden-edge", sheet.RoundRect(rim(open, unit.Size{W: button.size.H, H: button.size.W}, d.scale), d.mm(button.corner)))
		d.group(sheet.LayerCut).Add("cut", sheet.RoundRect(rim(closed, button.size, d.scale), d.mm(button.corner)))
		d.group(sheet.LayerCut).Add("cut-line", sheet.Circle{C: c, R: d.mm(button.bore) / 2})
	}
	top := middle.Y - d.mm(d.job.Cover.Flange.H)/2
	dim(g, sheet.Pt(middle.X-out, top), sheet.Pt(middle.X+out, top), 6, d.job.Cover.Flange.W+2*(blockGap+buttonPivot), d.dims)
}

// strap draws the strap from stanchion to stanchion over the cover.
func (d holdDrawing) strap(middle sheet.Point) {
	f, front := d.job.Face, d.job.front
	left, right := middle.X-d.mm(front(f.Left)), middle.X+d.mm(front(f.Right()))
	a, b := left-d.mm(strapBeyond), right+d.mm(strapBeyond)
	high := d.mm(d.job.Cover.Flange.H + d.job.Cover.TabLong)
	for _, x := range []float64{left, right} {
		d.group(sheet.LayerDatum).Add("edge", sheet.Line{A: sheet.Pt(x, middle.Y-high/2-3), B: sheet.Pt(x, middle.Y+high/2+3)})
	}
	d.group(sheet.LayerCut).Add("cut", sheet.RoundRect(sheet.Rect{X: a, Y: middle.Y - d.mm(strapWide)/2, W: b - a, H: d.mm(strapWide)}, 0))
	for _, x := range []float64{a, b} {
		d.group(sheet.LayerCut).Add("cut", sheet.RoundRect(rim(sheet.Pt(x, middle.Y), d.job.pieces()[0].size, d.scale), 0))
	}
	dim(d.group(sheet.LayerDim), sheet.Pt(a, middle.Y), sheet.Pt(b, middle.Y), d.mm(d.job.Cover.Flange.H)/2+6, d.job.strapLength(), d.places)
}

// pieces draws each piece below one another, at full size where the sheet has room.
func (d holdDrawing) pieces(s *set, box sheet.Rect) {
	list := d.job.pieces()
	var most unit.Size
	for _, p := range list {
		most.W, most.H = max(most.W, p.size.W), most.H+p.size.H
	}
	around := headHeight + 2*lineHeight + pieceAbove + pieceBelow
	k := d.laid(s.scaleFor(most.W, most.H, box.W-pieceLeft-pieceRight, box.H-around*float64(len(list)), 1))
	y := box.Y
	for _, p := range list {
		t := d.group(sheet.LayerText)
		heading(t, box.X, y, fmt.Sprintf("%d x %s, %s", p.count, p.name, scaleText(k*d.d.Growth)))
		lines := []string{fmt.Sprintf("%s, %s thick; edges rounded R %s", p.of, d.one(p.thick), d.one(1*unit.Millimetre)),
			fmt.Sprintf("corners R %s; screw holes dia. %s", d.one(p.corner), d.one(p.bore))}
		if p.slotWide > 0 {
			lines = append(lines, fmt.Sprintf("slot in the middle %s x %s", d.one(p.slotWide), d.one(p.slotHigh)))
		}
		for i, say := range lines {
			t.Add("note", sheet.Text{At: sheet.Pt(box.X, y+headHeight-0.5+lineHeight*float64(i)), S: say, VAlign: sheet.Top})
		}
		y += headHeight + lineHeight*float64(len(lines)) + pieceAbove
		d.piece(p, sheet.Pt(box.X+pieceLeft, y), k)
		y += p.size.H.Millimetres()*k + pieceBelow
	}
}

// piece draws one with its dimensions, its top left corner at a point.
func (d holdDrawing) piece(p piece, at sheet.Point, k float64) {
	mm := func(l unit.Length) float64 { return l.Millimetres() * k }
	w, h := mm(p.size.W), mm(p.size.H)
	cut := d.group(sheet.LayerCut)
	cut.Add("cut-line", sheet.RoundRect(sheet.Rect{X: at.X, Y: at.Y, W: w, H: h}, mm(p.corner)))
	if p.slotWide > 0 {
		cut.Add("cut-line", sheet.RoundRect(rim(sheet.Pt(at.X+w/2, at.Y+h/2), unit.Size{W: p.slotWide, H: p.slotHigh}, k), mm(p.slotHigh)/2))
	}
	g := d.group(sheet.LayerDim)
	dim(g, at, sheet.Pt(at.X+w, at.Y), 6, p.size.W, d.dims)
	dim(g, sheet.Pt(at.X+w, at.Y), sheet.Pt(at.X+w, at.Y+h), 9, p.size.H, d.dims)
	for i, x := range p.holes {
		c := sheet.Pt(at.X+mm(x), at.Y+h/2)
		cut.Add("cut-line", sheet.Circle{C: c, R: mm(p.bore) / 2})
		d.group(sheet.LayerDatum).CentreMark(c, mm(p.bore), mm(p.bore))
		dim(g, sheet.Pt(c.X, at.Y+h), sheet.Pt(at.X, at.Y+h), 6+level*float64(i), x, d.dims)
	}
}

// HoldOutline is the pieces of a job's hold at full size, each once, side by side on the
// sheet that they are cut from: outlines and slots on CUT, screw holes on DRILL.
func (p ShopOrder) HoldOutline(j Job) *sheet.Drawing {
	j, _ = j.ofCover()
	w, size, parts := page{sys: p.Arena.Units}, unit.Size{}, j.pieces()
	const gap = 10 * unit.Millimetre
	var lines []string
	for _, k := range parts {
		size.W, size.H = size.W+k.size.W+gap, max(size.H, k.size.H)
		lines = append(lines, fmt.Sprintf("%s: make %d, of %s, sheet %s; edges rounded R 1 mm", strings.ToUpper(k.name), k.count, k.of, w.one(k.thick)))
	}
	g := p.machineSheet((size.W - gap).Millimetres(), size.H.Millimetres(), p.aboutJob(j, "hold-outline", "cover's hold", lines...))
	x := g.area.X
	for _, k := range parts {
		h := k.size.H.Millimetres()
		r := sheet.Rect{X: x, Y: g.area.Y + g.area.H - h, W: k.size.W.Millimetres(), H: h}
		middle := sheet.Pt(r.X+r.W/2, r.Y+h/2)
		g.group(sheet.LayerCut).Add("cut-line", roundHole(r, k.corner))
		if k.slotWide > 0 {
			g.group(sheet.LayerCut).Add("cut-line", roundHole(rim(middle, unit.Size{W: k.slotWide, H: k.slotHigh}, 1), k.slotHigh/2))
		}
		for _, at := range k.holes {
			g.group(sheet.LayerDrill).Add("pilot", sheet.Circle{C: sheet.Pt(r.X+at.Millimetres(), middle.Y), R: k.bore.Millimetres() / 2})
		}
		x += r.W + gap.Millimetres()
	}
	return g.d
}

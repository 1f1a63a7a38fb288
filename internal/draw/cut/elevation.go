package cut

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Room in millimetres around an elevation for its dimensions and its name.
const (
	elevSide  = 22.0 // to the left and right
	elevAbove = 20.0 // for the view's name and the overall width
	elevBelow = 29.0 // for the boards' stub and the places along the pane
	stub      = 8.0  // how much of the boards is shown
)

// panePage draws the pane with its hole from both sides.
func (p ShopOrder) panePage(j Job, paper sheet.Paper) *sheet.Drawing {
	probe := p.newPage(paper, "", "", &j)
	half := probe.area.W/2 - pagePad
	foot := p.placeNotes(j, probe).height
	room := probe.area.H - foot - blockGap
	scale := scaleFor(j.Face.Width, j.Face.Height, half-2*elevSide, room-elevAbove-elevBelow, 1)
	g := p.newPage(paper, "pane", "Hole "+j.Hole.ID+": the pane from both sides", &j,
		sheet.Field{Name: "Pane", Value: j.Pane.ID}, sheet.Field{Name: "Material", Value: fmt.Sprintf("%s, %s", j.Material.Name, probe.one(j.Thick))},
		sheet.Field{Name: "Scale", Value: scaleText(scale)}, sheet.Field{Name: "Route", Value: string(j.Route)},
		probe.governing())
	e := elevation{page: g, job: j, scale: scale}
	e.draw(sheet.Rect{X: g.area.X, Y: g.area.Y, W: half, H: room}, false)
	e.draw(sheet.Rect{X: g.area.X + half + 2*pagePad, Y: g.area.Y, W: half, H: room}, true)
	p.placeNotes(j, g).draw(g.area.Y + g.area.H - foot)
	return g.d
}

// elevation draws one view of a pane.
type elevation struct {
	page
	job   Job
	scale float64
}

// draw draws the pane within a box; from the rink side it is mirrored.
func (e elevation) draw(box sheet.Rect, mirrored bool) {
	f := e.job.Face
	w, h := f.Width.Millimetres()*e.scale, f.Height.Millimetres()*e.scale
	left := box.X + (box.W-w)/2
	base := box.Y + box.H - elevBelow
	pane := sheet.Rect{X: left, Y: base - h, W: w, H: h}
	x := func(l unit.Length) float64 {
		if mirrored {
			return left + w - l.Millimetres()*e.scale
		}
		return left + l.Millimetres()*e.scale
	}
	c := sheet.Pt(x(f.Left), base-f.Up.Millimetres()*e.scale)
	e.name(box, mirrored)
	e.outlines(pane, c)
	e.others(pane, x)
	e.edges(box, pane, c, mirrored)
	e.measures(pane, c, mirrored)
}

func (e elevation) name(box sheet.Rect, mirrored bool) {
	name, say := "FROM THE SHOOTING SIDE", "spectators' side, looking at the ice"
	if mirrored {
		name, say = "FROM THE RINK SIDE", "mirror image; label: THIS FACE TO ICE, "+e.job.Pane.ID
	}
	t := e.group(sheet.LayerText)
	t.Add("head", sheet.Text{At: sheet.Pt(box.X+box.W/2, box.Y), S: name, Anchor: sheet.Middle, VAlign: sheet.Top})
	t.Add("note", sheet.Text{At: sheet.Pt(box.X+box.W/2, box.Y+5.2), S: say, Anchor: sheet.Middle, VAlign: sheet.Top})
}

// outlines draws pane, boards and hole.
func (e elevation) outlines(pane sheet.Rect, c sheet.Point) {
	d := e.group(sheet.LayerDatum)
	d.Add("pane", sheet.RoundRect(pane, 0))
	over := 6.0
	boards := sheet.Rect{X: pane.X - over, Y: pane.Y + pane.H, W: pane.W + 2*over, H: stub}
	d.Add("boards", sheet.RoundRect(boards, 0))
	hole := rim(c, e.job.Hole.Size, e.scale)
	e.group(e.job.outlineLayer()).Add(outlineClass(e.job.Exists()), sheet.RoundRect(hole, e.job.Corner.Millimetres()*e.scale))
	d.CentreMark(c, hole.W, hole.H)
}

// outlineClass tells a hole that is to be made from one that exists.
func outlineClass(exists bool) string {
	if exists {
		return "exists"
	}
	return "cut"
}

// edges names the pane's edges, so that nobody mistakes one for the other.
func (e elevation) edges(box, pane sheet.Rect, c sheet.Point, mirrored bool) {
	t := e.group(sheet.LayerText)
	y := pane.Y + pane.H*0.62
	if math.Abs(y-c.Y) < 14 { // clear of the line to the hole's height
		y = pane.Y + pane.H*0.25
	}
	for _, s := range []struct {
		x    float64
		name string
	}{{pane.X + 3.2, "LEFT EDGE"}, {pane.X + pane.W - 3.2, "RIGHT EDGE"}} {
		name := s.name
		if mirrored {
			name = map[string]string{"LEFT EDGE": "RIGHT EDGE", "RIGHT EDGE": "LEFT EDGE"}[s.name]
		}
		t.Add("caption", sheet.Text{At: sheet.Pt(s.x, y), S: name, Anchor: sheet.Middle, VAlign: sheet.Centre, Rotate: math.Pi / 2})
	}
	e.datum(box, pane, c)
}

// datum names the boards' top: beside the boards where the box has room, else
// in them on the wider side of the hole's centre line.
func (e elevation) datum(box, pane sheet.Rect, c sheet.Point) {
	const say = "datum: top of the boards"
	t := sheet.Text{At: sheet.Pt(pane.X+pane.W+8, pane.Y+pane.H+stub/2), S: say, VAlign: sheet.Centre}
	if t.At.X+sheet.Regular.Width(say, sheet.SizeSmall) > box.X+box.W {
		t.Anchor, t.At.X = sheet.Middle, (pane.X+c.X)/2
		if c.X-pane.X < pane.W/2 {
			t.At.X = (c.X + pane.X + pane.W) / 2
		}
	}
	e.group(sheet.LayerText).Add("caption", t)
}

// measures sets the dimensions: overall above and outside, the hole's place
// below the boards and on the side of the hole's nearer edge.
func (e elevation) measures(pane sheet.Rect, c sheet.Point, mirrored bool) {
	if mirrored && e.job.Face.Curved {
		return // one face is dimensioned, with one number; the other's stand in the notes
	}
	g := e.group(sheet.LayerDim)
	f, front := e.job.Face, e.job.front
	foot := pane.Y + pane.H
	right := pane.X + pane.W
	dim(g, sheet.Pt(pane.X, pane.Y), sheet.Pt(right, pane.Y), 6, front(f.Width), e.places)
	dim(g, sheet.Pt(pane.X, foot), sheet.Pt(pane.X, pane.Y), 12, f.Height, e.places)
	first, second := front(f.Left), front(f.Right())
	if mirrored {
		first, second = second, first
	}
	// Below the boards along the pane, each edge's distance on a level of its own.
	dim(g, sheet.Pt(pane.X, foot), sheet.Pt(c.X, foot), -(stub + 6), first, e.places)
	dim(g, sheet.Pt(right, foot), sheet.Pt(c.X, foot), stub+16, second, e.places)
	dim(g, sheet.Pt(right, foot), sheet.Pt(right, c.Y), -9, f.Up, e.places)
	g.Add("dim", sheet.Line{A: sheet.Pt(c.X, c.Y), B: sheet.Pt(right, c.Y)})
}

// noteBlock is a block of notes in columns whose height is known before it is drawn.
type noteBlock struct {
	page   page
	lines  []string
	height float64
}

// placeNotes says where the pane stands and how places are measured.
func (p ShopOrder) placeNotes(j Job, g page) noteBlock {
	work := map[Route]string{Order: "ordering", Standing: "relying on it"}[j.Route]
	if work == "" {
		work = "cutting"
	}
	lines := []string{
		fmt.Sprintf("Where: %s; hole's centre %s above the ice. State in the plan: %s.", p.whereabouts(j), g.one(j.Hole.Height), stateWord(j)),
		fmt.Sprintf("Hole %s wide, %s high, corners %s. Place of its centre %s.", g.one(j.Hole.Size.W), g.one(j.Hole.Size.H), g.one(j.Corner), tolerance(placeTolerance, g.sys)),
		"Places are on the pane's shooting face, from the edges seen between the stanchions. Measure the pane itself before " + work + ": what the frame hides is not known.",
	}
	if j.Face.Curved {
		a, _ := g.places(j.Face.Left)
		b, _ := g.places(j.Face.Right())
		lines = append(lines, fmt.Sprintf("The pane is curved, inner radius %s. Along the rink face the hole's centre is %s from the left and %s from the right edge.", g.one(j.Face.Radius), a, b))
	}
	if s := j.besides(); s != "" {
		lines = append(lines, s)
	}
	for _, k := range j.Neighbours {
		work := "to be made"
		if k.Hole.State == glass.Cut {
			work = "exists"
		}
		lines = append(lines, fmt.Sprintf("Hole %s, %s: centre %s from the left edge, %s above the boards; %s x %s, corners %s.", k.Hole.ID, work,
			g.place(j.front(k.Left)), g.place(k.Up), g.one(k.Hole.Size.W), g.one(k.Hole.Size.H), g.one(k.Corner)))
	}
	for _, a := range j.Assumed {
		lines = append(lines, "Assumed: "+a.In(g.sys)+".")
	}
	lines = append(lines, p.history()...)
	n := noteBlock{page: g, lines: lines}
	for _, s := range lines {
		n.height += lineHeight * float64(len(sheet.Regular.Wrap(s, sheet.SizeText, g.area.W)))
	}
	return n
}

func (n noteBlock) draw(y float64) {
	t := n.page.group(sheet.LayerText)
	for _, s := range n.lines {
		y += t.Paragraph("note", sheet.Regular, sheet.Pt(n.page.area.X, y), s, sheet.SizeText, n.page.area.W, lineHeight)
	}
}

// Tolerances of the drawing, plus or minus: own choices. A router holds 0.1
// to 0.2 mm (fabricators' guides); a hole is felt and covered, not pressed.
const (
	placeTolerance  = 2 * unit.Millimetre
	radiusTolerance = 0.5 * unit.Millimetre
	roundTolerance  = 1 * unit.Millimetre
)

package cut

import (
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/glass"
)

// Shares of a detail page: the drawing's column and the notes' column.
const (
	detailShare = 0.45
	columnGap   = 8.0  // mm
	detailRoom  = 15.0 // mm for dimensions to each side of the hole's detail
	detailTall  = 21.0 // mm for dimensions above and below it
	sectionHigh = 46.5 // mm for the section through the edge, its heading counted
	sectionRoom = 10.4 // mm for the names of the faces above and below it
	sectionLong = 34.0 // mm of pane shown in the section
)

// detailPage draws the hole with its pilot holes, the section through its
// edge, the route, the tolerances and the distances kept.
func (s *set) detailPage(j Job) {
	fields := func(hole, section string) []sheet.Field {
		return []sheet.Field{{Name: "Pane", Value: j.Pane.ID}, {Name: "Material", Value: fmt.Sprintf("%s, %s", j.Material.Name, both(j.Thick).Say(s.Arena.Units))},
			{Name: "Hole", Value: hole}, {Name: "Section C-C", Value: section},
			{Name: "Route", Value: string(j.Route)}, page{sys: s.Arena.Units}.governing()}
	}
	room := func() (wide, high float64) {
		a := s.probe(lying, j.marks(), fields("1:100", "1:100")...).area
		return a.W*detailShare - columnGap/2, a.H - sectionHigh - headHeight
	}
	scale, _ := s.largest([]way{lying}, func(way) float64 {
		wide, high := room()
		return s.scaleFor(j.Hole.Size.W, j.Hole.Size.H, wide-2*detailRoom, high-headHeight-detailTall, 1)
	})
	wide, high := room()
	section := s.scaleFor(0, j.Thick, wide, sectionHigh-headHeight-sectionRoom, 5)
	g := s.page(lying, "hole", "Hole "+j.Hole.ID+": outline, edge and route", j.marks(), fields(scaleText(scale), scaleText(section))...)
	d := detail{page: g, job: j}
	d.outline(sheet.Rect{X: g.area.X, Y: g.area.Y, W: wide, H: high}, g.laid(scale))
	d.section(sheet.Rect{X: g.area.X, Y: g.area.Y + g.area.H - sectionHigh, W: wide, H: sectionHigh}, g.laid(section))
	d.words(s.column(g, g.beside(wide), lying, j.marks()))
}

type detail struct {
	page
	job Job
}

// outline draws the hole from the shooting side with its dimensions.
func (d detail) outline(box sheet.Rect, scale float64) {
	t := d.group(sheet.LayerText)
	heading(t, box.X, box.Y, "Outline, from the shooting side")
	size, r := d.job.Hole.Size, d.job.Corner.Millimetres()*scale
	w, h := size.W.Millimetres()*scale, size.H.Millimetres()*scale
	hole := sheet.Rect{X: box.X + (box.W-w)/2, Y: box.Y + headHeight + 13, W: w, H: h}
	c := sheet.Pt(hole.X+w/2, hole.Y+h/2)
	d.group(workOf(d.job.Exists()).layer()).Add(workOf(d.job.Exists()).class(), sheet.RoundRect(hole, r))
	d.group(sheet.LayerDatum).CentreMark(c, w, h)
	g := d.group(sheet.LayerDim)
	dim(g, sheet.Pt(hole.X, hole.Y), sheet.Pt(hole.X+w, hole.Y), 8, size.W, d.dims)
	dim(g, sheet.Pt(hole.X, hole.Y), sheet.Pt(hole.X, hole.Y+h), -9, size.H, d.dims)
	d.pilots(hole, r)
	d.cutMarks(c, w)
}

// pilots draws the four pilot holes and says what the corner is.
func (d detail) pilots(hole sheet.Rect, r float64) {
	d.job.drill(d.group(sheet.LayerDrill), hole, r)
	text := d.group(sheet.LayerDim)
	corner := sheet.Pt(hole.X+r, hole.Y+hole.H-r).Polar(r, -3*math.Pi/4)
	elbow := sheet.Pt(max(hole.X+8, corner.X+4), hole.Y+hole.H+6)
	lines := []string{"R " + d.one(d.job.Corner) + ", four corners"}
	if d.job.Pilot() > 0 {
		what, size := "four pilot holes", "dia. "+d.one(d.job.Pilot())
		if hole.W-2*r-14 > sheet.Regular.Width(size, sheet.SizeText) && hole.H > 4*r+17 {
			centre := sheet.Pt(hole.X+r, hole.Y+r)
			text.Note(centre.Polar(r, -math.Pi/5), sheet.Pt(hole.X+2*r+5, hole.Y+2*r+3), true, what, size)
		} else {
			lines = append(lines, what+" "+size)
		}
	}
	text.Note(corner, elbow, true, lines...)
}

// cutMarks shows where section C-C goes through the right edge.
func (d detail) cutMarks(c sheet.Point, w float64) {
	g := d.group(sheet.LayerDim)
	x := c.X + w/2
	g.Add("edge", sheet.Line{A: sheet.Pt(x-4, c.Y), B: sheet.Pt(x+9, c.Y)})
	for _, at := range []float64{x - 6, x + 11} {
		g.Add("head", sheet.Text{At: sheet.Pt(at, c.Y), S: "C", Anchor: sheet.Middle, VAlign: sheet.Centre})
	}
}

// section draws the pane cut across the hole's edge, the rink face up.
func (d detail) section(box sheet.Rect, scale float64) {
	t := d.group(sheet.LayerText)
	heading(t, box.X, box.Y, "Section C-C through the edge, all round the hole")
	thick, r := d.job.Thick.Millimetres()*scale, d.job.Rounding.Millimetres()*scale
	x0 := box.X + detailRoom + 3
	x1, y0 := x0+sectionLong, box.Y+headHeight+4
	y1 := y0 + thick
	var edge sheet.Path
	edge.MoveTo(sheet.Pt(x0, y0))
	edge.LineTo(sheet.Pt(x1-r, y0))
	edge.ArcTo(sheet.Pt(x1, y0+r), -roundBulge)
	edge.LineTo(sheet.Pt(x1, y1-r))
	edge.ArcTo(sheet.Pt(x1-r, y1), -roundBulge)
	edge.LineTo(sheet.Pt(x0, y1))
	d.group(sheet.LayerCut).Add("cut-line", edge)
	closed := edge
	closed.Close()
	d.group(sheet.LayerHatch).Hatch("hatch", closed, math.Pi/4, 2.2)
	d.breakLine(x0, y0, y1)
	g := d.group(sheet.LayerDim)
	dim(g, sheet.Pt(x0, y0), sheet.Pt(x0, y1), -9, d.job.Thick, d.dims)
	t.Add("caption", sheet.Text{At: sheet.Pt(x0+sectionLong/2, y0-2), S: "RINK FACE", Anchor: sheet.Middle})
	t.Add("caption", sheet.Text{At: sheet.Pt(x0+sectionLong/2, y1+2), S: "SHOOTING FACE", Anchor: sheet.Middle, VAlign: sheet.Top})
	t.Add("caption", sheet.Text{At: sheet.Pt(x1+4, (y0+y1)/2), S: "hole", VAlign: sheet.Centre})
	at := sheet.Pt(x1-r, y0+r).Polar(r, math.Pi/4)
	g.Note(at, sheet.Pt(x1+6, y0-3), true, "R "+d.one(d.job.Rounding)+", both faces")
	g.Note(sheet.Pt(x1-r, y1-r).Polar(r, -math.Pi/4), sheet.Pt(x1+6, y1+3), true, "no tool mark, no notch")
}

// roundBulge is the bulge of a quarter turn, tan(pi/8).
const roundBulge = 0.41421356237309503

// breakLine ends the pane where the drawing leaves off.
func (d detail) breakLine(x, y0, y1 float64) {
	m := (y0 + y1) / 2
	d.group(sheet.LayerCut).Add("dim", sheet.Lines(sheet.Pt(x, y0-2), sheet.Pt(x, m-1.5), sheet.Pt(x-1.5, m-0.5), sheet.Pt(x+1.5, m+0.5), sheet.Pt(x, m+1.5), sheet.Pt(x, y1+2)))
}

// words sets route, tolerances and distances kept.
func (d detail) words(f *sheet.Flow) {
	j := d.job
	if j.Material.MadeToOrder() && !j.Exists() {
		f.Group().Add("warn", sheet.Text{At: sheet.Pt(f.Room().X, f.Room().Y), S: "ORDER MADE: NEVER CUT, NEVER DRILL", VAlign: sheet.Top})
		f.Skip(headHeight)
	} else {
		f.Heading(j.Route.title())
	}
	f.Numbered(j.Steps()...)
	f.Heading("Sizes and tolerances")
	f.Table(sizeFields().Of("", j.sizes(), d.sys), sheet.SizeTable)
	f.Heading("Distances" + map[bool]string{true: " along the rink face, where they are least"}[j.Face.Curved] + ": has, and has to have")
	f.Table(limitFields().Of("", j.Limits, d.sys), sheet.SizeTable)
	f.Notes(sourcesOf(j.Limits)...)
}

// title heads a route's steps.
func (r Route) title() string {
	return map[Route]string{
		Shop: "Route: cut in the shop", Site: "Route: cut where it stands",
		Order: "Route: ordered made with the hole", Standing: "The hole exists: what to check",
	}[r]
}

// sourcesOf lists the limits' sources once each.
func sourcesOf(limits []glass.Limit) []string {
	var out []string
	for _, l := range limits {
		if s := "Limits from " + l.Source + "."; !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	return out
}

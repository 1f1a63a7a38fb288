package cut

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// coverShare is the drawing's part of a cover page's width.
const coverShare = 0.54

// Room in millimetres between the two views of a cover: usual, and where the
// plug is drawn lower than lowPlug.
const (
	sideAside    = 22.0
	sideFarAside = 33.0
	lowPlug      = 24.0
)

// coverPage draws the cover from the shooting side and from the edge, with
// its play over the range of temperatures.
func (p ShopOrder) coverPage(j Job, paper sheet.Paper) []*sheet.Drawing {
	j, about := j.ofCover()
	probe := p.newPage(paper, "", "", &j)
	c := j.Cover
	wide := probe.area.W*coverShare - columnGap/2
	deep := c.FlangeThk + j.Thick
	aside := sideAside
	scale := scaleFor(c.Flange.W+deep, c.Flange.H+c.TabLong, wide-24-aside, probe.area.H-headHeight-31, 1)
	if c.Plug.H.Millimetres()*scale < lowPlug { // its measure stands below it, toward the side view's
		aside = sideFarAside
		scale = scaleFor(c.Flange.W+deep, c.Flange.H+c.TabLong, wide-24-aside, probe.area.H-headHeight-31, 1)
	}
	g := p.newPage(paper, "cover", "Hole "+j.Hole.ID+": cover"+about, &j,
		sheet.Field{Name: "Pane", Value: j.Pane.ID}, sheet.Field{Name: "Material", Value: string(c.Material)},
		sheet.Field{Name: "Scale", Value: scaleText(scale)}, sheet.Field{Name: "Mass", Value: fmt.Sprintf("about %.2g kg", c.Mass)},
		probe.governing())
	d := coverDrawing{page: g, job: j, scale: scale}
	d.front(sheet.Pt(g.area.X+20, g.area.Y+headHeight+15))
	d.side(sheet.Pt(g.area.X+20+c.Flange.W.Millimetres()*scale+aside, g.area.Y+headHeight+15))
	f := p.column(g, sheet.Rect{X: g.area.X + wide + columnGap, Y: g.area.Y, W: g.area.W - wide - columnGap, H: g.area.H}, paper, &j)
	d.words(f)
	return f.Sheets()
}

type coverDrawing struct {
	page
	job   Job
	scale float64
}

func (d coverDrawing) mm(l unit.Length) float64 { return l.Millimetres() * d.scale }

// front draws flange and tab, the plug behind them hidden.
func (d coverDrawing) front(at sheet.Point) {
	c := d.job.Cover
	t := d.group(sheet.LayerText)
	heading(t, d.area.X, d.area.Y, "From the shooting side")
	cut := d.group(sheet.LayerCut)
	cut.Add("cut-line", flangeOutline(c, at, d.scale))
	w, h := d.mm(c.Flange.W), d.mm(c.Flange.H)
	middle := sheet.Pt(at.X+w/2, at.Y+h/2)
	cord := sheet.Pt(middle.X, at.Y+h+d.mm(c.TabLong-tabHoleUp))
	cut.Add("cut-line", sheet.Circle{C: cord, R: d.mm(c.TabHole) / 2})
	plug := rim(middle, c.Plug, d.scale)
	pw, ph := plug.W, plug.H
	d.group(sheet.LayerDatum).Add("hidden-edge", sheet.RoundRect(plug, d.mm(c.PlugCorner)))
	d.group(sheet.LayerDatum).CentreMark(middle, pw, ph)
	g := d.group(sheet.LayerDim)
	dim(g, at, sheet.Pt(at.X+w, at.Y), 8, c.Flange.W, d.dims)
	dim(g, sheet.Pt(at.X, at.Y+h), at, 9, c.Flange.H, d.dims)
	foot := at.Y + h + d.mm(c.TabLong)
	// Words that have no room within stand away from the side view.
	dim(g, sheet.Pt(plug.X+pw, plug.Y+ph), sheet.Pt(plug.X, plug.Y+ph), foot-plug.Y-ph+9, c.Plug.W, d.dims)
	dim(g, sheet.Pt(plug.X+pw, plug.Y), sheet.Pt(plug.X+pw, plug.Y+ph), at.X+w-plug.X-pw+8, c.Plug.H, d.dims)
	corner := sheet.Pt(plug.X+pw-d.mm(c.PlugCorner), plug.Y+d.mm(c.PlugCorner)).Polar(d.mm(c.PlugCorner), math.Pi/4)
	if say := "plug: see " + plugNote; pw/2 > sheet.Regular.Width(say, sheet.SizeText)+d.mm(c.PlugCorner)+9 && ph/2 > 14 {
		g.Note(corner, sheet.Pt(corner.X-5, corner.Y+7), true, say)
	}
	// Clear of the tab and of the extension line of the plug's width.
	elbow := min(middle.X-d.mm(c.TabWide)/2-5, plug.X+1)
	g.Note(cord.Sub(sheet.Pt(d.mm(c.TabHole)/2, 0)), sheet.Pt(elbow, cord.Y), true, "tab: see "+tabNote)
}

// The numbers of the notes that give the plug's corners and the tab's sizes.
const plugNote, tabNote = "1", "5"

// flangeCorner is the radius of the flange's corners: concentric with the
// plug's where the tab leaves room for it.
func (c Cover) flangeCorner() unit.Length {
	return min(c.PlugCorner+flangeOverlap, (c.Flange.W-c.TabWide)/2-tabFillet, c.Flange.H/2)
}

// flangeOutline is the flange with its tab below, one closed outline; at is
// the flange's top left corner, k its scale.
func flangeOutline(c Cover, at sheet.Point, k float64) sheet.Polyline {
	w, h := c.Flange.W.Millimetres()*k, c.Flange.H.Millimetres()*k
	tw, tl := c.TabWide.Millimetres()*k/2, c.TabLong.Millimetres()*k
	r, fillet, end := c.flangeCorner().Millimetres()*k, tabFillet.Millimetres()*k, tabRound.Millimetres()*k
	x0, y0, x1, y1, m := at.X, at.Y, at.X+w, at.Y+h, at.X+w/2
	l := sheet.Polyline{Closed: true}
	add := func(x, y, bulge float64) {
		l.Vertices = append(l.Vertices, sheet.Vertex{Point: sheet.Pt(x, y), Bulge: bulge})
	}
	add(x0+r, y0, 0)
	add(x1-r, y0, -roundBulge)
	add(x1, y0+r, 0)
	add(x1, y1-r, -roundBulge)
	add(x1-r, y1, 0)
	add(m+tw+fillet, y1, roundBulge)
	add(m+tw, y1+fillet, 0)
	add(m+tw, y1+tl-end, -roundBulge)
	add(m+tw-end, y1+tl, 0)
	add(m-tw+end, y1+tl, -roundBulge)
	add(m-tw, y1+tl-end, 0)
	add(m-tw, y1+fillet, roundBulge)
	add(m-tw-fillet, y1, 0)
	add(x0+r, y1, -roundBulge)
	add(x0, y1-r, 0)
	add(x0, y0+r, -roundBulge)
	return l
}

// side draws the cover in its hole, cut upright through the middle: the rink
// to the right.
func (d coverDrawing) side(at sheet.Point) {
	c, j := d.job.Cover, d.job
	h, flange, plug := d.mm(c.Flange.H), d.mm(c.FlangeThk), d.mm(c.PlugDepth)
	thick, pad := d.mm(j.Thick), d.mm(12*unit.Millimetre)
	top := at.Y + (h-d.mm(j.Hole.Size.H))/2
	foot := top + d.mm(j.Hole.Size.H)
	x := at.X + flange
	// The pane above and below the hole.
	for _, s := range [][2]float64{{at.Y - pad, top}, {foot, at.Y + h + pad}} {
		r := sheet.RoundRect(sheet.Rect{X: x, Y: s[0], W: thick, H: s[1] - s[0]}, 0)
		var hatch sheet.Path
		hatch.Add(r)
		d.group(sheet.LayerDatum).Add("edge", r)
		d.group(sheet.LayerHatch).Hatch("hatch", hatch, -math.Pi/4, 1.6)
	}
	py := at.Y + (h-d.mm(c.Plug.H))/2
	outline := sheet.Polygon(
		sheet.Pt(at.X, at.Y), sheet.Pt(x, at.Y), sheet.Pt(x, py), sheet.Pt(x+plug, py),
		sheet.Pt(x+plug, py+d.mm(c.Plug.H)), sheet.Pt(x, py+d.mm(c.Plug.H)), sheet.Pt(x, at.Y+h+d.mm(c.TabLong)), sheet.Pt(at.X, at.Y+h+d.mm(c.TabLong)))
	d.group(sheet.LayerCut).Add("cut", outline)
	g := d.group(sheet.LayerDim)
	t := d.group(sheet.LayerText)
	t.Add("caption", sheet.Text{At: sheet.Pt(x+thick+2.2, at.Y+h/2), S: "RINK", Anchor: sheet.Middle, VAlign: sheet.Centre, Rotate: math.Pi / 2})
	t.Add("caption", sheet.Text{At: sheet.Pt(at.X-2.2, at.Y+h/2), S: "STAND", Anchor: sheet.Middle, VAlign: sheet.Centre, Rotate: math.Pi / 2})
	dim(g, sheet.Pt(x+plug, at.Y-pad), sheet.Pt(x, at.Y-pad), -5, c.PlugDepth, d.dims)
	foot = at.Y + h + d.mm(c.TabLong)
	dim(g, sheet.Pt(x, foot), sheet.Pt(at.X, foot), 6, c.FlangeThk, d.dims)
}

// words sets what the cover is, its play and what the drawing does not settle.
func (d coverDrawing) words(f *sheet.Flow) {
	c := d.job.Cover
	f.Heading("What it is")
	one := d.one
	tether := "A cord of 3 mm or more ties the tab to the frame, not to the pane; the cover hangs clear of people's faces."
	if !c.Tether {
		tether = "The plan has no tether: the tab is there all the same; tie it, so that the cover is where the hole is."
	}
	f.Numbered(
		fmt.Sprintf("Plug and flange of %s, glued or cut from one piece; corners of the plug R %s, of the flange R %s; all edges rounded R %s.", c.Material, one(c.PlugCorner), one(c.flangeCorner()), one(c.Rounding)),
		fmt.Sprintf("Clearance between plug and hole %s on each side, measured at %.0f deg C; plug's width and height %s.", one(c.Clearance), c.Options.Made, tolerance(c.Options.PlugTolerance, d.sys)),
		fmt.Sprintf("The plug is at most %s deep, for the thinnest sheet that the pane may be: it ends behind the rink face. Cut it from a sheet of %s. Measure the pane; nothing stands past it.", one(c.PlugDepth), one(c.PlugSheet())),
		"The flange keeps the cover from going through to the rink. What keeps it in against a puck (turn buttons or a strap on the frame) is the rink's to choose and to try.",
		fmt.Sprintf("Tab %s wide, %s long, R %s at its foot, R %s where it meets the flange; hole dia. %s, %s above the foot. ", one(c.TabWide), one(c.TabLong), one(tabRound), one(tabFillet), one(c.TabHole), one(tabHoleUp))+tether,
		fmt.Sprintf("Mark the cover with its hole: %s.", d.job.Hole.ID))
	f.Heading(fmt.Sprintf("Play of the plug, %.0f to %.0f deg C", c.Options.Cold, c.Options.Warm))
	f.Table(playFields().Of("", c.Fits, d.sys), sheet.SizeTable)
	f.Notes(fmt.Sprintf("Play is hole less plug, both sides together, pane and cover at either temperature. Worst case: every tolerance at its end; r.s.s.: their root sum of squares. "+
		"The plug neither jams (least play above 0) nor falls through (the flange still holds by %s or more).", d.one(c.Hold)))
}

// ofCover is the job as its cover's sheets speak of it: the cover of a hole
// that exists may still have to be made.
func (j Job) ofCover() (Job, string) {
	if j.Exists() && !j.CoverExists() {
		j.Hole.State = glass.Planned
		return j, ", still to be made"
	}
	return j, ""
}

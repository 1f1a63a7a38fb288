package cut

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Room in millimetres about the two views of a cover: for dimensions to the left of the
// front view, between it and the section, to the right of that, above and below both.
const (
	coverLeft  = 22.0
	coverAside = 24.0
	coverRight = 18.0
	coverAbove = 14.0
	coverBelow = 16.0
	coverWords = 84.0 // the column of words beside them, at least
	coverUnder = 60.0 // the tab and the words below them on an upright sheet
)

// coverPage draws the cover from the shooting side and from the edge, its tab at full
// size, and says what it is.
func (s *set) coverPage(j Job) {
	j, about := j.ofCover()
	m, c := j.marks(), j.Cover
	scale, as := s.largest(ways(), func(w way) float64 {
		room := s.probe(w, m).area
		if w == lying {
			room.W -= coverWords + columnGap
		} else {
			room.H -= coverUnder
		}
		return s.scaleFor(c.Flange.W+c.FlangeThk+j.Thick, c.Flange.H+c.TabLong, room.W-coverLeft-coverAside-coverRight, room.H-headHeight-coverAbove-coverBelow, 1)
	})
	g := s.page(as, "cover", "Hole "+j.Hole.ID+": cover"+about, m,
		sheet.Field{Name: "Pane", Value: j.Pane.ID}, sheet.Field{Name: "Material", Value: string(c.Material)}, sheet.Field{Name: "Quantity", Value: "1"},
		sheet.Field{Name: "Scale", Value: scaleText(scale)}, sheet.Field{Name: "Mass", Value: fmt.Sprintf("about %.2g kg", c.Mass)},
		page{sys: s.Arena.Units}.governing())
	d := coverDrawing{page: g, job: j, scale: g.laid(scale)}
	at := sheet.Pt(g.area.X+coverLeft, g.area.Y+headHeight+coverAbove)
	d.front(at)
	d.side(at.Add(sheet.Pt(d.mm(c.Flange.W)+coverAside, 0)))
	box := g.beside(g.area.W - coverWords - columnGap)
	if as == upright {
		high := headHeight + coverAbove + d.mm(c.Flange.H+c.TabLong) + coverBelow
		d.tab(s, sheet.Rect{X: g.area.X, Y: g.area.Y + high, W: coverWords})
		box = g.beside(coverWords)
		box.Y, box.H = box.Y+high, box.H-high
	} else {
		high := d.tab(s, box)
		box.Y, box.H = box.Y+high, box.H-high
	}
	d.words(s.column(g, box, as, m))
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
	dim(g, sheet.Pt(at.X+w, at.Y), at, -8, c.Flange.W, d.dims)
	dim(g, at, sheet.Pt(at.X, at.Y+h), -9, c.Flange.H, d.dims)
	foot := at.Y + h + d.mm(c.TabLong)
	// Words that have no room within stand away from the side view.
	dim(g, sheet.Pt(plug.X+pw, plug.Y+ph), sheet.Pt(plug.X, plug.Y+ph), foot-plug.Y-ph+7, c.Plug.W, d.dims)
	dim(g, sheet.Pt(plug.X+pw, plug.Y), sheet.Pt(plug.X+pw, plug.Y+ph), at.X+w-plug.X-pw+8, c.Plug.H, d.dims)
}

// tab draws the tab at full size in the upper part of a box and returns how much of it that takes.
func (d coverDrawing) tab(s *set, box sheet.Rect) float64 {
	c := d.job.Cover
	full := coverDrawing{page: d.page, job: d.job, scale: d.laid(s.scaleFor(c.TabWide, c.TabLong, box.W-40, 45, 1))}
	heading(d.group(sheet.LayerText), box.X, box.Y, "Tab, "+scaleText(full.scale*d.d.Growth))
	long, half, over := full.mm(c.TabLong), full.mm(c.TabWide)/2, 5.0
	foot := sheet.Pt(box.X+17+half, box.Y+headHeight+6)
	// Of the flange only what meets the tab is shown.
	at := foot.Sub(sheet.Pt(full.mm(c.Flange.W)/2, full.mm(c.Flange.H)))
	clip := d.group(sheet.LayerCut)
	wide := half + full.mm(tabFillet) + over
	clip.Clip = &sheet.Rect{X: foot.X - wide, Y: foot.Y - over, W: 2 * wide, H: long + over + 2}
	clip.Add("cut-line", flangeOutline(c, at, full.scale))
	cord := sheet.Pt(foot.X, foot.Y+long-full.mm(tabHoleUp))
	clip.Add("cut-line", sheet.Circle{C: cord, R: full.mm(c.TabHole) / 2})
	d.group(sheet.LayerDatum).CentreMark(cord, full.mm(c.TabHole), full.mm(c.TabHole))
	g := d.group(sheet.LayerDim)
	end := foot.Y + long
	dim(g, sheet.Pt(foot.X+half, end), sheet.Pt(foot.X-half, end), 8, c.TabWide, d.dims)
	dim(g, sheet.Pt(foot.X-half, foot.Y), sheet.Pt(foot.X-half, end), -12, c.TabLong, d.dims)
	right, second := foot.X+half+5, max(cord.Y-5, foot.Y+9.5) // the notes one below another
	g.Note(sheet.Pt(foot.X+half+full.mm(tabFillet), foot.Y+full.mm(tabFillet)).Polar(full.mm(tabFillet), 3*math.Pi/4), sheet.Pt(right, foot.Y+2), true, "R "+d.first(tabFillet))
	g.Note(cord.Polar(full.mm(c.TabHole)/2, 0), sheet.Pt(right, second), true, "dia. "+d.first(c.TabHole), d.first(tabHoleUp)+" up")
	g.Note(sheet.Pt(foot.X+half-full.mm(tabRound), end-full.mm(tabRound)).Polar(full.mm(tabRound), -math.Pi/4), sheet.Pt(right, max(end-1, second+6.5)), true, "R "+d.first(tabRound))
	return headHeight + 6 + long + 20
}

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
	h, flange, plug := d.mm(c.Flange.H), d.mm(c.FlangeThk), d.mm(c.PlugSheet())
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
	dim(g, sheet.Pt(x+plug, at.Y-pad), sheet.Pt(x, at.Y-pad), -5, c.PlugSheet(), d.dims)
	foot = at.Y + h + d.mm(c.TabLong)
	dim(g, sheet.Pt(at.X, foot), sheet.Pt(x, foot), -6, c.FlangeThk, d.dims)
}

// words sets what the cover is.
func (d coverDrawing) words(f *sheet.Flow) {
	c := d.job.Cover
	f.Heading("What it is")
	one := d.one
	tether := "A cord of 3 mm or more ties the tab to the frame, not to the pane; the cover hangs clear of people's faces."
	if !c.Tether {
		tether = "The plan has no tether: the tab is there all the same; tie it, so that the cover is where the hole is."
	}
	f.Numbered(
		fmt.Sprintf("Plug and flange of %s, glued or cut from one piece.", bought(c.Material)),
		fmt.Sprintf("Corners of the plug R %s, of the flange R %s; all edges rounded R %s.", one(c.PlugCorner), one(c.flangeCorner()), one(c.Rounding)),
		fmt.Sprintf("Clearance to the hole %s on each side at %.0f deg C; plug %s.", one(c.Clearance), c.Options.Made, tolerance(c.Options.PlugTolerance, d.sys)),
		fmt.Sprintf("Plug from a sheet of %s, at most %s deep, for the thinnest sheet that the pane may be: measure the pane; nothing stands past the rink face.", one(c.PlugSheet()), one(c.PlugDepth)),
		fmt.Sprintf("Tab R %s at its foot, R %s at the flange; hole dia. %s, %s up. ", one(tabRound), one(tabFillet), one(c.TabHole), one(tabHoleUp))+tether,
		fmt.Sprintf("Mark the cover with its hole: %s. What holds it in is on the next sheet.", d.job.Hole.ID))
}

// bought is a cover's material as one asks for it: how its sheets are made, and the grade.
func bought(m glass.Material) string {
	how := "cast sheet (ISO 7823-1)"
	if m == glass.Polycarbonate {
		how = "extruded sheet (ISO 11963, from memory)"
	}
	return string(m) + ", " + how + ", clear, general-purpose grade"
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

package cut

import (
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/words"
)

// outlineMargin is the white round a drawing for a machine, mm.
const outlineMargin = 60.0

// machineSheet is a sheet for a machine with room for so many millimetres of
// parts, which its area is.
func (p ShopOrder) machineSheet(name, title string, w, h float64) page {
	d := sheet.New(name, w+2*outlineMargin, h+2*outlineMargin, styles())
	d.Layers, d.Title, d.Desc = layers(), title, p.Stamp()
	return page{d: d, area: sheet.Rect{X: outlineMargin, Y: outlineMargin, W: w, H: h}, sys: p.Arena.Units}
}

// PaneOutline is the pane at full size from the shooting side for a shop's or
// a factory's machine: the hole on layer CUT as one closed outline, the pane's
// visible edges and the centre lines on DATUM, notes on TEXT.
func (p ShopOrder) PaneOutline(j Job) *sheet.Drawing {
	g := p.machineSheet("pane-outline", "Hole "+j.Hole.ID+": pane outline, full size", j.Face.Width.Millimetres(), j.Face.Height.Millimetres())
	pane := g.area
	datum := g.group(sheet.LayerDatum)
	datum.Add("edge", sheet.RoundRect(pane, 0))
	c := sheet.Pt(pane.X+j.Face.Left.Millimetres(), pane.Y+pane.H-j.Face.Up.Millimetres())
	hole := rim(c, j.Hole.Size, 1)
	g.group(j.outlineLayer()).Add("cut-line", sheet.RoundRect(hole, j.Corner.Millimetres()))
	datum.Add("centre-line", sheet.Line{A: sheet.Pt(pane.X, c.Y), B: sheet.Pt(pane.X+pane.W, c.Y)})
	datum.Add("centre-line", sheet.Line{A: sheet.Pt(c.X, pane.Y), B: sheet.Pt(c.X, pane.Y+pane.H)})
	if j.Pilot() > 0 {
		for _, at := range corners(hole, j.Corner.Millimetres()) {
			g.group(sheet.LayerEngrave).Add("pilot", sheet.Circle{C: at, R: j.Corner.Millimetres()})
		}
	}
	for _, k := range j.Neighbours {
		at := rim(sheet.Pt(pane.X+k.Left.Millimetres(), pane.Y+pane.H-k.Up.Millimetres()), k.Hole.Size, 1)
		datum.Add("edge", sheet.RoundRect(at, k.Corner.Millimetres()))
		g.group(sheet.LayerText).Add("note", sheet.Text{At: sheet.Pt(at.X, at.Y-3), S: "hole " + k.Hole.ID + ": in the same pane, " + standsWord(k.Hole) + "see its own drawing"})
	}
	say := "FROM THE SHOOTING SIDE; DATUM: visible edge of the pane, bottom edge at the boards' top"
	if j.Face.Curved {
		say += "; CURVED PANE, inner radius " + g.one(j.Face.Radius) + ": unrolled, lengths along the rink face"
	}
	g.stamp(p, j, sheet.Pt(pane.X, pane.Y-outlineMargin/2), say)
	return g.d
}

// outlineLayer is the layer of the hole's outline: nothing of a hole that
// exists stands on the layer that a machine cuts.
func (j Job) outlineLayer() string {
	if j.Exists() {
		return sheet.LayerDatum
	}
	return sheet.LayerCut
}

// standsWord says of a neighbour that it exists already.
func standsWord(h glass.Hole) string {
	if h.State == glass.Cut {
		return "exists, "
	}
	return ""
}

// drill draws the pilot holes at a hole's corners of a radius in millimetres.
func (j Job) drill(g *sheet.Group, hole sheet.Rect, r float64) {
	for _, c := range corners(hole, r) {
		if j.Pilot() > 0 {
			g.Add("pilot", sheet.Circle{C: c, R: r})
			g.CentreMark(c, 0, 0)
		}
	}
}

// corners returns the centres of a rectangle's rounded corners.
func corners(r sheet.Rect, radius float64) [4]sheet.Point {
	return [4]sheet.Point{
		{X: r.X + radius, Y: r.Y + radius}, {X: r.X + r.W - radius, Y: r.Y + radius},
		{X: r.X + radius, Y: r.Y + r.H - radius}, {X: r.X + r.W - radius, Y: r.Y + r.H - radius},
	}
}

// CoverOutline is the cover's two parts at full size: plug, and flange with
// the cord's hole, each one closed outline on layer CUT.
func (p ShopOrder) CoverOutline(j Job) *sheet.Drawing {
	j, _ = j.ofCover()
	c := j.Cover
	pw, ph := c.Plug.W.Millimetres(), c.Plug.H.Millimetres()
	fw, fh, tab := c.Flange.W.Millimetres(), c.Flange.H.Millimetres(), c.TabLong.Millimetres()
	g := p.machineSheet("cover-outline", "Hole "+j.Hole.ID+": cover outlines, full size", pw+fw+outlineMargin, fh+tab)
	cut := g.group(sheet.LayerCut)
	plug := sheet.Rect{X: outlineMargin, Y: outlineMargin, W: pw, H: ph}
	cut.Add("cut-line", sheet.RoundRect(plug, c.PlugCorner.Millimetres()))
	at := sheet.Pt(pw+2*outlineMargin, outlineMargin)
	cut.Add("cut-line", flangeOutline(c, at, 1))
	cut.Add("cut-line", sheet.Circle{C: sheet.Pt(at.X+fw/2, at.Y+fh+tab-tabHoleUp.Millimetres()), R: c.TabHole.Millimetres() / 2})
	t := g.group(sheet.LayerText)
	t.Add("note", sheet.Text{At: sheet.Pt(plug.X, plug.Y+ph+6), S: "PLUG, " + string(c.Material) + ", thickness at most " + g.one(c.PlugDepth), VAlign: sheet.Top})
	t.Add("note", sheet.Text{At: sheet.Pt(at.X, at.Y+fh+tab+6), S: "FLANGE, " + string(c.Material) + ", thickness " + g.one(c.FlangeThk), VAlign: sheet.Top})
	t.Add("title", sheet.Text{At: sheet.Pt(plug.X+pw/2, plug.Y+ph/2), S: j.Hole.ID, Anchor: sheet.Middle, VAlign: sheet.Centre})
	g.stamp(p, j, sheet.Pt(plug.X, plug.Y-outlineMargin/2), "all edges rounded R "+g.one(c.Rounding))
	return g.d
}

// stamp writes what the drawing is, its plan and the cautions as text.
func (g page) stamp(p ShopOrder, j Job, at sheet.Point, say string) {
	t := g.group(sheet.LayerText)
	lines := []string{
		p.subject() + ", hole " + j.Hole.ID + ", pane " + j.Pane.ID + ", " + string(j.Material.Name) + ", route " + string(j.Route) + ", plan " + p.Mark,
		p.Stamp(),
		words.ApprovalSentence(p.Approval),
		say,
	}
	if j.Material.MadeToOrder() {
		lines = append(lines, "ORDER MADE: NEVER CUT "+strings.ToUpper(j.Material.Noun()))
	}
	lines = append(lines, glass.Cautions()...)
	for i, s := range lines {
		t.Add("note", sheet.Text{At: sheet.Pt(at.X, at.Y+lineHeight*float64(i)-lineHeight*float64(len(lines))/2), S: s, VAlign: sheet.Top})
	}
	_, why := j.status()
	for i, s := range why { // above the notes, on a layer of its own
		g.group(statusLayer).Add("status", sheet.Text{At: sheet.Pt(at.X, at.Y-lineHeight*float64(len(lines)+2*(len(why)-i))/2), S: s.In(g.sys), VAlign: sheet.Top})
	}
}

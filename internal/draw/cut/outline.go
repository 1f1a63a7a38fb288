package cut

import (
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// PaneOutline is the pane of a job at full size from the shooting side for a shop's or
// a factory's machine: each hole that is to be made on layer CUT as one closed outline,
// its pilot holes on DRILL; what exists or may not be made, the pane's visible edges and
// the centre lines on DATUM, notes on TEXT. Lengths are along the shooting face, as on the pane's sheet.
func (p ShopOrder) PaneOutline(of Job) *sheet.Drawing {
	j := p.paneJob(of)
	from := "FROM THE SHOOTING SIDE. DATUM: left visible edge of the pane and its bottom edge at the boards' top."
	if j.Face.Curved {
		from += " CURVED PANE, inner radius " + (page{sys: p.Arena.Units}).one(j.Face.Radius) + ": unrolled, lengths along the shooting face."
	}
	g := p.machineSheet(j.front(j.Face.Width).Millimetres(), j.Face.Height.Millimetres(), p.aboutPane(j,
		from, "Label on the other face: THIS FACE TO ICE, pane "+j.Pane.ID+"."))
	pane := g.area
	datum := g.group(sheet.LayerDatum)
	datum.Add("edge", sheet.RoundRect(pane, 0))
	at := func(left, up unit.Length) sheet.Point {
		return sheet.Pt(pane.X+j.front(left).Millimetres(), pane.Y+pane.H-up.Millimetres())
	}
	for _, k := range j.spots {
		c := at(k.Left, k.Up)
		hole := rim(c, k.Hole.Size, 1)
		g.group(k.work.layer()).Add("cut-line", roundHole(hole, k.Corner))
		if len(j.spots) > 1 {
			g.text(sheet.LayerText, sheet.Pt(hole.X, hole.Y+hole.H+3), "hole "+k.Hole.ID+": "+k.work.words())
		}
	}
	for _, l := range levels(j.spots, func(k onPane) unit.Length { return k.Up }) {
		y := at(0, l).Y
		datum.Add("centre-line", sheet.Line{A: sheet.Pt(pane.X, y), B: sheet.Pt(pane.X+pane.W, y)})
	}
	for _, l := range levels(j.spots, func(k onPane) unit.Length { return k.Left }) {
		x := at(l, 0).X
		datum.Add("centre-line", sheet.Line{A: sheet.Pt(x, pane.Y), B: sheet.Pt(x, pane.Y+pane.H)})
	}
	for _, k := range j.jobs {
		if k.Pilot() > 0 {
			for _, at := range corners(rim(at(k.Face.Left, k.Face.Up), k.Hole.Size, 1), k.Corner.Millimetres()) {
				g.group(sheet.LayerDrill).Add("pilot", sheet.Circle{C: at, R: k.Corner.Millimetres()})
			}
		}
	}
	return g.d
}

// front returns a length along the rink face as it is along the shooting face, which
// drawings of the pane are dimensioned on.
func (j Job) front(l unit.Length) unit.Length { return j.Face.Behind(l, j.Thick) }

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

// PlugOutline is the cover's plug at full size: one closed outline on CUT, cut from
// a sheet of its own thickness.
func (p ShopOrder) PlugOutline(j Job) *sheet.Drawing {
	j, _ = j.ofCover()
	c, w := j.Cover, page{sys: p.Arena.Units}
	g := p.machineSheet(c.Plug.W.Millimetres(), c.Plug.H.Millimetres(), p.aboutJob(j, "plug-outline", "cover's plug",
		"PLUG of "+string(c.Material)+", sheet "+w.one(c.PlugSheet())+", at most "+w.one(c.PlugDepth)+"; all edges rounded R "+w.one(c.Rounding)))
	g.group(sheet.LayerCut).Add("cut-line", roundHole(g.area, c.PlugCorner))
	g.group(sheet.LayerText).Add("title", sheet.Text{At: sheet.Pt(g.area.X+g.area.W/2, g.area.Y+g.area.H/2), S: j.Hole.ID, Anchor: sheet.Middle, VAlign: sheet.Centre})
	return g.d
}

// FlangeOutline is the cover's flange with its tab at full size from the shooting
// side: one closed outline on CUT, the cord's hole on DRILL, and on ENGRAVE where
// the plug is glued on behind.
func (p ShopOrder) FlangeOutline(j Job) *sheet.Drawing {
	j, _ = j.ofCover()
	c, w := j.Cover, page{sys: p.Arena.Units}
	fw, fh, tab := c.Flange.W.Millimetres(), c.Flange.H.Millimetres(), c.TabLong.Millimetres()
	g := p.machineSheet(fw, fh+tab, p.aboutJob(j, "flange-outline", "cover's flange",
		"FLANGE of "+string(c.Material)+", sheet "+w.one(c.FlangeThk)+"; all edges rounded R "+w.one(c.Rounding),
		"ENGRAVE: the plug is glued on within this line, on the face toward the rink; scribe it, do not cut it."))
	at := sheet.Pt(g.area.X, g.area.Y)
	g.group(sheet.LayerCut).Add("cut-line", flangeOutline(c, at, 1))
	g.group(sheet.LayerDrill).Add("pilot", sheet.Circle{C: sheet.Pt(at.X+fw/2, at.Y+fh+tab-tabHoleUp.Millimetres()), R: c.TabHole.Millimetres() / 2})
	g.group(sheet.LayerEngrave).Add("hidden-edge", roundHole(rim(sheet.Pt(at.X+fw/2, at.Y+fh/2), c.Plug, 1), c.PlugCorner))
	g.group(sheet.LayerText).Add("title", sheet.Text{At: sheet.Pt(at.X+fw/2, at.Y+fh/2), S: j.Hole.ID, Anchor: sheet.Middle, VAlign: sheet.Centre})
	return g.d
}

package cut

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// Sizes of the sheet of an opening in the boards, and of its cover: own choices.
const (
	openingShare   = 0.5
	openingPlaced  = 0.5                   // of its place on the boards in the height                  // of the drawing in the sheet's width
	openingBeside  = 400 * unit.Millimetre // of boards drawn to either side, at least
	shutterOverlap = 20 * unit.Millimetre  // past the opening on every side
	openingLeast   = 50 * unit.Millimetre  // between its rim and anything behind the boards' cladding
	openingPlace   = 5 * unit.Millimetre   // tolerance of its place
	openingSize    = 1 * unit.Millimetre   // tolerance of its size
)

// openingPage draws an opening in the boards where it stands, with what a shop needs to
// make it or to check it. Whether it exists the plan does not say.
func (s *set) openingPage(w glass.Window) {
	g := page{sys: s.Arena.Units}
	a := s.probe(lying, marks{}).area
	boards := s.Arena.Boards.Height
	o := opening{w: w, boards: boards, left: openingBeside + w.Size.W/2}
	span := 2 * o.left
	if pane, known := s.Arena.PaneAt(w.Station); known {
		o.left, o.pane = s.Arena.Rink.Wrap(w.Station-pane.From), pane.ID
		span = max(pane.Width, o.left+w.Size.W)
	}
	wide := a.W*openingShare - columnGap/2
	scale := s.scaleFor(span, boards, wide-elevLeft-level-8, a.H*openingPlaced-headHeight-stub-24, 1)
	o.span = span
	placed := headHeight + stub + 4 + boards.Millimetres()*scale/s.growth + 24
	detail := s.scaleFor(w.Size.W, w.Size.H, wide-2*detailRoom, a.H-placed-headHeight-detailTall, 1)
	o.page = s.page(lying, "opening", "Low window "+w.ID+": opening in the boards", marks{},
		sheet.Field{Name: "Opening", Value: g.one(w.Size.W) + " x " + g.one(w.Size.H)}, sheet.Field{Name: "Quantity", Value: "1"},
		sheet.Field{Name: "Place", Value: scaleText(scale)}, sheet.Field{Name: "Opening to scale", Value: scaleText(detail)}, g.governing())
	o.scale = o.laid(scale)
	o.front()
	o.outline(sheet.Rect{X: o.area.X, Y: o.area.Y + placed, W: wide}, o.laid(detail))
	f := s.column(o.page, o.beside(wide), lying, marks{})
	f.Heading("Sizes, places and tolerances")
	f.Table(sizeFields().Of("", o.sizes(), g.sys), sheet.SizeTable)
	f.Heading("To make it, or to check one that exists")
	f.Numbered(o.steps()...)
	f.Notes("Where: station "+along(s.Arena.Rink.Wrap(w.Station), g.sys)+", "+o.about()+".",
		"What must stay free before the lens is on the next sheet.", "The plan does not say whether it exists; look before anything is ordered.")
	f.Notes(s.history()...)
}

// opening is an opening in the boards being drawn.
type opening struct {
	page
	w      glass.Window
	boards unit.Length
	left   unit.Length // from the datum to the opening's centre, along the boards' rink face
	span   unit.Length // of boards drawn
	pane   string      // whose left edge is the datum; "" where none is surveyed
	scale  float64
}

// front draws the boards from the shooting side, from the ice to their top.
func (o opening) front() {
	t, d, g := o.group(sheet.LayerText), o.group(sheet.LayerDatum), o.group(sheet.LayerDim)
	heading(t, o.area.X, o.area.Y, "Its place, from the shooting side")
	mm := func(l unit.Length) float64 { return l.Millimetres() * o.scale }
	box := sheet.Rect{X: o.area.X + elevLeft, Y: o.area.Y + headHeight + stub + 4, W: mm(o.span), H: mm(o.boards)}
	ice := box.Y + box.H
	d.Add("boards", sheet.RoundRect(box, 0))
	c := sheet.Pt(box.X+mm(o.left), ice-mm(o.w.Height))
	hole := rim(c, o.w.Size, o.scale)
	o.group(sheet.LayerCut).Add("cut", sheet.RoundRect(hole, mm(o.w.Corner.Or(0))))
	d.CentreMark(c, hole.W, hole.H)
	t.Add("tag", sheet.Text{At: sheet.Pt(c.X, hole.Y-4), S: o.w.ID, Anchor: sheet.Middle})
	dim(g, sheet.Pt(box.X, box.Y), sheet.Pt(box.X, ice), -12, o.boards, o.places)
	if o.pane != "" {
		dim(g, sheet.Pt(c.X, ice), sheet.Pt(box.X, ice), level, o.left, o.places)
	}
	right := box.X + box.W
	dim(g, sheet.Pt(right, c.Y), sheet.Pt(right, ice), level, o.w.Height, o.places)
	g.Add("dim", sheet.Line{A: c, B: sheet.Pt(right, c.Y)})
	if o.pane != "" {
		o.datum(sheet.Pt(box.X, box.Y+box.H*0.12), math.Pi, "A")
		above := sheet.Rect{X: box.X, Y: box.Y - stub, W: box.W, H: stub}
		d.Add("pane", sheet.RoundRect(above, 0))
		t.Add("caption", sheet.Text{At: sheet.Pt(box.X+box.W/2, box.Y-stub/2), S: "pane " + o.pane, Anchor: sheet.Middle, VAlign: sheet.Centre})
	}
	o.datum(sheet.Pt(right-5, ice), -math.Pi/2, "B")
}

// outline draws the opening alone, with its sizes.
func (o opening) outline(box sheet.Rect, k float64) {
	heading(o.group(sheet.LayerText), box.X, box.Y, "The opening")
	hole := rim(sheet.Pt(box.X+box.W/2, box.Y+headHeight+13+o.w.Size.H.Millimetres()*k/2), o.w.Size, k)
	r := o.w.Corner.Or(0).Millimetres() * k
	o.group(sheet.LayerCut).Add("cut", sheet.RoundRect(hole, r))
	o.group(sheet.LayerDatum).CentreMark(sheet.Pt(hole.X+hole.W/2, hole.Y+hole.H/2), hole.W, hole.H)
	g := o.group(sheet.LayerDim)
	dim(g, sheet.Pt(hole.X, hole.Y), sheet.Pt(hole.X+hole.W, hole.Y), 8, o.w.Size.W, o.dims)
	dim(g, sheet.Pt(hole.X, hole.Y), sheet.Pt(hole.X, hole.Y+hole.H), -9, o.w.Size.H, o.dims)
	if l, known := o.w.Corner.Get(); known {
		g.Note(sheet.Pt(hole.X+r, hole.Y+hole.H-r).Polar(r, -3*math.Pi/4), sheet.Pt(hole.X+max(8, r), hole.Y+hole.H+6), true, "R "+o.one(l)+", four corners")
	}
}

// about says what stands where on the drawing.
func (o opening) about() string {
	if o.pane != "" {
		return "datum A: the left edge of pane " + o.pane + ", plumbed down the boards; datum B: the ice, at its finished level"
	}
	return "measured along the boards, for no pane is surveyed above it; datum B: the ice, at its finished level"
}

// sizes lists an opening's sizes; what nobody recorded is not among them.
func (o opening) sizes() []size {
	out := []size{{what: "opening's width", is: o.w.Size.W, plus: openingSize}, {what: "opening's height", is: o.w.Size.H, plus: openingSize},
		{what: "ice to its centre", is: o.w.Height, plus: openingPlace}, {what: "its rim to the boards' top", is: o.boards - o.w.Height - o.w.Size.H/2, plus: openingPlace}}
	if o.pane != "" {
		out = append(out, size{what: "datum A to its centre", is: o.left, plus: openingPlace})
	}
	for _, k := range []struct {
		what string
		of   unit.Maybe[unit.Length]
		plus unit.Length
	}{{"corner radius", o.w.Corner, radiusTolerance}, {"edge rounding, both faces", o.w.Rounding, roundTolerance}} {
		if l, known := k.of.Get(); known {
			out = append(out, size{what: k.what, is: l, plus: k.plus})
		}
	}
	return out
}

// steps say how an opening is made, checked and covered.
func (o opening) steps() []string {
	corner, round := "R not recorded: as round as the cladding's maker asks", "rounded, R not recorded"
	if l, known := o.w.Corner.Get(); known {
		corner = "R " + o.one(l)
	}
	if l, known := o.w.Rounding.Get(); known {
		round = "rounded R " + o.one(l)
	}
	of, tie := "polycarbonate", "tied to the frame by a cord of 3 mm or more"
	if c, known := o.w.Cover.Get(); known && c.Material != "" {
		of = string(c.Material)
	}
	return []string{
		"The rink operator and the boards' maker agree before anything is cut. Look behind the cladding: frame, pipe, cable or anchor within " + o.one(openingLeast) + " of the rim, and it moves. NO MEMBER OF THE FRAME IS CUT.",
		"Mark from the datums; drill the corners (" + corner + "), saw from hole to hole, rout to the line on both skins.",
		"Edges " + round + " on both faces, smooth to the hand and to a puck; close the hollow between the skins all round, so that no stick or skate catches.",
		"Cover: a shutter of " + of + ", " + o.one(o.w.Size.W+2*shutterOverlap) + " x " + o.one(o.w.Size.H+2*shutterOverlap) + ", on the spectators' side, locked from there, " + tie + "; in whenever nobody works the opening, flush with or behind the boards' rink face.",
		"Check size, corners, edges and the shutter's lock before the rink opens.",
	}
}

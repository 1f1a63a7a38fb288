package chart

import (
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// wall draws the boards, the ice before them and the heights at the left end.
func (r *stripRow) wall() {
	all := piece{0, r.length}
	boards := r.Arena.Boards.Height
	r.d.Add("boards", "boards", sheet.RoundRect(r.box(all, 0, boards), 0))
	r.d.Add("boards", "edge", sheet.Line{A: sheet.Pt(r.x(0), r.y(boards)), B: sheet.Pt(r.x(r.length), r.y(boards))})
	r.d.Add("ice", "ice-line", sheet.Line{A: sheet.Pt(r.x(0), r.ice), B: sheet.Pt(r.x(r.length), r.ice)})
	g, _ := r.d.Group("stations", "")
	for _, h := range []unit.Length{boards, r.high} {
		y := r.y(h)
		g.Add("station", sheet.Line{A: sheet.Pt(stripLeft-1.6, y), B: sheet.Pt(stripLeft-0.4, y)})
		g.Add("station-text", sheet.Text{At: sheet.Pt(stripLeft-2.2, y), S: h.Format(r.Arena.Units), Anchor: sheet.End, VAlign: sheet.Centre})
	}
	g.Add("station-text", sheet.Text{At: sheet.Pt(stripLeft-2.2, r.ice), S: "ice", Anchor: sheet.End, VAlign: sheet.Centre})
}

// panes draws each pane at its width and height, with its name where it fits.
func (r *stripRow) panes() {
	boards := r.Arena.Boards.Height
	for _, p := range r.Arena.Panes {
		for _, q := range r.pieces(p.From, p.To()) {
			g, e := r.d.Group("glass", "")
			e.With("pane", p.ID).Titled(paneTitle(p, r.Arena.Units))
			box := r.box(q, boards, boards+p.Height)
			g.Add("glass "+materialClass("glass", p.Material.Or("")), sheet.RoundRect(box, 0))
			r.paneName(g, p.ID, box)
			if p.Gate != "" {
				r.gate(g, q)
			}
		}
	}
	r.stanchions()
}

// paneName sets a pane's name under it, at the boards' top: level, or turned
// where the pane is narrow; at the glass's top where the boards are too low on paper.
func (r *stripRow) paneName(g *sheet.Group, id string, box sheet.Rect) {
	width := box.W
	const room = 0.8
	w, top := sheet.Regular.Width(id, sizeTiny), r.y(r.Arena.Boards.Height)+1
	x := box.X + width/2
	switch free := r.ice - top - nameRise; {
	case w+room < width && free > sizeTiny:
		g.Add("glass-text", sheet.Text{At: sheet.Pt(x, top), S: id, Anchor: sheet.Middle, VAlign: sheet.Top})
	case w < free && sizeTiny+0.4 < width:
		g.Add("glass-text", sheet.Text{At: sheet.Pt(x, top), S: id, Anchor: sheet.End, VAlign: sheet.Centre, Rotate: quarterTurn})
	case sizeTiny+0.4 < width && w+2*room < box.H:
		g.Add("glass-text", sheet.Text{At: sheet.Pt(r.clearOf(box), box.Y+room), S: id, Anchor: sheet.End, VAlign: sheet.Centre, Rotate: quarterTurn})
	}
}

// clearOf is where a turned name stands across a pane: in its middle, or to one side
// where a landmark or the way down to an opening runs through it.
func (r *stripRow) clearOf(box sheet.Rect) float64 {
	const beside = sizeTiny/2 + 0.3
	middle, aside := box.X+box.W/2, box.W/2-beside
	near := min(aside, beside)
	return sheet.Clearest([]float64{middle, middle - near, middle + near, middle - aside, middle + aside}, r.crossing(), beside)
}

// crossing lists the places on the sheet where landmarks, and the ways from the labels
// down to holes and low windows, run over the glass.
func (r *stripRow) crossing() (out []float64) {
	for _, l := range r.landmarksHere() {
		out = append(out, r.x(l.offset))
	}
	for _, o := range append(r.holes(), r.windows()...) {
		out = append(out, r.x(o.at))
	}
	return out
}

// nameRise is the room of the landmarks' names at the foot of the boards, in millimetres.
const nameRise = 2.6

// gate draws a door's frame in the boards below a pane.
func (r *stripRow) gate(g *sheet.Group, q piece) {
	boards := r.Arena.Boards.Height
	a, b := sheet.Pt(r.x(q.from), r.ice), sheet.Pt(r.x(q.to), r.ice)
	g.Add("gate", sheet.Lines(a, sheet.Pt(a.X, r.y(boards)), sheet.Pt(b.X, r.y(boards)), b))
	handle := r.y(boards * 45 / 100)
	g.Add("gate", sheet.Line{A: sheet.Pt(b.X-1.4, handle), B: sheet.Pt(b.X-0.5, handle)})
}

func (r *stripRow) stanchions() {
	g, _ := r.d.Group("glass", "")
	boards := r.Arena.Boards.Height
	for _, s := range stanchions(r.Arena.Panes, r.per) {
		if o, ok := r.at(s); ok {
			g.Add("stanchion", sheet.Line{A: sheet.Pt(r.x(o), r.y(boards)-r.paneHigh(s)-0.5), B: sheet.Pt(r.x(o), r.y(boards)+0.8)})
		}
	}
}

// paneHigh returns the height on paper of the higher pane that meets a stanchion.
func (r *stripRow) paneHigh(s unit.Length) float64 {
	const near = 2 * unit.Centimetre
	h := unit.Length(0)
	for _, p := range r.Arena.Panes {
		if d := r.Arena.Rink.Wrap(s - p.From + near); d <= p.Width+2*near {
			h = max(h, p.Height)
		}
	}
	return r.scale * h.Metres()
}

// curves marks where the boards bend, in a thin band under the ice line.
func (r *stripRow) curves() {
	breaks := newGround(r.Arena.Rink, sheet.Point{}, 1).breaks()
	for i := 0; i+1 < len(breaks); i += 2 {
		for _, q := range r.pieces(unit.Length(breaks[i]), unit.Length(breaks[i+1])) {
			r.d.Add("ice", "curve", sheet.RoundRect(sheet.Rect{X: r.x(q.from), Y: r.ice + 0.4, W: r.x(q.to) - r.x(q.from), H: 1.1}, 0))
		}
	}
}

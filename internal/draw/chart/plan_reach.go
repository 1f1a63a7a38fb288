package chart

import (
	"image"
	"image/color"
	"math"
	"slices"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// The angle between the rays of a wedge's far edge: to the far boards, and of one
// drawn a little way, whose chords then leave its arc by 3 mm at 8 m.
const (
	wedgeStep  = unit.Degree
	coarseStep = 3 * unit.Degree
)

// outlineSteps is the number of chords in each corner for meeting the boards:
// they leave the arc by under 3 mm.
const outlineSteps = 32

// wedges draws each hole's reach as the part of the ice between its pan limits.
func (m *planMap) wedges() {
	if len(m.Reach) == 0 {
		return
	}
	outline := m.rink.Outline(outlineSteps)
	g, _ := m.d.Group("reach", "")
	m.unseen(g, outline)
	for _, w := range m.Reach {
		h, ok := m.Arena.Hole(w.Hole)
		if !ok {
			continue
		}
		class := "reach"
		switch {
		case w.Hole == m.Picked:
			class += " reach-picked"
		case m.Picked != "" || m.Heat != nil:
			class += " reach-quiet"
		}
		g.Add(class, m.wedge(w, h.Station, outline)).With("hole", w.Hole).
			Titled("Reach of " + w.Hole + ": pan " + angleName(w.Left) + " left, " + angleName(w.Right) + " right")
	}
}

// unseen tints the ice that the picked hole's wedge leaves out, so that what is
// seen stays white. A heat map tints it itself.
func (m *planMap) unseen(g *sheet.Group, outline []geom.Vec2) {
	h, ok := m.Arena.Hole(m.Picked)
	i := slices.IndexFunc(m.Reach, func(w Wedge) bool { return w.Hole == m.Picked })
	if !ok || i < 0 || m.Heat != nil {
		return
	}
	var rest sheet.Path
	rest.Add(m.around(0))
	rest.Add(m.wedge(m.Reach[i], h.Station, outline))
	g.Add("unseen", rest)
}

func (m *planMap) wedge(w Wedge, station unit.Length, outline []geom.Vec2) sheet.Polyline {
	p, n, t := m.rink.Point(station), m.rink.Normal(station), m.rink.Tangent(station)
	step := wedgeStep
	if w.Depth > 0 {
		step = coarseStep
	}
	edge := fan(-w.Left, w.Right, step, func(a unit.Angle) sheet.Point {
		sin, cos := math.Sincos(a.Radians())
		dir := n.Scale(cos).Add(t.Scale(sin))
		return m.pt(p.Add(dir.Scale(w.cut(rayLength(p, dir, outline)))))
	})
	return sheet.Polygon(append([]sheet.Point{m.pt(p)}, edge...)...)
}

// fan returns points at even steps, of one at most, from one angle to another, both included.
func fan(from, to, step unit.Angle, at func(unit.Angle) sheet.Point) []sheet.Point {
	pts := make([]sheet.Point, max(2, int(math.Ceil(float64((to-from)/step)))+1))
	for i := range pts {
		pts[i] = at(from + (to-from)*unit.Angle(i)/unit.Angle(len(pts)-1))
	}
	return pts
}

// cut shortens a ray of so many metres to the wedge's depth.
func (w Wedge) cut(metres float64) float64 {
	if w.Depth > 0 {
		return min(metres, w.Depth.Metres())
	}
	return metres
}

// rayLength returns how far a ray from a point on or in a convex
// counter-clockwise outline runs until it leaves it.
func rayLength(p, dir geom.Vec2, outline []geom.Vec2) float64 {
	best := math.Inf(1)
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		out := geom.Vec2{X: b.Y - a.Y, Y: a.X - b.X}
		if speed := dir.Dot(out); speed > 1e-12 {
			best = min(best, a.Sub(p).Dot(out)/speed)
		}
	}
	if math.IsInf(best, 1) {
		return 0
	}
	return max(best, 0)
}

// heat paints the grid of values over the ice.
func (m *planMap) heat() {
	h := m.Heat
	if h == nil || h.Cols < 1 || h.Rows < 1 || h.Address == "" && len(h.Values) < h.Cols*h.Rows {
		return
	}
	top := m.At(h.Corner.X, h.Corner.Y+float64(h.Rows)*h.Step)
	box := sheet.Rect{X: top.X, Y: top.Y, W: m.Len(float64(h.Cols) * h.Step), H: m.Len(float64(h.Rows) * h.Step)}
	m.d.Add("heat", "heat", sheet.Image{Rect: box, Img: m.carried(h).picture(), Address: h.Address}).Titled(h.Title)
	// Cells stand over the boards' curve: paper covers what is outside.
	var rim sheet.Path
	rim.Add(m.around(3 * m.Len(h.Step)))
	rim.Add(m.around(0))
	m.d.Add("heat", "paper", rim)
}

// carried returns the grid with the cells whose middle lies off the ice at the
// mean of their neighbours on it, so that the map reaches the boards' curve; what
// stands out is covered by paper.
func (m *planMap) carried(h *Heat) *Heat {
	out := *h
	out.Values = slices.Clone(h.Values)
	for i, v := range h.Values {
		col, row := i%h.Cols, i/h.Cols
		if math.IsNaN(v) && !m.rink.Contains(h.middle(row, col)) {
			out.Values[i] = h.around(col, row)
		}
	}
	return &out
}

// around returns the mean of a cell's known neighbours, NaN when there is none.
func (h *Heat) around(col, row int) float64 {
	sum, n := 0.0, 0
	for r := max(row-1, 0); r <= min(row+1, h.Rows-1); r++ {
		for c := max(col-1, 0); c <= min(col+1, h.Cols-1); c++ {
			if v := h.Values[r*h.Cols+c]; !math.IsNaN(v) {
				sum += v
				n++
			}
		}
	}
	return sum / float64(n)
}

// picture returns the grid as a picture, its last row at the top, or nil when
// the page finds it elsewhere.
func (h *Heat) picture() image.Image {
	if h.Address != "" {
		return nil
	}
	img := image.NewNRGBA(image.Rect(0, 0, h.Cols, h.Rows))
	for row := range h.Rows {
		for col := range h.Cols {
			if v := h.Values[row*h.Cols+col]; !math.IsNaN(v) {
				img.SetNRGBA(col, h.Rows-1-row, heatColour(v))
			}
		}
	}
	return img
}

// The heat map's scale runs from nearly the ice's own tone to deep blue. Its
// lightness falls steadily, so that it reads in grey as well.
var (
	heatLow  = [3]float64{0xf3, 0xf8, 0xfb}
	heatMid  = [3]float64{0x8c, 0xbe, 0xd9}
	heatHigh = [3]float64{0x14, 0x4d, 0x78}
)

// heatColour returns the colour of a share from 0 to 1.
func heatColour(v float64) color.NRGBA {
	v = min(max(v, 0), 1) * 2
	a, b := heatLow, heatMid
	if v > 1 {
		a, b, v = heatMid, heatHigh, v-1
	}
	mix := func(i int) uint8 { return uint8(a[i] + (b[i]-a[i])*v + 0.5) }
	return color.NRGBA{mix(0), mix(1), mix(2), 255}
}

package chart

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/geom"
)

// Contour is a line of one value over a grid, with its label.
type Contour struct {
	At    float64 // the value, on the grid's own scale
	Label string
}

// Room that a contour's label keeps to the boards and to other labels, millimetres.
const (
	contourEdge = 4.0
	contourGap  = 9.0
)

// contours draws the heat's lines and their labels. Labels stand on their own
// line, where it lies farthest from those set before.
func (m *planMap) contours() {
	if m.Heat == nil || len(m.Heat.Lines) == 0 || len(m.Heat.Values) < m.Heat.Cols*m.Heat.Rows {
		return
	}
	h := m.carried(m.Heat)
	g, _ := m.d.Group("contours", "")
	var labels []sheet.Text
	for _, c := range h.Lines {
		var line sheet.Path
		var best sheet.Point
		free := -1.0
		for _, s := range h.isoline(c.At) {
			if !m.rink.Contains(s[0]) || !m.rink.Contains(s[1]) {
				continue
			}
			a, b := m.pt(s[0]), m.pt(s[1])
			line.MoveTo(a)
			line.LineTo(b)
			if room := m.labelRoom(s[0], labels); room > free {
				free, best = room, a
			}
		}
		g.Add("contour", line)
		if c.Label != "" && free > contourGap {
			labels = append(labels, sheet.Text{At: best, S: c.Label, Anchor: sheet.Middle, VAlign: sheet.Centre})
		}
	}
	for _, t := range labels {
		m.plate(g, "contour-text", t)
	}
}

// labelRoom is how far a place lies from the labels set so far, in millimetres;
// none where it lies near the boards, among the names on the ice.
func (m *planMap) labelRoom(p geom.Vec2, set []sheet.Text) float64 {
	for _, way := range [4]geom.Vec2{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}} {
		if !m.rink.Contains(p.Add(way.Scale((contourEdge + m.paneRoom()) / m.Scale))) {
			return -1
		}
	}
	const most = 60.0 // farther is no better: then the middle of the ice draws no label
	room := most
	at := m.pt(p)
	for _, t := range set {
		room = min(room, at.Dist(t.At))
	}
	return room
}

// isoline returns the pieces of the line at a value between the middles of the
// cells, linear along each side (marching squares), in metres of the rink frame.
// Squares with an unknown or guessed corner have none; of the two ways through a saddle
// the one that keeps the higher corners together when the mean is higher.
func (h *Heat) isoline(at float64) [][2]geom.Vec2 {
	var out [][2]geom.Vec2
	for row := 0; row+1 < h.Rows; row++ {
		for col := 0; col+1 < h.Cols; col++ {
			cuts := h.cuts(row, col, at)
			switch len(cuts) {
			case 2:
				out = append(out, [2]geom.Vec2{cuts[0], cuts[1]})
			case 4:
				k := 0
				if first, mean := h.value(row, col), h.mean(row, col); (first > at) == (mean > at) {
					k = 1
				}
				out = append(out, [2]geom.Vec2{cuts[k], cuts[(k+1)%4]}, [2]geom.Vec2{cuts[(k+2)%4], cuts[(k+3)%4]})
			}
		}
	}
	return out
}

// corners of a square of cell middles, counter-clockwise from the least x and y.
var squareCorners = [4][2]int{{0, 0}, {0, 1}, {1, 1}, {1, 0}} // row, column

func (h *Heat) value(row, col int) float64 { return h.Values[row*h.Cols+col] }

func (h *Heat) mean(row, col int) float64 {
	sum := 0.0
	for _, c := range squareCorners {
		sum += h.value(row+c[0], col+c[1])
	}
	return sum / 4
}

// cuts returns where the line at a value crosses the sides of a square, side by side.
func (h *Heat) cuts(row, col int, at float64) []geom.Vec2 {
	var out []geom.Vec2
	for i, c := range squareCorners {
		n := squareCorners[(i+1)%4]
		a, b := h.value(row+c[0], col+c[1]), h.value(row+n[0], col+n[1])
		if math.IsNaN(a) || math.IsNaN(b) || h.Guessed != nil && h.Guessed[(row+c[0])*h.Cols+col+c[1]] {
			return nil
		}
		if (a > at) != (b > at) {
			p, q := h.middle(row+c[0], col+c[1]), h.middle(row+n[0], col+n[1])
			out = append(out, p.Add(q.Sub(p).Scale((at-a)/(b-a))))
		}
	}
	return out
}

// middle is the middle of a cell, metres in the rink frame.
func (h *Heat) middle(row, col int) geom.Vec2 {
	return h.Corner.Add(geom.Vec2{X: (float64(col) + 0.5) * h.Step, Y: (float64(row) + 0.5) * h.Step})
}

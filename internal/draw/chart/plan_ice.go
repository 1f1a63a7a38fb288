package chart

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/survey/rink"
)

func (m *planMap) ice() { m.d.Add("ice", "ice", m.around(0)) }

// markings paints the lines, spots, circles, creases and goals.
func (m *planMap) markings() {
	g, _ := m.d.Group("markings", "")
	for _, l := range m.rink.Lines() {
		class := "paint-red"
		if l.Kind == rink.LineBlue {
			class = "paint-blue"
		}
		a, b, half := m.pt(l.From), m.pt(l.To), max(m.Len(l.Width), sheet.W18)/2
		g.Add(class, sheet.RoundRect(sheet.Rect{X: a.X - half, Y: b.Y, W: 2 * half, H: a.Y - b.Y}, 0))
	}
	for _, c := range m.rink.Creases() {
		a := 2 * math.Asin(min(c.HalfWidth/c.Radius, 1))
		g.Add("crease", m.creaseOutline(c.Outline(1), a*c.Out))
	}
	for _, s := range m.rink.Spots() {
		at := m.pt(s.At)
		class := "paint-red"
		if s.Centre {
			class = "paint-blue"
		}
		g.Add(class, sheet.Circle{C: at, R: max(m.Len(spotRadius), 0.5)})
		if s.Circle > 0 {
			g.Add("paint-line", sheet.Circle{C: at, R: m.Len(s.Circle)})
		}
	}
	for _, goal := range m.Arena.Goals() {
		g.Add("goal", sheet.Polygon(m.pt(goal.Posts[0]), m.pt(goal.Posts[1]), m.pt(goal.Back[1]), m.pt(goal.Back[0])))
	}
}

// spotRadius is half a face-off spot's breadth in metres: 1 ft (rule books, rink section).
const spotRadius = 0.3048

// creaseOutline makes the crease's polygon of few points a true arc: its two
// middle points are the arc's ends.
func (m *planMap) creaseOutline(pts []geom.Vec2, sweep float64) sheet.Polyline {
	l := sheet.Polyline{Closed: true}
	for _, p := range pts {
		l.Vertices = append(l.Vertices, sheet.Vertex{Point: m.pt(p)})
	}
	first := (len(pts) - 2) / 2
	l.Vertices[first].Bulge = sheet.Bulge(sweep)
	return l
}

// stations marks the stations inside the boards, every 10 m or 50 ft.
func (m *planMap) stations() {
	g, _ := m.d.Group("stations", "")
	step := stationStep(m.Arena.Units)
	per := m.rink.Perimeter()
	for s := step * 0; s < per-step/3; s += step {
		g.Add("station", sheet.Line{A: m.off(s, 0), B: m.off(s, -1.4)})
		at := m.off(s, -3.6-m.paneRoom())
		if s == 0 {
			at.X += zeroAside
		}
		m.plate(g, "station-text", sheet.Text{At: at, S: stationName(s, m.Arena.Units), Anchor: sheet.Middle, VAlign: sheet.Centre})
	}
	end, aside, in := 0.6*m.length/2, -m.length/16, m.inward(sideIn+m.paneRoom())
	for _, e := range []struct {
		s    string
		x, y float64
	}{
		{"end A", -end, 0}, {"end B", end, 0},
		{"bench side", aside, -m.width/2 + in}, {"box side", aside, m.width/2 - in},
	} {
		m.plate(g, "side-text", sheet.Text{At: m.At(e.x, e.y), S: e.s, Anchor: sheet.Middle, VAlign: sheet.Centre})
	}
}

// Words on the ice, in millimetres: how far station 0 steps aside from the red
// line, and how far the names of the sides stand in from the boards.
const (
	zeroAside = 4.5
	sideIn    = 7.5
)

// plate sets words on the ice on a light ground, so that they read over a heat map.
func (m *planMap) plate(g *sheet.Group, class string, t sheet.Text) {
	box := t.Box(m.d.Styles.Resolve(class, sheet.Style{}))
	g.Add("plate", sheet.RoundRect(sheet.Rect{X: box.X - 0.6, Y: box.Y - 0.5, W: box.W + 1.2, H: box.H + 0.6}, 0.8))
	g.Add(class, t)
}

// inward returns millimetres on paper as metres of the rink.
func (g ground) inward(mm float64) float64 { return mm / g.Scale }

package chart

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
)

// polarRings are the transmissions at which the polar chart draws its rings: the
// marks of clear and usable, and all of the light. No unit.
var polarRings = []float64{0.5, 0.95, 1}

// PanPolar draws the transmission against pan round the hole, seen from above:
// straight ahead is up, the length of a ray is the share of the light that
// passes at the frame's centre (solid) and at its worst corner (dashed). The
// sectors of clear and usable pan are shaded. The loss is taken to be the same
// to both sides. Width in millimetres; the height follows.
func PanPolar(f Fit, width float64) *sheet.Drawing {
	width = max(width, leastPlot)
	p := &polar{Fit: f, r: (width - 2*polarSide) / 2}
	top := plotTop + 3
	p.d = sheet.New("pan-polar", width, top+p.r+polarFoot, Styles())
	p.d.Title = f.Lens + " in " + f.Hole
	p.d.Desc = "Share of the light that passes against pan, seen from above, straight ahead up."
	p.c = sheet.Pt(width/2, top+p.r+2)
	p.d.Add("legend", "head", sheet.Text{At: sheet.Pt(3, 2.2), S: sheet.Bold.Shorten(p.d.Title, sheet.SizeHead, width-6), VAlign: sheet.Top})
	p.sectors()
	p.grid()
	p.curve(0, func(i int) float64 { return f.Rows[i].Centre })
	p.curve(1, func(i int) float64 { return f.Rows[i].Corner })
	p.foot()
	return p.d
}

// Room beside and below the half circle in millimetres.
const (
	polarSide = 9.0
	polarFoot = 14.0
)

type polar struct {
	Fit
	d *sheet.Drawing
	c sheet.Point
	r float64 // mm, of all the light
}

// at returns where a pan angle (degrees, to the right) and a share stand.
func (p *polar) at(panDeg, share float64) sheet.Point {
	return p.c.Polar(p.r*share, (90-panDeg)*math.Pi/180)
}

func (p *polar) sectors() {
	for _, s := range []struct {
		class string
		limit unit.Maybe[unit.Angle]
	}{{"sector-usable", p.Limits.Usable}, {"sector-clear", p.Limits.Clear}} {
		if a, ok := s.limit.Get(); ok {
			l := sheet.Lines(p.c, p.at(a.Degrees(), 1), p.at(-a.Degrees(), 1))
			l.Closed = true
			l.Vertices[1].Bulge = sheet.Bulge(2 * a.Radians())
			p.d.Add("sectors", s.class, l)
		}
	}
}

func (p *polar) grid() {
	g, _ := p.d.Group("axes", "")
	for _, share := range polarRings {
		g.Add("grid", sheet.Arc{C: p.c, R: p.r * share, From: 0, Sweep: math.Pi})
	}
	for a := -90.0; a <= 90; a += 15 {
		g.Add("grid", sheet.Line{A: p.c, B: p.at(a, 1)})
		if math.Mod(a, 30) == 0 {
			g.Add("tick-text", sheet.Text{At: p.at(a, 1+3.4/p.r), S: tickName(math.Abs(a), 10) + "°", Anchor: sheet.Middle, VAlign: sheet.Centre})
		}
	}
	g.Add("axis", sheet.Line{A: p.at(-90, 1), B: p.at(90, 1)})
	g.Add("tick-text", sheet.Text{At: sheet.Pt(p.c.X+p.r*0.5, p.c.Y+0.9), S: "half", Anchor: sheet.Middle, VAlign: sheet.Top})
	g.Add("tick-text", sheet.Text{At: sheet.Pt(p.c.X+p.r, p.c.Y+0.9), S: "all", Anchor: sheet.End, VAlign: sheet.Top})
}

// curve draws one line of the loss table to both sides.
func (p *polar) curve(i int, share func(row int) float64) {
	var pts []sheet.Point
	for k := len(p.Rows) - 1; k >= 0; k-- {
		pts = append(pts, p.at(-p.Rows[k].Angle.Degrees(), share(k)))
	}
	for k := range p.Rows {
		if p.Rows[k].Angle > 0 {
			pts = append(pts, p.at(p.Rows[k].Angle.Degrees(), share(k)))
		}
	}
	if len(pts) > 1 {
		p.d.Add("series", seriesClass(i), sheet.Lines(pts...))
	}
}

func (p *polar) foot() {
	g, _ := p.d.Group("legend", "")
	line := func(i int, words string) entry { return lineEntry(seriesClass(i), words) }
	entries := []entry{line(0, "frame's centre"), line(1, "worst corner")}
	if _, ok := p.Limits.Clear.Get(); ok {
		entries = append(entries, boxEntry("sector-clear", "clear"))
	}
	if _, ok := p.Limits.Usable.Get(); ok {
		entries = append(entries, boxEntry("sector-usable", "usable"))
	}
	y := p.c.Y + 4.5
	p.d.H = y + drawLegend(g, sheet.Pt(3, y), p.d.W-6, entries) + 1
}

package chart

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

// Room of a moment map in millimetres: the legend below, and white around.
const (
	momentLegend = 7.0
	momentPad    = 3.0
	leastMoment  = 120.0 // a narrower map cannot be read
)

// MomentMap draws one moment of a game from above, at a width in millimetres
// (120 at least): who stands where and looks which way, the puck, and the
// subject of the picture ringed.
func MomentMap(r rink.Rink, moment play.Moment, width float64) *sheet.Drawing {
	width = max(width, leastMoment)
	dim := r.Dimensions()
	scale := (width - 2*momentPad) / dim.Length.Metres()
	tall := scale * dim.Width.Metres()
	d := sheet.New("moment-"+moment.Phase.String(), width, tall+2*momentPad+momentLegend, Styles().Merge(momentStyles()))
	d.Layers = []string{"ice", "markings", "boards", "people", "legend"}
	d.Title = "A moment of " + moment.Phase.String()
	d.Desc = "From above: players with the way they look, officials, the puck, the subject ringed."
	m := &planMap{Content: Content{Arena: arena.Arena{Rink: r}}, ground: newGround(r, sheet.Pt(width/2, momentPad+tall/2), scale)}
	m.d = d
	m.ice()
	m.markings()
	d.Add("boards", "boards-face", m.around(0))
	g, _ := d.Group("people", "")
	for i, p := range moment.People {
		if i == moment.Subject {
			g.Add("subject", sheet.Circle{C: m.At(p.X, p.Y), R: m.Len(play.Radius(i)) + 1.1})
		}
		m.person(g, i, p)
	}
	g.Add("puck", sheet.Circle{C: m.At(moment.Puck.X, moment.Puck.Y), R: puckDot})
	m.momentLegend(width, tall+2*momentPad)
	return d
}

// puckDot is the radius of the puck's dot in millimetres: larger than to scale.
const puckDot = 0.7

// personClass tells the teams and the officials apart.
func personClass(i int) string {
	switch {
	case i >= play.Officials:
		return "official"
	case i == play.DefenderGoalie || i >= play.Defenders && i < play.AttackerGoalie:
		return "defender"
	}
	return "attacker"
}

// person draws a body to scale and a tick the way the face looks.
func (m *planMap) person(g *sheet.Group, i int, p play.Person) {
	at, r := m.At(p.X, p.Y), m.Len(play.Radius(i))
	far := r + m.Len(0.45)
	tip := m.At(p.X+(far/m.Scale)*math.Cos(p.Heading), p.Y+(far/m.Scale)*math.Sin(p.Heading))
	g.Add("gaze", sheet.Lines(at, tip))
	g.Add(personClass(i), sheet.Circle{C: at, R: r})
}

func (m *planMap) momentLegend(width, y float64) {
	g, _ := m.d.Group("legend", "")
	x := momentPad + 1
	for _, e := range []struct{ class, text string }{
		{"attacker", "attacking team"}, {"defender", "defending team"}, {"official", "official"},
		{"puck", "puck"}, {"subject", "subject of the picture"},
	} {
		r := 1.2
		if e.class == "puck" {
			r = puckDot
		}
		g.Add(e.class, sheet.Circle{C: sheet.Pt(x+1.2, y+1.6), R: r})
		g.Add("zone-text", sheet.Text{At: sheet.Pt(x+3.4, y+2.3), S: e.text})
		x += 8 + sheet.Regular.Width(e.text, sizeTiny)
	}
}

func momentStyles() sheet.Stylesheet {
	return sheet.Stylesheet{
		{Class: "attacker", Style: sheet.Style{Fill: sheet.Deep, Stroke: sheet.White, Width: sheet.W13}},
		{Class: "defender", Style: sheet.Style{Fill: sheet.White, Stroke: sheet.Ink, Width: sheet.W35}},
		{Class: "official", Style: sheet.Style{Fill: sheet.Mist, Stroke: sheet.Slate, Width: sheet.W18}},
		{Class: "gaze", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W25}},
		{Class: "puck", Style: sheet.Style{Fill: sheet.Ink}},
		{Class: "subject", Style: sheet.Style{Stroke: sheet.Bad, Width: sheet.W35}},
	}
}

package chart

import (
	"math"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// ledge is the boards' depth on paper, in millimetres.
func (m *planMap) ledge() float64 {
	return max(m.Len(m.Arena.Boards.Ledge.Or(unknownLedge).Metres()), leastLedge)
}

// glassOut is how far outside the rink face the glass is drawn, in millimetres of
// paper: far enough to be told from it, also where the set-back is less or unknown.
func (m *planMap) glassOut() float64 {
	return min(max(m.Len(m.Arena.Boards.Setback.Or(0).Metres()), 0.4*m.ledge()), m.ledge())
}

// wall draws the boards, the panes and the stanchions between them.
func (m *planMap) wall() {
	var ring sheet.Path
	ring.Add(m.around(m.ledge()))
	ring.Add(m.around(0))
	boards := m.d.Add("boards", "boards", ring)
	if lacks := m.unsurveyed(); lacks != "" {
		boards.Titled("Boards: " + lacks)
		m.d.Add("boards", "pane-unsaid", m.around(m.ledge()))
	}
	m.d.Add("boards", "boards-face", m.around(0))
	g, _ := m.d.Group("glass", "")
	out := m.glassOut()
	for _, p := range m.Arena.Panes {
		e := g.Add("pane "+paneClass(p), m.ring(p.From, p.To(), out)).With("pane", p.ID)
		if !m.Moving { // the strip beside the map says it
			e.Titled(m.paneTitle(p))
		}
	}
	for _, s := range stanchions(m.Arena.Panes, m.rink.Perimeter()) {
		g.Add("stanchion", sheet.Line{A: m.off(s, 0), B: m.off(s, m.ledge()+0.5)})
	}
}

// unsurveyed says what of the boards nobody measured; "" for nothing.
func (p Content) unsurveyed() string {
	var lacks []string
	if _, ok := p.Arena.Boards.Ledge.Get(); !ok {
		lacks = append(lacks, "depth of the boards")
	}
	if _, ok := p.Arena.Boards.Setback.Get(); !ok {
		lacks = append(lacks, "set-back of the glass")
	}
	if len(lacks) == 0 {
		return ""
	}
	return strings.Join(lacks, " and ") + " not surveyed"
}

// paneClass returns the class for a pane's material and use.
func paneClass(p glass.Pane) string {
	class := materialClass("pane", p.Material.Or(""))
	if p.Gate != "" {
		class += " pane-gate"
	}
	return class
}

func (m *planMap) paneTitle(p glass.Pane) string { return paneTitle(p, m.Arena.Units) }

// paneTitle says in words what a pane is.
func paneTitle(p glass.Pane, sys unit.System) string {
	s := "Pane " + p.ID + ": " + unit.Size{W: p.Width, H: p.Height}.Format(sys)
	if mat, ok := p.Material.Get(); ok {
		s += ", " + string(mat)
	} else {
		s += ", material not surveyed"
	}
	if t, ok := p.Thickness.Get(); ok {
		s += " " + t.Format(sys) + " thick"
	} else {
		s += ", thickness not surveyed"
	}
	if p.Gate != "" {
		s += ", gate (" + p.Gate + ")"
	}
	return s
}

// stanchions returns the stations of all pane edges, each once, in rising order
// of the panes; edges within a centimetre are one stanchion.
func stanchions(panes []glass.Pane, per unit.Length) []unit.Length {
	const same = unit.Centimetre
	var out []unit.Length
	add := func(s unit.Length) {
		s = unit.Length(math.Mod(float64(s), float64(per)))
		if n := len(out); n > 0 && (s-out[n-1] < same || per-s+out[0] < same) && s >= out[n-1] {
			return
		}
		out = append(out, s)
	}
	for _, p := range panes {
		add(p.From)
		add(p.To())
	}
	return out
}

// zones draws the zones as bands outside the boards with their names.
func (m *planMap) zones() {
	for _, z := range m.Arena.Zones {
		g, e := m.d.Group("zones", "")
		e.With("zone", z.ID).Titled(zoneName(z.ID, z.Kind))
		from, to := m.span(z.From, z.To)
		drawZone(g, z.Kind, m.band(from, to, zoneIn, zoneOut))
		if m.zoneFits(z.ID, from, to) {
			m.zoneText(g, z.ID, from, to)
		}
	}
}

func zoneName(id, kind string) string {
	if id == "" || id == kind {
		return kind
	}
	return id + " (" + kind + ")"
}

// span returns stations as a rising pair, the first in [0, perimeter).
func (g ground) span(from, to unit.Length) (unit.Length, unit.Length) {
	per := g.rink.Perimeter()
	from = g.rink.Wrap(from)
	length := g.rink.Wrap(to - from)
	if length == 0 {
		length = per
	}
	return from, from + length
}

// zoneFits reports whether a zone's name fits into its band; others are labelled
// outside, like holes.
func (m *planMap) zoneFits(name string, from, to unit.Length) bool {
	return sheet.Regular.Width(name, sizeTiny) < m.Len((to-from).Metres())-1
}

// zoneText sets a zone's name in its band, turned along the boards.
func (m *planMap) zoneText(g *sheet.Group, name string, from, to unit.Length) {
	mid := (from + to) / 2
	turn := math.Remainder(m.outward(mid)-math.Pi/2, math.Pi)
	if turn <= -math.Pi/2+1e-9 {
		turn += math.Pi
	}
	g.Add("zone-text", sheet.Text{At: m.off(mid, (zoneIn+zoneOut)/2), S: name, Anchor: sheet.Middle, VAlign: sheet.Centre, Rotate: turn})
}

// stretches draws the boards where a hole is permitted, and where nobody can say.
func (m *planMap) stretches() {
	if len(m.Permitted)+len(m.Undecided)+len(m.AsGood) == 0 {
		return
	}
	g, _ := m.d.Group("stretches", "")
	for _, v := range m.Undecided {
		g.Add("stretch-open", m.ring(v.From, v.To, stretchOut)).With("stretch", "unknown").
			Titled("Survey lacks a number: " + m.say(v.From) + " to " + m.say(v.To))
	}
	for _, v := range m.Permitted {
		g.Add("stretch", m.ring(v.From, v.To, stretchOut)).With("stretch", "pass").
			Titled("A hole may stand here: " + m.say(v.From) + " to " + m.say(v.To))
		for _, s := range []unit.Length{v.From, v.To} {
			g.Add("stretch-end", sheet.Line{A: m.off(s, stretchOut-0.9), B: m.off(s, stretchOut+0.9)})
		}
	}
	for _, v := range m.AsGood {
		g.Add("stretch-as-good", m.ring(v.From, v.To, stretchOut)).With("stretch", "as-good").
			Titled("Anywhere here is as good, as far as the moments can tell: " + m.say(v.From) + " to " + m.say(v.To))
	}
}

// unknownLedge is how deep boards are drawn that nobody measured.
const unknownLedge = 200 * unit.Millimetre

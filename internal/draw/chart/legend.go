package chart

import (
	"strconv"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// entry is a legend's sample and its words.
type entry struct {
	words string
	wide  float64 // of the sample, millimetres
	draw  func(g *sheet.Group, at sheet.Point)
}

// Legend distances in millimetres.
const (
	legendRow  = 5.0
	legendGap  = 6.0
	sampleGap  = 1.5
	lineSample = 8.0
)

// drawLegend sets entries in rows within a width and returns the height, all in millimetres.
func drawLegend(g *sheet.Group, at sheet.Point, width float64, entries []entry) float64 {
	x, y := at.X, at.Y+legendRow/2
	for _, e := range entries {
		w := e.wide + sampleGap + sheet.Regular.Width(e.words, sheet.SizeSmall)
		if x > at.X && x+w > at.X+width {
			x, y = at.X, y+legendRow
		}
		e.draw(g, sheet.Pt(x, y))
		g.Add("caption", sheet.Text{At: sheet.Pt(x+e.wide+sampleGap, y), S: e.words, VAlign: sheet.Centre})
		x += w + legendGap
	}
	return y + legendRow/2 - at.Y
}

func lineEntry(class, words string) entry {
	return entry{words, lineSample, func(g *sheet.Group, at sheet.Point) {
		g.Add(class, sheet.Line{A: at, B: sheet.Pt(at.X+lineSample, at.Y)})
	}}
}

func boxEntry(class, words string) entry {
	return entry{words, 5, func(g *sheet.Group, at sheet.Point) {
		g.Add(class, sheet.RoundRect(sheet.Rect{X: at.X, Y: at.Y - 1.3, W: 5, H: 2.6}, 0))
	}}
}

func markEntry(state glass.State, status rules.Status) entry {
	return entry{markWords(state, status), 2 * markSize, func(g *sheet.Group, at sheet.Point) {
		drawMark(g, sheet.Pt(at.X+markSize, at.Y), state, status)
	}}
}

// markEntries lists the hole marks that a plan uses.
func (p Content) markEntries() []entry {
	var out []entry
	for _, want := range []struct {
		state  glass.State
		status rules.Status
	}{{"", rules.Pass}, {"", rules.Fail}, {"", rules.Unknown}, {"", ""}, {glass.Off, ""}} {
		for _, h := range p.Arena.Holes {
			off := h.State == glass.Off
			if off == (want.state == glass.Off) && (off || p.Status[h.ID] == want.status) {
				out = append(out, markEntry(want.state, want.status))
				break
			}
		}
	}
	return out
}

// materialEntries lists the panes' materials in use; prefix is "pane" for lines
// from above and "glass" for panes seen from the side.
func (p Content) materialEntries(prefix string) []entry {
	var out []entry
	add := func(class, words string) {
		if prefix == "glass" {
			out = append(out, boxEntry("glass "+class, words))
		} else {
			out = append(out, lineEntry("pane "+class, words))
		}
	}
	for _, mat := range glass.Materials() {
		for _, q := range p.Arena.Panes {
			if got, ok := q.Material.Get(); ok && got == mat {
				add(materialClass(prefix, mat), string(mat))
				break
			}
		}
	}
	for _, q := range p.Arena.Panes {
		if _, ok := q.Material.Get(); !ok {
			add(prefix+"-unsaid", "material not surveyed")
			break
		}
	}
	return out
}

func (p Content) stretchEntries() []entry {
	var out []entry
	if len(p.Permitted) > 0 {
		out = append(out, lineEntry("stretch", "a hole may stand here"))
	}
	if len(p.Undecided) > 0 {
		out = append(out, lineEntry("stretch-open", "survey too thin to say"))
	}
	if len(p.AsGood) > 0 {
		out = append(out, lineEntry("stretch-as-good", asGoodWords))
	}
	return out
}

// asGoodWords say what a stretch of places as good as a chosen hole's means.
const asGoodWords = "anywhere here is as good"

// legend sets the plan map's legend and scale bar at its foot, and makes the
// drawing as high as they need.
func (m *planMap) legend() {
	g, _ := m.d.Group("legend", "")
	entries := append(m.markEntries(), m.materialEntries("pane")...)
	if lacks := m.unsurveyed(); lacks != "" {
		entries = append(entries, entry{lacks, 5, func(g *sheet.Group, at sheet.Point) {
			g.Add("boards", sheet.RoundRect(sheet.Rect{X: at.X, Y: at.Y - 1.3, W: 5, H: 2.6}, 0))
			g.Add("pane-unsaid", sheet.Line{A: sheet.Pt(at.X, at.Y-1.3), B: sheet.Pt(at.X+5, at.Y-1.3)})
		}})
	}
	entries = append(entries, m.wallEntries()...)
	entries = append(entries, m.zoneEntries()...)
	entries = append(entries, m.stretchEntries()...)
	if len(m.Others) > 0 {
		entries = append(entries, entry{"alternative place", 2.4, func(g *sheet.Group, at sheet.Point) {
			g.Add("other", sheet.Circle{C: sheet.Pt(at.X+1.2, at.Y), R: 1.1})
		}})
	}
	if len(m.Reach) > 0 {
		entries = append(entries, boxEntry("reach", m.wedgeWords()))
	}
	if h := m.Heat; h != nil {
		entries = append(entries, heatEntry(h))
	}
	bar := m.scaleBar(g, sheet.Pt(2, m.d.H+1))
	m.d.H += max(drawLegend(g, sheet.Pt(bar+8, m.d.H), m.d.W-bar-10, entries), 8) + 2
}

// heatEntry shows the heat map's scale in steps.
func heatEntry(h *Heat) entry {
	if h.Counts > 0 && h.Counts <= mostCounts {
		return countEntry(h)
	}
	const steps, wide = 8, 3.0
	words := h.Low + " to " + h.High
	if h.Title != "" {
		words = h.Title + ": " + words
	}
	return entry{words, steps * wide, func(g *sheet.Group, at sheet.Point) {
		for i := range steps {
			g.Add("", swatch(sheet.Rect{X: at.X + float64(i)*wide, Y: at.Y - 1.3, W: wide, H: 2.6}, float64(i)/(steps-1)))
		}
	}}
}

// mostCounts is the most counts of which a scale shows each.
const mostCounts = 20

// countEntry shows the heat map's scale count by count, 0 to all.
func countEntry(h *Heat) entry {
	wide := min(5, 64/float64(h.Counts+1))
	return entry{h.Title, float64(h.Counts+1) * wide, func(g *sheet.Group, at sheet.Point) {
		for i := range h.Counts + 1 {
			r := sheet.Rect{X: at.X + float64(i)*wide, Y: at.Y - 1.8, W: wide, H: 3.6}
			share := float64(i) / float64(h.Counts)
			g.Add("", swatch(r, share))
			class := "key-dark"
			if share > 0.6 {
				class = "key-light"
			}
			g.Add(class, sheet.Text{At: sheet.Pt(r.X+wide/2, at.Y), S: strconv.Itoa(i), Anchor: sheet.Middle, VAlign: sheet.Centre})
		}
		g.Add("key-rim", sheet.RoundRect(sheet.Rect{X: at.X, Y: at.Y - 1.8, W: float64(h.Counts+1) * wide, H: 3.6}, 0))
	}}
}

// key sets the heat's scale and the fates alone at the map's foot.
func (m *planMap) key() {
	g, _ := m.d.Group("legend", "")
	entries := m.fateEntries()
	if m.Heat != nil {
		entries = append(entries, heatEntry(m.Heat))
	}
	m.d.H += drawLegend(g, sheet.Pt(2, m.d.H), m.d.W-4, entries) + 1
}

// scaleBar draws a bar of a round length and returns where it ends.
func (m *planMap) scaleBar(g *sheet.Group, at sheet.Point) float64 {
	length, words := 10*unit.Metre, "10 m"
	if m.Arena.Units == unit.Imperial {
		length, words = 30*unit.Foot, "30 ft"
	}
	w := m.Len(length.Metres())
	g.Add("station", sheet.Lines(sheet.Pt(at.X, at.Y), sheet.Pt(at.X, at.Y+1.6), sheet.Pt(at.X+w, at.Y+1.6), sheet.Pt(at.X+w, at.Y)))
	g.Add("station", sheet.Line{A: sheet.Pt(at.X+w/2, at.Y+0.6), B: sheet.Pt(at.X+w/2, at.Y+1.6)})
	g.Add("caption", sheet.Text{At: sheet.Pt(at.X+w/2, at.Y+2.6), S: words, Anchor: sheet.Middle, VAlign: sheet.Top})
	return at.X + w
}

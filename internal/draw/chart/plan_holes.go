package chart

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// hitSize is the radius in millimetres round a mark that takes a pointer.
const hitSize = 3.2

// marks draws each hole's sign on the glass.
func (m *planMap) marks() {
	for _, h := range m.holes {
		g, e := m.d.Group("holes", "hole-mark")
		e.With("hole", h.ID).With("station", stationData(h.Station)).As("button").Titled(m.holeTitle(h))
		at := m.off(h.Station, m.glassOut())
		g.Add("hit", sheet.Circle{C: at, R: hitSize})
		if h.ID == m.Picked {
			g.Add("picked", sheet.Circle{C: at, R: markSize + 1})
		}
		if f, ok := m.Fates[h.ID]; ok {
			drawFate(g, at, f)
		} else {
			drawMark(g, at, h.State, m.Status[h.ID])
		}
	}
	for _, w := range m.Arena.Windows {
		at, out := m.off(w.Station, 0), m.outward(w.Station)
		half := max(m.Len(w.Size.W.Metres())/2, 1.1)
		a, b := at.Polar(half, out+math.Pi/2), at.Polar(half, out-math.Pi/2)
		m.d.Add("holes", "window", sheet.Polygon(a, b, b.Polar(1.3, out), a.Polar(1.3, out))).
			With("window", w.ID).Titled("Low window " + w.ID)
	}
}

func (m *planMap) holeTitle(h glass.Hole) string {
	words := markWords(h.State, m.Status[h.ID])
	if f, ok := m.Fates[h.ID]; ok {
		words = string(f)
	}
	return "Hole " + m.name(h.ID) + ": " + words + ", " + h.Size.Format(m.Arena.Units) +
		", station " + h.Station.Format(m.Arena.Units)
}

// others draws alternative places as small dashed rings inside the boards.
func (m *planMap) others() {
	for _, o := range m.Others {
		at := m.off(o.Station, -1.8)
		g, e := m.d.Group("holes", "")
		e.With("alternative", noted(o.Label, o.Note)).With("station", stationData(o.Station)).Titled("Alternative place " + noted(o.Label, o.Note))
		g.Add("other", sheet.Circle{C: at, R: 1.1})
	}
}

// tag is a label to be placed: of a hole, a low window or an alternative place.
type tag struct {
	key, id    string // data attribute and its value
	text, note string
	station    unit.Length
	width      float64
	from       float64 // where its leader starts, millimetres outside the rink face
}

func (m *planMap) tags() []tag {
	var out []tag
	for _, h := range m.holes {
		out = append(out, tag{key: "hole", id: h.ID, text: m.name(h.ID), note: m.Notes[h.ID], station: h.Station, from: m.glassOut() + markSize})
	}
	for _, w := range m.Arena.Windows {
		out = append(out, tag{key: "window", id: w.ID, text: w.ID, note: "low window", station: w.Station, from: 1.3})
	}
	for _, o := range m.Others {
		out = append(out, tag{key: "alternative", id: noted(o.Label, o.Note), text: o.Label, note: o.Note, station: o.Station, from: -0.7})
	}
	for _, z := range m.Arena.Zones {
		if from, to := m.span(z.From, z.To); !m.zoneFits(z.ID, from, to) {
			out = append(out, tag{key: "zone", id: z.ID, note: z.ID, station: (from + to) / 2, from: zoneOut})
		}
	}
	for i := range out {
		out[i].width = labelWidth(out[i].text, out[i].note)
	}
	return out
}

func labelWidth(text, note string) float64 {
	return max(sheet.Bold.Width(text, sheet.SizeText), sheet.Regular.Width(note, sizeTiny))
}

// side is one of the four sides of the sheet that labels stand on.
type side int

const (
	topSide side = iota
	footSide
	leftSide
	rightSide
)

// sideOf returns the side nearest to the direction out of the rink.
func (m *planMap) sideOf(s unit.Length) side {
	n := m.rink.Normal(s)
	switch {
	case math.Abs(n.Y) >= math.Abs(n.X) && n.Y < 0:
		return topSide
	case math.Abs(n.Y) >= math.Abs(n.X):
		return footSide
	case n.X > 0:
		return leftSide
	}
	return rightSide
}

// Room that a label takes across its side and between neighbours, in millimetres.
const (
	labelGap  = 2.2
	labelHigh = 3.2
	noteHigh  = 2.6
)

// labels places the labels side by side outside the boards, with leaders.
func (m *planMap) labels() {
	bySide := [4][]tag{}
	for _, t := range m.tags() {
		k := m.sideOf(t.station)
		bySide[k] = append(bySide[k], t)
	}
	for k, tags := range bySide {
		m.labelSide(side(k), tags)
	}
}

func (m *planMap) labelSide(k side, tags []tag) {
	slots := make([]slot, len(tags))
	for i, t := range tags {
		p := m.off(t.station, leaderOut)
		slots[i] = slot{p.X, t.width / 2}
		if k == leftSide || k == rightSide {
			slots[i] = slot{p.Y, t.high() / 2}
		}
	}
	corner, far := m.At(-m.ground.length/2, m.width/2), m.At(m.ground.length/2, -m.width/2)
	lo, hi := 1.0, m.d.W-1
	if k == leftSide || k == rightSide {
		lo, hi = corner.Y, far.Y
	}
	for i, v := range spread(slots, labelGap, lo, hi) {
		var at sheet.Point
		switch k {
		case topSide:
			at = sheet.Pt(v, corner.Y-labelOut)
		case footSide:
			at = sheet.Pt(v, far.Y+labelOut)
		case leftSide:
			at = sheet.Pt(corner.X-labelOut, v)
		case rightSide:
			at = sheet.Pt(far.X+labelOut, v)
		}
		m.label(tags[i], k, at)
	}
}

func (t tag) high() float64 {
	h := 0.0
	if t.text != "" {
		h = labelHigh
	}
	if t.note != "" {
		h += noteHigh
	}
	return h
}

// label draws one label with its leader; at is the end of the leader.
func (m *planMap) label(t tag, k side, at sheet.Point) {
	g, e := m.d.Group("labels", "")
	e.With(t.key, t.id)
	g.Add("leader", sheet.Lines(m.off(t.station, t.from), m.off(t.station, leaderOut), at))
	anchor := [...]sheet.Anchor{sheet.Middle, sheet.Middle, sheet.End, sheet.Start}[k]
	x := at.X + [...]float64{0, 0, -1, 1}[k]
	// y is the top of the label.
	y := at.Y + [...]float64{-t.high() - 0.2, 0.9, -t.high()/2 + 0.5, -t.high()/2 + 0.5}[k]
	if t.text != "" {
		g.Add("hole-label", sheet.Text{At: sheet.Pt(x, y), S: t.text, Anchor: anchor, VAlign: sheet.Top})
		y += labelHigh
	}
	if t.note != "" {
		g.Add("hole-note", sheet.Text{At: sheet.Pt(x, y), S: t.note, Anchor: anchor, VAlign: sheet.Top})
	}
}

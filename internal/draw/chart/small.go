package chart

import (
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/arena"
)

const (
	smallWidth = 60.0 // mm
	smallRoom  = 3.0  // mm around the boards, for the marks
)

// SmallMap draws an arena as small as it can still be told from others: ice,
// markings, boards and the holes with their verdicts, without a word. Name tells it
// from other drawings on the same page.
func SmallMap(name string, a arena.Arena, status map[string]rules.Status) *sheet.Drawing {
	return smallMap(name, a, status).d
}

// PlaceMap is [SmallMap] with one hole ringed and named.
func PlaceMap(name string, a arena.Arena, status map[string]rules.Status, hole string) *sheet.Drawing {
	const ring, inward = 2.6, 6.0 // mm
	m := smallMap(name, a, status)
	m.d.Title, m.d.Desc = "Where hole "+hole+" is", ""
	if h, ok := a.Hole(hole); ok {
		m.d.Desc = "At station " + h.Station.Format(a.Units) + "."
		m.d.Add("holes", "picked", sheet.Circle{C: m.off(h.Station, 0), R: ring})
		m.d.Add("holes", "hole-label", sheet.Text{At: m.off(h.Station, -inward), S: hole, Anchor: sheet.Middle, VAlign: sheet.Centre})
	}
	return m.d
}

func smallMap(name string, a arena.Arena, status map[string]rules.Status) *planMap {
	f := SmallFrame(a)
	m := &planMap{Content: Content{Arena: a, Status: status, Bare: true}, holes: a.Holes}
	m.ground = newGround(a.Rink, sheet.Pt(f.CentreX, f.CentreY), f.Scale)
	m.d = sheet.New(name, smallWidth, 2*f.CentreY, Styles())
	m.d.Layers = []string{"ice", "markings", "boards", "holes"}
	m.d.Title, m.d.Desc = "Map of "+a.Name, m.describe()
	m.ice()
	m.markings()
	m.d.Add("boards", "boards-face", m.around(0))
	for _, h := range a.Holes {
		g, _ := m.d.Group("holes", "")
		drawMark(g, m.off(h.Station, 0), h.State, status[h.ID])
	}
	return m
}

// SmallFrame returns where the rink lies on [SmallMap], for what is drawn over it.
func SmallFrame(a arena.Arena) MapFrame {
	dim := a.Rink.Dimensions()
	scale := (smallWidth - 2*smallRoom) / dim.Length.Metres()
	return MapFrame{CentreX: smallWidth / 2, CentreY: scale*dim.Width.Metres()/2 + smallRoom, Scale: scale, Width: smallWidth}
}

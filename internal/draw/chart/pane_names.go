package chart

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
)

// Names of panes on a plan, in millimetres on paper inside the rink face; what
// else stands along the boards steps in behind them.
const (
	paneNameIn    = 1.0
	paneNameRoom  = 6.0
	paneNameWidth = sizeTiny + 0.3 // a pane's least width on paper for its name
)

// paneNames sets each pane's name before it, turned square to the boards, on a
// drawing of its own where most panes are wide enough for it.
func (m *planMap) paneNames() {
	if !m.namesPanes() {
		return
	}
	g, _ := m.d.Group("panes", "")
	for _, p := range m.Arena.Panes {
		if m.Len(p.Width.Metres()) < paneNameWidth {
			continue
		}
		mid := p.From + p.Width/2
		out := m.outward(mid)
		// The name reads from the side that keeps its letters upright.
		anchor, turn := sheet.End, out
		if math.Cos(out) < -1e-9 {
			anchor, turn = sheet.Start, out+math.Pi
		}
		g.Add("pane-text", sheet.Text{At: m.off(mid, -paneNameIn), S: sheet.Regular.Shorten(p.ID, sizeTiny, paneNameRoom), Anchor: anchor, VAlign: sheet.Centre, Rotate: turn})
	}
}

// namesPanes reports whether the plan has room for the names of most of its panes.
func (m *planMap) namesPanes() bool {
	if m.Bare || m.Heat != nil {
		return false
	}
	wide := 0
	for _, p := range m.Arena.Panes {
		if m.Len(p.Width.Metres()) >= paneNameWidth {
			wide++
		}
	}
	return 2*wide > len(m.Arena.Panes)
}

// paneRoom is how far the names of panes reach in from the boards, in millimetres.
func (m *planMap) paneRoom() float64 {
	if m.namesPanes() {
		return paneNameRoom
	}
	return 0
}

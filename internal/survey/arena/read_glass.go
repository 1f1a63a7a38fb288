package arena

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// What glass and boards can measure at all; beyond lies a slip of the pen.
// The books ask for boards of 40-48 in and glass of 1.5-2.4 m; arenas differ.
const (
	leastBoards = 300 * unit.Millimetre
	mostBoards  = 2 * unit.Metre
	mostLedge   = 1 * unit.Metre
	leastPane   = 50 * unit.Millimetre // between two stanchions
	mostPane    = 6 * unit.Metre       // wider and higher sheets are not made
	leastThick  = 3 * unit.Millimetre
	leastNear   = 0.3 * unit.Metre
	mostNear    = 100 * unit.Metre
	mostThick   = 60 * unit.Millimetre
	mostFloor   = 2 * unit.Metre // of the floor behind the boards, above or below the ice
)

// noOverlap is how far two panes may reach into each other: sums of widths
// written in sixteenths of an inch or whole millimetres are no more exact.
const noOverlap = 0.1 * unit.Millimetre

func (rd *reader) boards(m form.Map) {
	rd.a.Boards = glass.Boards{
		Height:  form.Parse(m.At("height"), form.Within(leastBoards, mostBoards)),
		Ledge:   form.Maybe(m.At("ledge"), form.Within(0, mostLedge)),
		Setback: form.Maybe(m.At("setback"), form.Within(0, mostLedge)),
		Floor:   form.Maybe(m.At("floor"), form.Within(-mostFloor, mostFloor)),
	}
	rd.source(m, boardsFields)
}

// usual is what a pane has when its own line does not say.
type usual struct {
	height    unit.Maybe[unit.Length]
	thickness unit.Maybe[unit.Length]
	material  unit.Maybe[glass.Material]
	haze      unit.Maybe[glass.Haze]
}

func (rd *reader) paneDefaults(n form.Node) usual {
	if !n.Present() {
		return usual{}
	}
	m := n.Map(glassFields...)
	rd.source(m, glassFields)
	return usual{
		height:    form.Maybe(m.At("height"), form.Within(leastPane, mostPane)),
		thickness: form.Maybe(m.At("thickness"), form.Within(leastThick, mostThick)),
		material:  form.Maybe(m.At("material"), form.Words(glass.Materials()...)),
		haze:      form.Maybe(m.At("haze"), glass.ParseHaze),
	}
}

// panes reads the panes in station order. A pane without from starts where
// the one before it ends, the first at station 0.
func (rd *reader) panes(n form.Node, u usual) {
	if !n.Present() {
		return
	}
	rd.fresh()
	next := unit.Length(0)
	for _, item := range n.List(MaxPanes) {
		m := item.Map(paneFields...)
		p := rd.pane(m, u, next)
		if !m.OK() {
			return
		}
		next = rd.row(m, p)
	}
}

// row adds a pane, and as many equal ones beside it as its line counts. It returns
// the station where they end.
func (rd *reader) row(m form.Map, p glass.Pane) unit.Length {
	count := 1
	if n := m.At("count"); n.Present() {
		count = n.Int(1, MaxPanes)
		if count > 1 && counted(p.ID, 1) == "" {
			m.At("id").Failf("%s ends in no number for the row to count on from; write one, as in %s1", form.Quote(p.ID), p.ID)
		}
	}
	if len(rd.a.Panes)+count > MaxPanes {
		m.At("count").Failf("makes %d panes in all; at most %d are read", len(rd.a.Panes)+count, MaxPanes)
	}
	first := p
	rd.source(m, paneFields)
	for k := range count {
		if k > 0 {
			p.ID, p.From = counted(first.ID, k), first.From+unit.Length(k)*first.Width
			rd.taken(m, p.ID)
		}
		if rd.lies(m, p); !m.OK() {
			break
		}
		rd.a.Panes = append(rd.a.Panes, p)
		rd.as(first.ID, p.ID)
	}
	return p.To()
}

func (rd *reader) pane(m form.Map, u usual, next unit.Length) glass.Pane {
	p := glass.Pane{
		ID:        rd.id(m),
		From:      next,
		Width:     form.Parse(m.At("width"), form.Within(leastPane, mostPane)),
		Thickness: or(form.Maybe(m.At("thickness"), form.Within(leastThick, mostThick)), u.thickness),
		Material:  or(form.Maybe(m.At("material"), form.Words(glass.Materials()...)), u.material),
		Haze:      or(form.Maybe(m.At("haze"), glass.ParseHaze), u.haze),
		Curved:    form.Optional(m.At("curved"), form.YesNo),
		Gate:      form.Optional(m.At("gate"), form.Line),
	}
	if from := m.At("from"); from.Present() {
		p.From = rd.station(from)
	}
	height := or(form.Maybe(m.At("height"), form.Within(leastPane, mostPane)), u.height)
	if h, ok := height.Get(); ok {
		p.Height = h
	} else {
		m.At("height").Failf("is missing; write it for this pane, or for all of them as height: under glass:")
	}
	return p
}

// lies proves that a pane starts at or past the end of the one before it and
// ends before the first one starts again, one lap on.
func (rd *reader) lies(m form.Map, p glass.Pane) {
	at := m.At("from")
	if !at.Present() {
		at = m.At("width")
	}
	sys := rd.a.Units
	end := rd.a.Rink.Perimeter()
	if len(rd.a.Panes) > 0 {
		first, last := rd.a.Panes[0], rd.a.Panes[len(rd.a.Panes)-1]
		end += first.From
		if over := last.To() - p.From; over > noOverlap {
			at.Failf("pane %s starts at %s, %s before pane %s ends (%s); panes stand in station order without overlap: correct this place or that width",
				p.ID, p.From.Format(sys), over.Format(sys), last.ID, last.To().Format(sys))
			return
		}
	}
	if over := p.To() - end; over > noOverlap {
		m.At("width").Failf("pane %s ends %s past the place where the first pane starts again; the boards are %s round: correct the widths before it",
			p.ID, over.Format(sys), rd.a.Rink.Perimeter().Format(sys))
	}
}

func or[T any](m, fallback unit.Maybe[T]) unit.Maybe[T] {
	if _, ok := m.Get(); ok {
		return m
	}
	return fallback
}

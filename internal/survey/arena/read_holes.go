package arena

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// What openings can measure at all.
const (
	leastHole  = 10 * unit.Millimetre
	mostHole   = 600 * unit.Millimetre
	mostWindow = 3 * unit.Metre
	mostHeight = 10 * unit.Metre // of a place above the ice
)

func (rd *reader) holes(n form.Node) {
	if !n.Present() {
		return
	}
	rd.fresh()
	for _, item := range n.List(MaxHoles) {
		m := item.Map(holeFields...)
		h := rd.hole(m)
		if !m.OK() {
			return
		}
		rd.inPane(m, &h)
		rd.source(m, holeFields)
		rd.a.Holes = append(rd.a.Holes, h)
	}
}

func (rd *reader) hole(m form.Map) glass.Hole {
	h := glass.Hole{
		ID:       rd.id(m),
		Size:     form.Parse(m.At("size"), form.SizeWithin(leastHole, mostHole)),
		Station:  rd.placed(m),
		Height:   form.Parse(m.At("height"), form.Within(0, mostHeight)),
		Rounding: form.Maybe(m.At("rounding"), form.Within(0, mostThick/2)),
		Cover:    cover(m.At("cover")),
		State:    form.Optional(m.At("state"), form.Words(glass.Planned, glass.Cut, glass.Off)),
		Note:     form.Optional(m.At("note"), form.Line),
	}
	if h.State == "" {
		h.State = glass.Planned
	}
	h.Corner = rd.corner(m, h.Size)
	return h
}

// corner reads the corner radius of an outline of a size.
func (rd *reader) corner(m form.Map, size unit.Size) unit.Maybe[unit.Length] {
	corner := m.At("corner-radius")
	radius := form.Maybe(corner, form.Within(0, mostHole/2))
	if r, ok := radius.Get(); ok && m.OK() && r > min(size.W, size.H)/2 {
		corner.Failf("%s is more than half of the hole's smaller side; write at most %s",
			form.Quote(corner.Value()), (min(size.W, size.H) / 2).FormatFine(rd.a.Units))
	}
	return radius
}

// cover reads "none", "yes", or the cover's fields.
func cover(n form.Node) unit.Maybe[glass.Cover] {
	if !n.Present() {
		return unit.Maybe[glass.Cover]{}
	}
	if !n.IsMap() {
		word := form.Parse(n, form.Words("none", "yes"))
		return unit.Known(glass.Cover{Present: word == "yes"})
	}
	m := n.Map(coverFields...)
	return unit.Known(glass.Cover{
		Present:  true,
		Material: form.Optional(m.At("material"), form.Words(glass.Materials()...)),
		Tether:   form.Maybe(m.At("tether"), form.YesNo),
	})
}

// inPane finds the pane of a hole, and proves that it lies between the
// glass's lower and upper edge. One that lies across a stanchion is read: the
// rules tell it, so that it blocks nothing but itself.
func (rd *reader) inPane(m form.Map, h *glass.Hole) {
	sys := rd.a.Units
	at := m.At("place")
	if !at.Present() {
		at = m.At("station")
	}
	p, ok := rd.a.PaneAt(h.Station)
	if !ok {
		at.Failf("hole %s stands at station %s, where no pane is surveyed; add the pane or move the hole", h.ID, h.Station.Format(sys))
		return
	}
	h.Pane = p.ID
	e := glass.EdgesOf(rd.a.Boards, p, *h, rd.a.Rink.Perimeter())
	for _, side := range []struct {
		left unit.Length
		edge string
	}{{e.Bottom, "bottom edge (the top of the boards)"}, {e.Top, "top edge"}} {
		if side.left <= 0 {
			m.At("height").Failf("hole %s does not lie inside pane %s: it reaches %s past the pane's %s; move it or make it smaller",
				h.ID, p.ID, (-side.left).Format(sys), side.edge)
			return
		}
	}
}

func (rd *reader) windows(n form.Node) {
	if !n.Present() {
		return
	}
	rd.fresh()
	for _, item := range n.List(MaxWindows) {
		m := item.Map(windowFields...)
		w := glass.Window{
			ID:       rd.id(m),
			Station:  rd.placed(m),
			Height:   form.Parse(m.At("height"), form.Within(0, mostHeight)),
			Size:     form.Parse(m.At("size"), form.SizeWithin(leastHole, mostWindow)),
			Open:     form.Parse(m.At("kind"), form.Words("opening", "panel")) == "opening",
			Material: form.Optional(m.At("material"), form.Words(glass.Materials()...)),
			Thick:    form.Maybe(m.At("thickness"), form.Within(leastThick/3, mostThick)),
			Nearest:  form.Maybe(m.At("nearest"), form.Within(leastNear, mostNear)),
			Printed:  form.Optional(m.At("printed"), form.YesNo),
			Rounding: form.Maybe(m.At("rounding"), form.Within(0, mostThick/2)),
			Cover:    cover(m.At("cover")),
			Note:     form.Optional(m.At("note"), form.Line),
		}
		w.Corner = rd.corner(m, w.Size)
		rd.inBoards(m, w)
		rd.source(m, windowFields)
		rd.a.Windows = append(rd.a.Windows, w)
	}
}

// inBoards proves that a low window lies between the ice and the boards' top.
func (rd *reader) inBoards(m form.Map, w glass.Window) {
	if top := w.Height + w.Size.H/2; m.OK() && (top > rd.a.Boards.Height || w.Height < w.Size.H/2) {
		m.At("height").Failf("low window %s reaches from %s to %s above the ice; it must lie between the ice and the boards' top at %s",
			w.ID, (w.Height - w.Size.H/2).Format(rd.a.Units), top.Format(rd.a.Units), rd.a.Boards.Height.Format(rd.a.Units))
	}
}

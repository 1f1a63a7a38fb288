package chart

import (
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/words"
)

// Room of a guard map in millimetres: the legend below, and white around.
const (
	guardPad   = 6.0
	guardLine  = 3.2  // of the legend
	leastGuard = 90.0 // a narrower map cannot be read
	leastOne   = 60.0 // nor a narrower one of a single hole
)

// GuardMap draws the rink from above with the sector behind each guarded hole to
// be kept clear, at a width in millimetres (90 at least). With picked set, only
// that hole's surroundings are shown (at 60 at least), and what the lines mean is left to
// the page around: [GuardWords].
func GuardMap(a arena.Arena, guards []puck.Guard, picked string, width float64) *sheet.Drawing {
	if picked == "" {
		width = max(width, leastGuard)
	}
	width = max(width, leastOne)
	sectors := slices.DeleteFunc(slices.Clone(guards), func(g puck.Guard) bool { return !g.Sector.Bounded() || picked != "" && g.Hole != picked })
	low, high := guardBounds(a, sectors, picked)
	scale := (width - 2*guardPad) / (high.X - low.X)
	tall := (high.Y - low.Y) * scale
	var legend []string
	if picked == "" {
		legend = sheet.Regular.Wrap(GuardWords(), sheet.SizeSmall, width-2*guardPad)
	}
	d := sheet.New("guard-map", width, tall+2*guardPad+float64(len(legend))*guardLine+2, Styles().Merge(GuardStyles()))
	d.Layers = []string{"ice", "markings", "boards", "glass", "sectors", "holes", "labels", "legend"}
	d.Title = "Sectors behind the holes of " + a.Name + " to be kept clear"
	d.Desc = "From above: where pucks come down that pass through an open hole."
	origin := sheet.Pt(guardPad-low.X*scale, guardPad+high.Y*scale)
	m := &planMap{Content: Content{Arena: a}, ground: newGround(a.Rink, origin, scale)}
	m.d = d
	window := sheet.Rect{X: guardPad, Y: guardPad, W: width - 2*guardPad, H: tall}
	m.ice()
	m.markings()
	m.wall()
	clipTo(d, window)
	var named []sheet.Rect
	for _, s := range sectors {
		named = append(named, m.sector(s, window, named))
	}
	m.guardLegend(window, legend)
	return d
}

// GuardStyles are the styles of the sectors on a guard map, beside those of every map.
func GuardStyles() sheet.Stylesheet {
	return sheet.Stylesheet{
		{Class: "sector", Style: sheet.Style{Fill: sheet.Bad.Alpha(0.16), Stroke: sheet.Bad, Width: sheet.W25}},
		{Class: "sector-half", Style: sheet.Style{Stroke: sheet.Bad, Width: sheet.W35, Dash: []float64{1.6, 0.9}}},
		{Class: "sector-limit", Style: sheet.Style{Stroke: sheet.Slate, Width: sheet.W18, Dash: []float64{3, 1, 0.6, 1}}},
		{Class: "sector-hole", Style: sheet.Style{Fill: sheet.Bad}},
	}
}

// clipTo puts everything drawn so far behind a window.
func clipTo(d *sheet.Drawing, window sheet.Rect) {
	for _, e := range d.Items {
		e.Shape = &sheet.Group{Clip: &window, Items: []*sheet.Element{{Shape: e.Shape, Class: e.Class}}}
		e.Class = ""
	}
}

// guardBounds returns the corners of what is shown, in the rink's frame, metres.
func guardBounds(a arena.Arena, sectors []puck.Guard, picked string) (low, high geom.Vec2) {
	low, high = geom.Vec2{X: math.Inf(1), Y: math.Inf(1)}, geom.Vec2{X: math.Inf(-1), Y: math.Inf(-1)}
	cover := func(p geom.Vec2) {
		low = geom.Vec2{X: min(low.X, p.X), Y: min(low.Y, p.Y)}
		high = geom.Vec2{X: max(high.X, p.X), Y: max(high.Y, p.Y)}
	}
	d := a.Rink.Dimensions()
	if picked == "" {
		cover(geom.Vec2{X: -d.Length.Metres() / 2, Y: -d.Width.Metres() / 2})
		cover(geom.Vec2{X: d.Length.Metres() / 2, Y: d.Width.Metres() / 2})
	}
	for _, s := range sectors {
		o, err := a.Opening(s.Hole)
		if err != nil {
			continue
		}
		h, s := o.Hole, s.Sector
		p, n, t := a.Rink.Point(h.Station), a.Rink.Normal(h.Station), a.Rink.Tangent(h.Station)
		far := s.Clear.Metres() * 1.12
		for _, b := range []unit.Angle{s.From, (s.From + s.To) / 2, s.To} {
			cover(p.Add(bearing(n, t, b).Scale(far)))
		}
		if picked != "" { // a stretch of boards and ice beside the hole
			cover(p.Add(n.Scale(far * 0.3)).Add(t.Scale(far * 0.6)))
			cover(p.Add(n.Scale(far * 0.3)).Sub(t.Scale(far * 0.6)))
		}
	}
	return low, high
}

// bearing returns the plan direction out of the rink at a bearing.
func bearing(n, t geom.Vec2, b unit.Angle) geom.Vec2 {
	s, c := math.Sincos(b.Radians())
	return t.Scale(s).Sub(n.Scale(c))
}

// sector draws one hole's sector with its distances, its name clear of those of others,
// and returns where that stands.
func (m *planMap) sector(g puck.Guard, window sheet.Rect, others []sheet.Rect) sheet.Rect {
	o, err := m.Arena.Opening(g.Hole)
	if err != nil {
		return sheet.Rect{}
	}
	h, s := o.Hole, g.Sector
	p, n, t := m.rink.Point(h.Station), m.rink.Normal(h.Station), m.rink.Tangent(h.Station)
	to := func(b unit.Angle, l unit.Length) sheet.Point { return m.pt(p.Add(bearing(n, t, b).Scale(l.Metres()))) }
	arc := func(l unit.Length) []sheet.Point {
		return fan(s.From, s.To, wedgeStep, func(b unit.Angle) sheet.Point { return to(b, l) })
	}
	shape, e := m.d.Group("sectors", "")
	shape.Clip = &window
	if limit, ok := s.HalfAngle.Get(); ok {
		for _, b := range []unit.Angle{-limit, limit} {
			shape.Add("sector-limit", sheet.Line{A: m.pt(p), B: to(b, min(s.Typical, s.Clear))}) // short of the names of others
		}
	}
	shape.Add("sector", sheet.Polygon(append([]sheet.Point{m.pt(p)}, arc(s.Clear)...)...))
	shape.Add("sector-half", sheet.Lines(arc(min(s.Typical, s.Clear))...))
	sys := m.Arena.Units
	e.With("hole", g.Hole).Titled(fmt.Sprintf("Keep clear behind %s: to %s, half land by %s", g.Hole, words.Within(s.Clear, sys), words.Within(s.Typical, sys)))
	m.d.Add("holes", "sector-hole", sheet.Circle{C: m.pt(p), R: 0.9})
	labels, _ := m.d.Group("labels", "")
	within := words.Within(s.Clear, sys)
	hole, far := m.pt(p), to((s.From+s.To)/2, s.Clear)
	at, box := clearName(sectorLabel(hole, far, to((s.From+s.To)/2, s.Typical)), far.Sub(hole),
		max(sheet.Bold.Width(g.Hole, sheet.SizeText), sheet.Regular.Width(within, sizeTiny)), window, others)
	labels.Add("hole-label", sheet.Text{At: sheet.Pt(at.X, at.Y-1.2), S: g.Hole, Anchor: sheet.Middle, VAlign: sheet.Centre})
	labels.Add("hole-note", sheet.Text{At: sheet.Pt(at.X, at.Y+1.9), S: within, Anchor: sheet.Middle, VAlign: sheet.Centre})
	return box
}

// clearName moves a sector's name, so many millimetres wide with its distance, along the
// sector out or in to the nearest place in the window that is clear of other names.
func clearName(want, axis sheet.Point, wide float64, window sheet.Rect, others []sheet.Rect) (at sheet.Point, box sheet.Rect) {
	const high, step, tries = 6.4, 1.5, 24 // mm, mm
	way := axis.Scale(1 / max(math.Hypot(axis.X, axis.Y), step))
	for k := range tries {
		moved := step * float64((k+1)/2)
		if k%2 == 0 {
			moved = -moved
		}
		at = want.Add(way.Scale(moved))
		box = sheet.Rect{X: at.X - wide/2, Y: at.Y - high/2, W: wide, H: high}
		if window.Contains(box) && !slices.ContainsFunc(others, box.Overlaps) {
			return at, box
		}
	}
	return want, box
}

// sectorLabel is where a sector's name and distance stand: between its two
// arcs, or past the outer one where they lie too close for words, clear of the
// rays that end there.
func sectorLabel(hole, far, typical sheet.Point) sheet.Point {
	const room, up, across = 10.0, 4.0, 7.0 // mm
	long := far.Dist(hole)
	if long == 0 || far.Dist(typical) >= room {
		return hole.Add(far.Sub(hole).Scale(0.8))
	}
	way := far.Sub(hole).Scale(1 / long)
	return far.Add(sheet.Pt(way.X*across, way.Y*up))
}

// GuardWords say what the lines mean.
func GuardWords() string {
	return "Filled, keep clear: over each of its edges a puck leaves less than once in " + words.Grouped(puck.GamesClear) + " games with the cover out. Dashed arc: half come down by there. " +
		"Dash-dotted rays: no puck passes at a wider angle, whatever its orientation. People, seats and walls are not in the model; no strength check."
}

func (m *planMap) guardLegend(window sheet.Rect, lines []string) {
	g, _ := m.d.Group("legend", "")
	y := window.Y + window.H + 4
	for i, s := range lines {
		g.Add("caption", sheet.Text{At: sheet.Pt(window.X, y+float64(i)*guardLine), S: s, VAlign: sheet.Top})
	}
}

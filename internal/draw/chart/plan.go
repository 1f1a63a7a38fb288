package chart

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Content is what a plan map and a boards strip show. All but the arena may be missing.
type Content struct {
	Arena     arena.Arena
	Status    map[string]rules.Status // verdict on each hole, by id
	Permitted []rules.Interval        // boards where a standard hole passes
	Undecided []rules.Interval        // boards where the survey lacks a number to say
	AsGood    []rules.Interval        // boards where a hole of the set might as well stand
	Reach     []Wedge
	Heat      *Heat
	Others    []Spot            // alternative places
	Notes     map[string]string // a few words under a hole's label, by id
	Names     map[string]string // a hole's label, by id, where it is not its id
	Fates     map[string]Fate   // what becomes of a hole, by id, told in place of its verdict
	Picked    string            // the hole that is looked at
	Bare      bool              // no heading and no legend: the page around has them
	Under     bool              // the page around has the name: the heading is the line below it
	// Key keeps the scale of the heat, or the fates, under a bare map.
	Key bool
	// Zoom is how much larger than drawn it is set on paper, for the scale that it says; 0: 1.
	Zoom float64
	// Moving is set for a page on which holes are moved: margins do not depend on
	// where they stand, and a guide is drawn for the page to show ([MapFrame]).
	Moving bool
}

// Wedge is how far a hole can be panned to both sides of straight ahead.
type Wedge struct {
	Hole        string
	Left, Right unit.Angle  // toward falling and rising stations, both positive
	Depth       unit.Length // how far into the rink it is drawn; 0: to the far boards
}

// Spot is a place on the boards with a label.
type Spot struct {
	Label   string
	Note    string // below the label; "" for none
	Station unit.Length
}

// Heat is a grid of values over the ice.
type Heat struct {
	Corner     geom.Vec2 // the least x and y of the first cell, metres, rink frame
	Step       float64   // side of a cell in metres
	Cols, Rows int
	// Values are shares from 0 to 1, row by row from the least y; NaN paints nothing.
	Values []float64
	// Address is where a page finds the picture of the values; then Values may be missing.
	Address   string
	Low, High string // what 0 and 1 mean: "no lens", "all six"
	Counts    int    // the values are counts of so many: the scale shows each; 0: shares
	Title     string
	Lines     []Contour // lines of one value over the grid
	// Guessed are the cells, as Values, whose value is no measurement: no line leads
	// through them. nil: none.
	Guessed []bool
}

// Distances on the plan map, in millimetres on paper outside the boards' rink face.
const (
	stretchOut = 2.9
	zoneIn     = 4.0
	zoneOut    = 7.6
	leaderOut  = 9.2
	labelOut   = 12.5
	sideRoom   = 20.5 // above and below the rink, labels included
	closeRoom  = 4.0  // on a side of a small map without labels
	leastLedge = 0.8  // boards are drawn no thinner
)

// mmPerMetre is the scale 1:1, in millimetres on paper for a metre.
const mmPerMetre = 1000.0

const (
	headingRoom = 12.5 // mm
	lineRoom    = 4.5  // mm, of a heading without a name
	leastWidth  = 120  // mm: a narrower plan cannot be read
	wideMargin  = 40.0 // mm: more than labels at the ends need
)

// PlanMap draws the arena from above, end B at the right, the box side at the
// top, at a width in millimetres (120 at least).
func PlanMap(p Content, width float64) *sheet.Drawing {
	width = max(width, leastWidth)
	m := &planMap{Content: p, holes: p.Arena.Holes}
	m.ground = m.lay(width)
	m.d = sheet.New("plan-map", width, m.Origin.Y+m.Len(m.ground.width)/2+m.roomAt(footSide), Styles())
	m.d.Layers = []string{"ice", "heat", "markings", "contours", "reach", "boards", "glass", "zones", "stretches", "panes", "stations", "holes", "labels", "legend"}
	m.d.Title = "Plan map of " + p.Arena.Name
	m.d.Desc = m.describe()
	m.ice()
	m.heat()
	m.markings()
	m.contours()
	m.wedges()
	m.wall()
	m.zones()
	m.stretches()
	m.paneNames()
	m.stations()
	m.others()
	m.marks()
	m.labels()
	if p.Moving {
		m.guide()
	}
	if !p.Bare {
		m.heading()
		m.legend()
	} else if p.Key && (p.Heat != nil || p.Fates != nil) {
		m.key()
	}
	return m.d
}

type planMap struct {
	Content
	ground
	d     *sheet.Drawing
	holes []glass.Hole
}

// lay places the rink on a sheet of a width in millimetres.
func (m *planMap) lay(width float64) ground {
	dim := m.Arena.Rink.Dimensions()
	scale := (width - 2*m.columnRoom(width)) / dim.Length.Metres()
	top := m.roomAt(topSide)
	if !m.Bare { // a drawing of its own: on paper its scale counts
		top += m.headingRoom()
		scale = m.onPaper(scale)
	}
	return newGround(m.Arena.Rink, sheet.Pt(width/2, top+scale*dim.Width.Metres()/2), scale)
}

// columnRoom is the room at the left and right ends, wide enough for the
// longest label there, in millimetres.
func (m *planMap) columnRoom(width float64) float64 {
	// The scale is not known yet; with margins this wide it is no less than this.
	m.ground = newGround(m.Arena.Rink, sheet.Point{}, max(width-2*wideMargin, 1)/m.Arena.Rink.Dimensions().Length.Metres())
	w := labelWidth("A-10", "")
	for _, t := range m.tags() {
		if k := m.sideOf(t.station); k == leftSide || k == rightSide {
			w = max(w, t.width)
		}
		if m.Moving && t.key == "hole" {
			w = max(w, labelWidth(t.text, longestNote))
		}
	}
	if m.Key && !m.labelled(leftSide) && !m.labelled(rightSide) {
		return closeRoom
	}
	return labelOut + w + 2
}

// roomAt returns the room above or below the rink, in millimetres: little on a
// small map that has no label there.
func (m *planMap) roomAt(k side) float64 {
	if m.Key && !m.labelled(k) {
		return closeRoom
	}
	return sideRoom
}

// labelled reports whether a label stands on a side. Both come before the rink is
// laid on the sheet, so zones count wherever they are.
func (m *planMap) labelled(k side) bool {
	for _, h := range m.holes {
		if m.sideOf(h.Station) == k {
			return true
		}
	}
	for _, w := range m.Arena.Windows {
		if m.sideOf(w.Station) == k {
			return true
		}
	}
	return len(m.Arena.Zones)+len(m.Others) > 0
}

func (m *planMap) describe() string {
	return fmt.Sprintf("%s from above, end A at the left, end B at the right, the benches below: %d panes, %d holes.",
		m.Arena.Name, len(m.Arena.Panes), len(m.holes))
}

func (m *planMap) heading() {
	name := m.Arena.Name
	if m.Arena.Place != "" {
		name += ", " + m.Arena.Place
	}
	dim, sys := m.Arena.Rink.Dimensions(), m.Arena.Units
	m.Content.heading(m.d, name, fmt.Sprintf("From above, 1:%.0f on paper. Ice %s × %s, corner radius %s. %s.",
		m.says(m.Scale), dim.Length.Format(sys), dim.Width.Format(sys), dim.CornerRadius.Format(sys), m.counts()))
}

// headingRoom is the room of a heading in millimetres.
func (p Content) headingRoom() float64 {
	if p.Under {
		return lineRoom
	}
	return headingRoom
}

// heading sets a drawing's title and a line below it at its head.
func (p Content) heading(d *sheet.Drawing, title, line string) {
	g, _ := d.Group("legend", "")
	if !p.Under {
		g.Add("title", sheet.Text{At: sheet.Pt(2, 2), S: sheet.Bold.Shorten(title, sheet.SizeTitle, d.W-4), VAlign: sheet.Top})
	}
	g.Add("caption", sheet.Text{At: sheet.Pt(2, p.headingRoom()-3.1), S: sheet.Regular.Shorten(line, sheet.SizeSmall, d.W-4), VAlign: sheet.Top})
}

func (m *planMap) counts() string {
	s := say.Count(len(m.Arena.Panes), "pane") + ", " + say.Count(len(m.holes), "hole")
	if n := len(m.Arena.Windows); n > 0 {
		s += ", " + say.Count(n, "low window")
	}
	return s
}

// say prints a length of the arena in its own units.
func (m *planMap) say(l unit.Length) string { return l.Format(m.Arena.Units) }

// angleName prints an angle in whole degrees.
func angleName(a unit.Angle) string { return fmt.Sprintf("%.0f°", math.Round(a.Degrees())) }

// name is what a hole is called on the drawing.
func (p Content) name(id string) string {
	if name, ok := p.Names[id]; ok {
		return name
	}
	return id
}

package book

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/tell/words"
)

// Widths of the drawings on a page for a browser, mm: what their type is laid out for.
const (
	pageMap    = 260.0
	pageChart  = 130.0
	pageSector = 62.0
)

// standing is what the cover says of the plan.
func (s setter) standing() []fact {
	out := []fact{
		{"in the plan", say.Count(s.c.Plan.Survey.Holes, "photo hole")},
		{"rules in force", words.Verdict(s.c.Plan.Findings)},
		{"plan revision", s.c.Mark},
		{"approval", words.ApprovalLine(s.c.Plan.Approval)},
	}
	if s.c.Options.Date != "" {
		out = append(out, fact{"date", s.c.Options.Date})
	}
	return out
}

// summary is what is wrong, then the holes in a line each.
func (s setter) summary(f flow) {
	survey := s.c.Plan.Survey
	f.Notes(fmt.Sprintf("%s on %s, ice %s. Rules in force: %s. %s", say.Count(survey.Holes, "working hole"), say.Count(survey.Panes, "pane"),
		words.Size(survey, s.units()), words.Verdict(s.c.Plan.Findings), words.ApprovalSentence(s.c.Plan.Approval)))
	if open := opened(s.c.Plan.Findings); len(open) > 0 {
		f.Heading("To mend or to find out first")
		s.open(f, open, "rule", "holes", "status", "message")
	}
	f.Heading("The holes")
	t := words.Holes().Pick("hole", "where", "pane", "size", "state", "status", "best_lens_focal", "reach_share", "reach_whole_share", "face_iso_nominal", "iso_nominal").
		Of("", s.c.Plan.Holes, s.units())
	for _, h := range s.c.Plan.Holes {
		t.Strong = append(t.Strong, h.Status != rules.Pass)
	}
	f.Table(t, sheet.SizeTable)
	if keys := t.Keys(); keys != "" {
		f.Notes(keys)
	}
	if s.c.Plan.Light.Known {
		f.Notes(words.Faces(s.c.Plan, s.units()))
	}
	f.Notes(say.All(s.c.Plan.Remarks, s.units())...)
}

func (s setter) planMap(f flow) {
	f.Figures(figure{wide: pageMap, draw: func(width float64) *sheet.Drawing {
		return chart.PlanMap(s.drawn(f), width)
	}})
}

// drawn is what maps of the whole plan show, for the scale of what they are set on.
func (s setter) drawn(f flow) chart.Content {
	c := chart.OfPlan(s.c.Plan, s.units(), "")
	c.Under = true
	if _, ok := f.(paperFlow); ok {
		c.Zoom = s.grid.zoom
	}
	return c
}

// Rows into which the boards strip may be cut: one for each corner at best.
const (
	mostStripRows  = 4
	leastStripRows = 2
)

// strip draws the boards strip, on paper in as many rows as a sheet holds unshrunk.
func (s setter) strip(f flow) {
	c := s.drawn(f)
	rows := mostStripRows
	if p, ok := f.(paperFlow); ok {
		room := p.Room()
		for rows > leastStripRows && chart.BoardsStrip(c, room.W, rows).H > room.H {
			rows--
		}
	}
	f.Figures(figure{wide: pageMap, draw: func(width float64) *sheet.Drawing { return chart.BoardsStrip(c, width, rows) }})
}

// lightMap is the survey's light with its lines, the holes about it.
func (s setter) lightMap(f flow) {
	a := s.c.Arena
	a.Zones, a.Windows = nil, nil
	f.Figures(figure{wide: pageMap, draw: func(width float64) *sheet.Drawing {
		d := chart.PlanMap(chart.Content{Arena: a, Heat: s.c.Light, Bare: true, Key: true}, width)
		d.Name, d.Title = "light-map", "Light on the ice of "+a.Name
		return d
	}})
}

// named is the arena with its place.
func (c Content) named() string {
	return strings.TrimSuffix(c.Arena.Name+", "+c.Arena.Place, ", ")
}

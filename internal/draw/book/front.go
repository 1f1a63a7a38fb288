package book

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// front is the summary and the contents; the contents' pages are filled in by
// contents, once they are known.
func (s setter) front() (chapter, sheet.Rect) {
	c := s.c
	d, area := s.page("summary", "Arena book")
	g, _ := d.Group(sheet.LayerText, "")
	g.Add("book-title", sheet.Text{At: sheet.Pt(area.X, area.Y), S: sheet.Bold.Shorten(c.Arena.Name, 9, area.W), VAlign: sheet.Top})
	y := area.Y + 11
	if c.Arena.Place != "" {
		g.Add("book-sub", sheet.Text{At: sheet.Pt(area.X, y), S: sheet.Regular.Shorten(c.Arena.Place, 5, area.W), VAlign: sheet.Top})
		y += 8
	}
	y += g.Paragraph("note", sheet.Regular, sheet.Pt(area.X, y), s.sentence(), sheet.SizeText, area.W, 4) + 3
	wide := area.W*0.68 - columnGap/2
	l := sheet.FitTable(s.holeTable(), sheet.SizeTable, wide)
	rows := l.Fits(0, area.Y+area.H-y)
	l.Draw(g, sheet.Pt(area.X, y), 0, rows)
	if rows < l.Rows() {
		g.Add("caption", sheet.Text{At: sheet.Pt(area.X, area.Y+area.H), S: fmt.Sprintf("and %d more, each on its own pages", l.Rows()-rows)})
	}
	return chapter{title: "Summary", pages: []*sheet.Drawing{d}}, sheet.Rect{X: area.X + wide + columnGap, Y: y, W: area.W - wide - columnGap, H: area.Y + area.H - y}
}

// sentence sums the arena up.
func (s setter) sentence() string {
	survey := s.c.Plan.Survey
	told := fmt.Sprintf("Photo holes: %s on %s, ice %s. Rules in force: %s. Plan revision %s, %s.",
		say.Count(survey.Holes, "working hole"), say.Count(survey.Panes, "pane"), words.Size(survey, s.units()), words.Verdict(s.c.Plan.Findings), s.c.Mark, words.ApprovalLine(s.c.Plan.Approval))
	if s.c.Plan.Light.Known {
		told += " " + words.Faces(s.c.Plan, s.units())
	}
	return strings.Join(append([]string{told}, say.All(s.c.Plan.Remarks, s.units())...), " ")
}

// holeTable is a row for each hole.
func (s setter) holeTable() table.Table {
	return words.Holes().Pick("hole", "where", "pane", "size", "state", "status", "best_lens_focal", "reach_share", "reach_whole_share", "face_iso_nominal", "iso_nominal").Of("", s.c.Plan.Holes, s.units())
}

// maps are the plan map, the boards strip and the light, a page each.
func (s setter) maps() []chapter {
	c := chart.OfPlan(s.c.Plan, s.units(), "")
	var out []chapter
	d, area := s.page("plan-map", "Plan with stations")
	place(d, chart.PlanMap(c, area.W), area)
	out = append(out, chapter{title: "Plan with stations", pages: []*sheet.Drawing{d}})
	d, area = s.page("boards-strip", "Boards and glass, unrolled")
	place(d, s.strip(c, area), area)
	out = append(out, chapter{title: "Boards and glass", pages: []*sheet.Drawing{d}})
	if s.c.Light == nil {
		return out
	}
	d, area = s.page("light", lightTitle)
	place(d, fitted(area, s.lightMap), area)
	return append(out, chapter{title: lightTitle, pages: []*sheet.Drawing{d}})
}

const lightTitle = "Light on the ice"

// lightMap is the survey's light with its lines, the holes about it.
func (s setter) lightMap(width float64) *sheet.Drawing {
	a := s.c.Arena
	a.Zones, a.Windows = nil, nil
	d := chart.PlanMap(chart.Content{Arena: a, Heat: s.c.Light, Bare: true, Key: true}, width)
	d.Name = "light-map"
	return d
}

// Rows into which the boards strip may be cut: one for each corner at best.
const (
	mostStripRows  = 4
	leastStripRows = 2
)

// strip draws the boards strip in as many rows as the area holds unshrunk.
func (s setter) strip(c chart.Content, area sheet.Rect) *sheet.Drawing {
	var d *sheet.Drawing
	for rows := mostStripRows; rows >= leastStripRows; rows-- {
		if d = chart.BoardsStrip(c, area.W, rows); d.H <= area.H {
			break
		}
	}
	return d
}

// place sets a picture in the middle of an area, smaller when it does not fit.
func place(d, picture *sheet.Drawing, area sheet.Rect) {
	k := min(1, area.W/picture.W, area.H/picture.H)
	d.Place("picture", picture, sheet.Pt(area.X+(area.W-k*picture.W)/2, area.Y+(area.H-k*picture.H)/2), k)
}

// fitted draws a picture as wide as an area has room for, so that its words
// keep their size: scaled down whole, a tall picture's words cannot be read.
func fitted(area sheet.Rect, draw func(width float64) *sheet.Drawing) *sheet.Drawing {
	const tries = 4 // a picture's height hangs all but straight on its width
	picture := draw(area.W)
	for range tries {
		if picture.H <= area.H {
			break
		}
		picture = draw(picture.W * area.H / picture.H)
	}
	return picture
}

// contents lists the chapters with links to their pages.
func contents(d *sheet.Drawing, area sheet.Rect, chapters []chapter, first []int) {
	g, _ := d.Group(sheet.LayerText, "")
	g.Add("head", sheet.Text{At: sheet.Pt(area.X, area.Y), S: "Contents", VAlign: sheet.Top})
	y := area.Y + 6
	step := min(4.6, (area.H-8)/float64(len(chapters)))
	for i, c := range chapters {
		inset := 4 * float64(c.level)
		n := strconv.Itoa(first[i])
		g.Add("link-text", sheet.Text{At: sheet.Pt(area.X+inset, y), S: c.title, VAlign: sheet.Top}).To("#page=" + n)
		g.Add("link-text", sheet.Text{At: sheet.Pt(area.X+area.W, y), S: n, Anchor: sheet.End, VAlign: sheet.Top}).To("#page=" + n)
		y += step
	}
}

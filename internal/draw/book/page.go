package book

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/words"
)

// setter makes pages of one paper and look.
type setter struct {
	c       Content
	grid    grid
	caution string
}

func (c Content) setter() setter {
	return setter{c: c, grid: gridOf(c.Options.Paper), caution: strings.Join(append([]string{words.ApprovalSentence(c.Plan.Approval)}, glass.Cautions()...), " ")}
}

func (s setter) units() unit.System { return s.c.Options.Units }

// longLine is the longest line of sentences, in millimetres of the grid: a hundred letters.
const longLine = 150.0

// bound is a chapter with its pages.
type bound struct {
	chapter
	pages []*sheet.Drawing
}

// set sets a chapter on pages. Its title heads them, small on all but the first.
func (s setter) set(ch chapter) bound {
	out := bound{chapter: ch}
	begin := func(title string) *sheet.Drawing {
		out.pages = append(out.pages, s.page(fmt.Sprintf("%s-%d", ch.id, len(out.pages)+1), title, len(out.pages) == 0))
		return out.pages[len(out.pages)-1]
	}
	for _, l := range ch.leaves {
		title := l.title
		if title == "" {
			title = ch.title
		}
		first := begin(title)
		area := s.grid.area
		room := area.W - columnGap*float64(len(l.columns)-1)
		for _, col := range l.columns {
			area.W = room * col.share
			box := area
			f := paperFlow{sheet.FlowOn(first, box, func() (*sheet.Drawing, sheet.Rect) {
				box.X = s.grid.area.X
				return begin(title + ", continued"), box
			})}
			f.Measure = longLine
			for _, write := range col.parts {
				write(f)
			}
			area.X += area.W + columnGap
		}
	}
	return out
}

// page is a sheet with its title at the head and the cautions at the foot.
func (s setter) page(name, title string, opens bool) *sheet.Drawing {
	d := s.grid.sheet(name, title)
	a := s.grid.area
	g, _ := d.Group(sheet.LayerFrame, "")
	head := g.Add("title", sheet.Text{At: sheet.Pt(a.X, headHigh-8), S: sheet.Bold.Shorten(title, sheet.SizeTitle, 0.6*a.W)})
	if opens {
		head.Part = &sheet.Part{Role: sheet.RoleTitle}
	}
	name = sheet.Regular.Shorten(s.c.named(), sheet.SizeSmall, 0.3*a.W)
	g.Add("running", sheet.Text{At: sheet.Pt(a.X+a.W, headHigh-8), S: name, Anchor: sheet.End})
	g.Add("rule", sheet.Line{A: sheet.Pt(a.X, headHigh-5.6), B: sheet.Pt(a.X+a.W, headHigh-5.6)})
	foot := s.grid.h - footHigh + 4
	g.Add("rule-thin", sheet.Line{A: sheet.Pt(a.X, foot), B: sheet.Pt(a.X+a.W, foot)})
	g.Paragraph("caution", sheet.Italic, sheet.Pt(a.X, foot+1.4), s.caution, sheet.SizeSmall, a.W-30, 3)
	g.Add("running", sheet.Text{At: sheet.Pt(a.X+a.W, foot+1.4), S: "plan " + s.c.Mark, Anchor: sheet.End, VAlign: sheet.Top})
	return d
}

// number puts the pages' numbers at their feet: i, ii before page 1.
func (s setter) number(pages []*sheet.Drawing, front int) {
	for i, d := range pages {
		d.Desc = s.c.stamp()
		if i == 0 {
			continue // the cover says no number
		}
		said := folio(i, front)
		if i >= front {
			said = fmt.Sprintf("page %s of %d", said, len(pages)-front)
		}
		d.Add(sheet.LayerFrame, "text", sheet.Text{
			At: sheet.Pt(s.grid.area.X+s.grid.area.W, s.grid.h-footHigh+9.6), S: said, Size: sheet.SizeText, Anchor: sheet.End, VAlign: sheet.Top,
		})
	}
}

// folio returns a page's number as it is printed and as readers of the file show it.
func folio(i, front int) string {
	if i < front {
		return strings.Repeat("i", i+1) // there are three at most
	}
	return strconv.Itoa(i - front + 1)
}

// contents lists the chapters with links to their pages, counted from 0.
func (s setter) contents(d *sheet.Drawing, chapters []bound, first []int, front int) {
	a := s.grid.area
	a.X, a.W = a.X+(a.W-columnGap)*summaryShare+columnGap, (a.W-columnGap)*(1-summaryShare)
	g, _ := d.Group(sheet.LayerText, "")
	g.Add("head", sheet.Text{At: sheet.Pt(a.X, a.Y), S: "Contents", VAlign: sheet.Top}).PartOf(&sheet.Part{Role: sheet.RoleHeading})
	list := &sheet.Part{Role: sheet.RoleContents}
	y, step := a.Y+7, min(5, (a.H-8)/float64(len(chapters)))
	for i, c := range chapters {
		inset := 4 * float64(c.level)
		page, to := folio(first[i], front), "#page="+strconv.Itoa(first[i]+1)
		link := list.Within(sheet.RoleEntry).Within(sheet.RoleLink)
		title := sheet.Regular.Shorten(c.title, sheet.SizeText, a.W-inset-8)
		g.Add("link-text", sheet.Text{At: sheet.Pt(a.X+inset, y), S: title, VAlign: sheet.Top}).To(to).PartOf(link)
		g.Add("link-text", sheet.Text{At: sheet.Pt(a.X+a.W, y), S: page, Anchor: sheet.End, VAlign: sheet.Top}).To(to).PartOf(link)
		y += step
	}
}

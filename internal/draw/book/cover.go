package book

import (
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
)

// coverShare is how much of the cover's height its picture takes.
const coverShare = 0.67

// cover is the book's first page: the arena, its best picture, and what stands
// between the boards.
func (s setter) cover() *sheet.Drawing {
	d := s.grid.sheet("cover", s.c.Arena.Name)
	g, _ := d.Group(sheet.LayerText, "")
	s.coverPicture(d, g)
	a := s.grid.area
	y := coverShare*d.H + 10
	g.Add("cover-title", sheet.Text{At: sheet.Pt(a.X, y), S: s.c.Arena.Name, Size: sheet.Bold.FitSize(s.c.Arena.Name, coverTitle, coverSub, a.W), VAlign: sheet.Top}).
		PartOf(&sheet.Part{Role: sheet.RoleTitle})
	y += coverTitle + 2
	sub := "The book of its photo holes"
	if s.c.Arena.Place != "" {
		sub = s.c.Arena.Place + ". " + sub
	}
	g.Add("cover-sub", sheet.Text{At: sheet.Pt(a.X, y), S: sheet.Regular.Shorten(sub, coverSub, a.W), VAlign: sheet.Top}).PartOf(&sheet.Part{Role: sheet.RoleParagraph})
	f := paperFlow{sheet.FlowOn(d, sheet.Rect{X: a.X, Y: y + 11, W: a.W, H: d.H}, nil)}
	f.Facts(s.standing()...)
	f.Group().Paragraph("caution", sheet.Italic, sheet.Pt(a.X, s.grid.h-footHigh+5.4), s.caution, sheet.SizeSmall, a.W-30, 3)
	g.Add("running", sheet.Text{At: sheet.Pt(a.X+a.W, s.grid.h-footHigh+5.4), S: "plan " + s.c.Mark, Anchor: sheet.End, VAlign: sheet.Top})
	return d
}

// coverPicture sets the best picture over the page's whole width, its middle shown;
// the map of the holes where none can be taken.
func (s setter) coverPicture(d *sheet.Drawing, g *sheet.Group) {
	high := coverShare * d.H
	v, ok := s.c.Cover.Get()
	if !ok {
		small := chart.SmallMap("cover-map", s.c.Arena, s.c.statuses())
		k := 0.8 * high / small.H
		d.Place(sheet.LayerText, small, sheet.Pt((d.W-k*small.W)/2, 0.1*high), k).PartOf(&sheet.Part{Role: sheet.RoleFigure, Alt: small.Says()})
		return
	}
	picture := v.photo
	picture.W, picture.H = d.W, d.W*v.photo.H/v.photo.W
	picture.Y = -(picture.H - high) * coverRise
	frame := &sheet.Group{Clip: &sheet.Rect{W: d.W, H: high}}
	frame.Add("", picture)
	g.Add("", frame).PartOf(&sheet.Part{Role: sheet.RoleFigure, Alt: v.alt})
	g.Add("running", sheet.Text{At: sheet.Pt(s.grid.area.X, high+4.6), S: v.caption}).PartOf(&sheet.Part{Role: sheet.RoleParagraph})
}

// coverRise is how much of what the cover cuts off the picture is cut off at its top.
const coverRise = 0.3

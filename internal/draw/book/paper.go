package book

import (
	"example.org/rinkpane/internal/draw/sheet"
)

// paperFlow writes parts below one another in a column of a sheet.
type paperFlow struct{ *sheet.Flow }

// Gaps and lines in millimetres of the grid.
const (
	photoGap   = 3.0
	captionGap = 1.4
	captionLow = 3.2 // a line of a caption
	factHigh   = 12.5
	factGap    = 3.0
)

// Figures sets drawings side by side, each as wide as it has room for, so that its words
// keep their size: scaled down whole, a tall drawing's words cannot be read.
func (f paperFlow) Figures(row ...figure) {
	n := float64(len(row))
	wide := (f.Room().W - columnGap*(n-1)) / n
	drawn := make([]*sheet.Drawing, len(row))
	for i, g := range row {
		drawn[i] = f.fitted(g, wide)
	}
	f.Drawings(columnGap, drawn...)
}

// fitted draws a figure at most as wide, and as high as there is room or as it may be.
func (f paperFlow) fitted(g figure, wide float64) *sheet.Drawing {
	const tries = 4 // a drawing's height hangs all but straight on its width
	high := f.Room().H
	if g.share > 0 {
		high = min(high, g.share*f.High())
	}
	d := g.draw(wide)
	for range tries {
		if d.H <= high {
			break
		}
		d = g.draw(d.W * high / d.H)
	}
	return d
}

// Photos sets pictures side by side, each with its caption below.
func (f paperFlow) Photos(row ...View) {
	n := float64(len(row))
	room := f.Room()
	wide := (room.W - photoGap*(n-1)) / n
	high, lines := 0.0, 0
	for _, v := range row {
		high = max(high, wide*v.photo.H/v.photo.W)
		lines = max(lines, len(sheet.Regular.Wrap(v.caption, sheet.SizeSmall, wide)))
	}
	total := high + captionGap + float64(lines)*captionLow + 2
	f.Need(total)
	room = f.Room()
	for i, v := range row {
		x := room.X + float64(i)*(wide+photoGap)
		picture := v.photo
		picture.Rect = sheet.Rect{X: x, Y: room.Y, W: wide, H: wide * v.photo.H / v.photo.W}
		shown := &sheet.Part{Role: sheet.RoleFigure, Alt: v.alt}
		f.Group().Add("", picture).PartOf(shown)
		f.Paragraph("caption", sheet.Pt(x, room.Y+high+captionGap), v.caption, sheet.SizeSmall, wide, captionLow, &sheet.Part{Role: sheet.RoleParagraph})
	}
	f.Skip(total)
}

// Facts sets facts side by side under one line.
func (f paperFlow) Facts(facts ...fact) {
	if len(facts) == 0 {
		return
	}
	f.Need(factHigh)
	room := f.Room()
	wide := (room.W - factGap*float64(len(facts)-1)) / float64(len(facts))
	for i, x := range facts {
		at := sheet.Pt(room.X+float64(i)*(wide+factGap), room.Y)
		p := &sheet.Part{Role: sheet.RoleParagraph}
		size := sheet.Bold.FitSize(x.value, sheet.SizeTitle, sheet.SizeText, wide)
		f.Group().Add("fact", sheet.Text{At: at, S: x.value, Size: size, VAlign: sheet.Top}).PartOf(p)
		f.Paragraph("caption", sheet.Pt(at.X, at.Y+sheet.SizeTitle+0.4), x.name, sheet.SizeSmall, wide, captionLow, p)
	}
	f.Skip(factHigh + 2)
}

// signHigh is the room of one signature, mm of the grid.
const signHigh = 22.0

// Signature sets what is signed and lines for name, signature and date.
func (f paperFlow) Signature(who signer) {
	f.Need(signHigh)
	room := f.Room()
	g := f.Group()
	p := &sheet.Part{Role: sheet.RoleParagraph}
	g.Add("text strong", sheet.Text{At: sheet.Pt(room.X, room.Y), S: who.who, Size: sheet.SizeText, VAlign: sheet.Top}).PartOf(p)
	f.Paragraph("note", sheet.Pt(room.X+34, room.Y), who.under, sheet.SizeText, room.W-34, 4, p)
	y := room.Y + signHigh - 6
	x := room.X
	for _, part := range signed {
		w := room.W * part.share
		g.Add("sign-line", sheet.Line{A: sheet.Pt(x, y), B: sheet.Pt(x+w-4, y)})
		g.Add("caption", sheet.Text{At: sheet.Pt(x, y+1.2), S: part.name, VAlign: sheet.Top}).PartOf(p)
		x += w
	}
	f.Skip(signHigh)
}

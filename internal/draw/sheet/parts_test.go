package sheet_test

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// parts is a framed A4 sheet with one of each part that this package draws.
func parts() *sheet.Drawing {
	a4, _ := sheet.ParsePaper("a4")
	d := a4.Landscape().Sheet("parts", sheet.Base())
	d.Title = "Parts"
	area := d.Frame(sheet.TitleBlock{
		Title: "Hole B-goal, template", Subject: "Sample Pavilion",
		Caution: "Barrier work belongs to the rink operator and the glass maker and follows local codes and licensed practice. " +
			"Never cut tempered or laminated glass. No hole without its cover. Nothing past the rink face during play.",
		Fields: []sheet.Field{{"Scale", "1:1"}, {"Pane", "P017"}, {"Material", "acrylic 15.9 mm"},
			{"Revision", "3fa9c02e71d4"}, {"Date", "2026-01-05"}, {"Sheet", "1 of 8"}},
	})
	hole := sheet.Rect{X: area.X + 40, Y: area.Y + 30, W: 110, H: 70}
	d.Add(sheet.LayerCut, "outline", sheet.RoundRect(hole, 12.7))
	g, _ := d.Group(sheet.LayerDim, "")
	centre := sheet.Pt(hole.X+hole.W/2, hole.Y+hole.H/2)
	g.CentreMark(centre, hole.W, hole.H)
	corner := func(x, y float64) sheet.Point { return sheet.Pt(hole.X+x*hole.W, hole.Y+y*hole.H) }
	dim := func(a, b sheet.Point, off float64, l unit.Length) {
		mm, in := sheet.Measure(l)
		g.Dim(sheet.Dimension{A: a, B: b, Off: off, Text: mm, Under: in})
	}
	dim(corner(0, 0), corner(1, 0), 10, 110*unit.Millimetre)
	dim(corner(1, 0), corner(1, 1), 9, 70*unit.Millimetre)
	dim(sheet.Pt(hole.X+hole.W-12.7, hole.Y+hole.H), corner(1, 1), -8, unit.Inch/2)
	g.Radius(sheet.Pt(hole.X+12.7, hole.Y+12.7), 12.7, 3*math.Pi/4, 6, "R 12.7 mm")
	g.Note(sheet.Pt(hole.X+30, hole.Y+hole.H), sheet.Pt(hole.X+20, hole.Y+hole.H+14), true, "Both edges rounded 3 mm,", "no saw marks")
	h, _ := d.Group(sheet.LayerHatch, "")
	var section sheet.Path
	section.Add(sheet.RoundRect(sheet.Rect{X: 220, Y: 20, W: 30, H: 50}, 4))
	section.Add(sheet.RoundRect(sheet.Rect{X: 228, Y: 35, W: 14, H: 20}, 3))
	d.Add("SECTION", "edge", section)
	h.Hatch("hatch", section, math.Pi/4, 1.5)
	l := sheet.FitTable(partsTable(), sheet.SizeText, 88)
	tg, _ := d.Group(sheet.LayerText, "")
	l.Draw(tg, sheet.Pt(188, 90), 0, l.Rows())
	return d
}

func partsTable() table.Table {
	t := table.New("Hole", "Pan", "Finding", "What to do").Numbers(1, 2)
	t.Add("B-goal", "34.2°", "pass", "Nothing; margin 3 in.")
	t.Add("A-circle", "31.0°", "fail", "Move it 14 in toward centre ice, or ask the league for a dispensation in writing.")
	t.Add("total", "2")
	t.Strong = []bool{false, false, true}
	return t
}

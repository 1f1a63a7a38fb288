package chart

import (
	"slices"

	"example.org/rinkpane/internal/draw/sheet"
)

// markLift is how far the words of a mark stand above the field, millimetres.
const markLift = 2.2

// upright reports whether a mark stands at a value of x: its words are above the field.
func (f *field) upright() bool {
	return slices.ContainsFunc(f.Marks, func(m Mark) bool { return !m.OnY })
}

// marks draws the lines right across with their words: above the field, where no
// series runs, and moved apart where they would meet; beside the line for a
// value of y.
func (f *field) marks() {
	g, _ := f.d.Group("marks", "")
	var upright []Mark
	for _, m := range f.Marks {
		class := "mark"
		if m.Strong {
			class += " mark-strong"
		}
		if !m.OnY {
			x := f.x(m.At)
			g.Add(class, sheet.Line{A: sheet.Pt(x, f.box.Y), B: sheet.Pt(x, f.box.Y+f.box.H)}).Titled(m.Words)
			upright = append(upright, m)
			continue
		}
		y := f.y(m.At)
		g.Add(class, sheet.Line{A: sheet.Pt(f.box.X, y), B: sheet.Pt(f.box.X+f.box.W, y)}).Titled(m.Words)
		g.Add("mark-text", sheet.Text{At: sheet.Pt(f.box.X+f.box.W-0.8, y-0.7), S: m.Words, Anchor: sheet.End})
	}
	f.overhead(g, upright)
}

// overhead sets the words of upright marks in a row, each with a line to its mark.
func (f *field) overhead(g *sheet.Group, marks []Mark) {
	slots := make([]slot, len(marks))
	for i, m := range marks {
		slots[i] = slot{f.x(m.At), sheet.Italic.Width(m.Words, sizeTiny) / 2}
	}
	for i, x := range spread(slots, 1.5, f.box.X, f.d.W-1) {
		m := marks[i]
		g.Add("mark-stem", sheet.Line{A: sheet.Pt(f.x(m.At), f.box.Y), B: sheet.Pt(x, f.box.Y-markLift+0.5)})
		g.Add("mark-text", sheet.Text{At: sheet.Pt(x, f.box.Y-markLift), S: m.Words, Anchor: sheet.Middle})
	}
}

package chart

import "example.org/rinkpane/internal/draw/sheet"

// markLift is how far the words of a mark stand above the field, millimetres.
const markLift = 2.2

// marks draws the upright lines right across, with their words in a row above
// the field, where no series runs, moved apart where they would meet.
func (f *field) marks() {
	g, _ := f.d.Group("marks", "")
	slots := make([]slot, len(f.Marks))
	for i, m := range f.Marks {
		class := "mark"
		if m.Strong {
			class += " mark-strong"
		}
		x := f.x(m.At)
		g.Add(class, sheet.Line{A: sheet.Pt(x, f.box.Y), B: sheet.Pt(x, f.box.Y+f.box.H)}).Titled(m.Words)
		slots[i] = slot{x, sheet.Italic.Width(m.Words, sizeTiny) / 2}
	}
	for i, x := range spread(slots, 1.5, f.box.X, f.d.W-1) {
		g.Add("mark-stem", sheet.Line{A: sheet.Pt(slots[i].want, f.box.Y), B: sheet.Pt(x, f.box.Y-markLift+0.5)})
		g.Add("mark-text", sheet.Text{At: sheet.Pt(x, f.box.Y-markLift), S: f.Marks[i].Words, Anchor: sheet.Middle})
	}
}

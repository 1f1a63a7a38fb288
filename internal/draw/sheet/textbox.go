package sheet

// TextBox is where a text stands on a drawing, in millimetres.
type TextBox struct {
	Class string
	S     string
	Box   Rect
}

// TextBoxes returns where each text of the drawing stands, groups resolved, in
// painting order: for checks that labels neither meet nor leave the sheet.
func (d *Drawing) TextBoxes() []TextBox {
	var out []TextBox
	for _, name := range d.LayerOrder() {
		for _, e := range d.Items {
			if e.Layer == name {
				out = textBoxes(out, d.Styles, e, Style{}, placed{scale: 1})
			}
		}
	}
	return out
}

func textBoxes(out []TextBox, sheet Stylesheet, e *Element, base Style, at placed) []TextBox {
	st := sheet.Resolve(e.Class, base)
	switch s := e.Shape.(type) {
	case Text:
		if s.S != "" && st.Fill.visible() {
			out = append(out, TextBox{e.Class, s.S, at.rect(s.Box(st))})
		}
	case *Group:
		for _, item := range s.Items {
			out = textBoxes(out, sheet, item, st, at.within(s))
		}
	}
	return out
}

// Collisions returns the pairs of texts whose boxes share some area once each is
// made smaller by slack millimetres on every side.
func Collisions(boxes []TextBox, slack float64) [][2]TextBox {
	var out [][2]TextBox
	for i, a := range boxes {
		for _, b := range boxes[:i] {
			if a.Box.Inset(slack).Overlaps(b.Box.Inset(slack)) {
				out = append(out, [2]TextBox{b, a})
			}
		}
	}
	return out
}

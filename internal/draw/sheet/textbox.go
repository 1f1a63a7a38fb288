package sheet

import "math"

// TextBox is where a text stands on a drawing, in millimetres: the upright box
// round it, and the corners of its own, in order, which a turned text has askew.
type TextBox struct {
	Class   string
	S       string
	Box     Rect
	Corners [4]Point
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
			b := TextBox{Class: e.Class, S: s.S, Box: at.rect(s.Box(st))}
			for i, p := range turnedCorners(s.At, s.level(st), s.Rotate) {
				b.Corners[i] = at.offset.Add(p.Scale(at.scale))
			}
			out = append(out, b)
		}
	case *Group:
		for _, item := range s.Items {
			out = textBoxes(out, sheet, item, st, at.within(s))
		}
	}
	return out
}

// Collisions returns the pairs of texts that share some area once each is made
// smaller by slack millimetres on every side; turned texts by their own corners.
func Collisions(boxes []TextBox, slack float64) [][2]TextBox {
	var out [][2]TextBox
	for i, a := range boxes {
		for _, b := range boxes[:i] {
			if a.Box.Inset(slack).Overlaps(b.Box.Inset(slack)) && !a.apart(b, slack) && !b.apart(a, slack) {
				out = append(out, [2]TextBox{b, a})
			}
		}
	}
	return out
}

// apart reports whether a line along a side of b keeps the two boxes apart
// (the separating axis of convex shapes), each made smaller by slack millimetres.
func (b TextBox) apart(o TextBox, slack float64) bool {
	for i := range 2 {
		side := b.Corners[i+1].Sub(b.Corners[i])
		long := math.Hypot(side.X, side.Y)
		if long == 0 {
			return true
		}
		shadow := func(pts [4]Point) (low, high float64) {
			low, high = math.Inf(1), math.Inf(-1)
			for _, p := range pts {
				v := (p.X*side.X + p.Y*side.Y) / long
				low, high = min(low, v), max(high, v)
			}
			return low + slack, high - slack
		}
		low, high := shadow(b.Corners)
		if from, to := shadow(o.Corners); from >= high || low >= to {
			return true
		}
	}
	return false
}

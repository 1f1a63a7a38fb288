package sheet

// The shelf of a leader on which its text stands, the gap to the text and the
// distance between lines, in millimetres.
const (
	shelf       = 3.0
	noteGap     = 1.0
	noteLeading = 3.9
)

// Note adds a leader from a point on the part to an elbow, a short shelf away
// from the part, and lines of text beside it. With arrow it ends in an arrowhead
// at the part. It returns the box that the text fills, in millimetres.
func (g *Group) Note(at, elbow Point, arrow bool, lines ...string) Rect {
	side, anchor := 1.0, Start
	if elbow.X < at.X {
		side, anchor = -1, End
	}
	end := Pt(elbow.X+side*shelf, elbow.Y)
	g.Add("leader", Lines(at, elbow, end))
	if arrow {
		g.arrow(at, direction(elbow, at))
	}
	b := emptyBounds()
	top := elbow.Y - float64(len(lines)-1)*noteLeading/2
	for i, s := range lines {
		t := Text{At: Pt(end.X+side*noteGap, top+float64(i)*noteLeading), S: s, Anchor: anchor, VAlign: Centre}
		g.Add("note", t)
		b.cover(t.Box(Style{Face: Regular, Size: SizeText}))
	}
	return b.rect()
}

// CentreMark adds the crossed centre lines of a hole that spans w by h about c,
// standing over by 3 mm; lengths in millimetres.
func (g *Group) CentreMark(c Point, w, h float64) {
	const over = 3
	g.Add("centre-line", Line{Pt(c.X-w/2-over, c.Y), Pt(c.X+w/2+over, c.Y)})
	g.Add("centre-line", Line{Pt(c.X, c.Y-h/2-over), Pt(c.X, c.Y+h/2+over)})
}

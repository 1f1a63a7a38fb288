package sheet

// Bounds returns the least upright box round everything drawn, in millimetres.
// Line widths are not counted. A group that clips counts as its clip at most.
func (d *Drawing) Bounds() Rect {
	b := emptyBounds()
	for _, e := range d.Items {
		b.cover(elementBounds(d.Styles, e, Style{}))
	}
	return b.rect()
}

func (b *bounds) cover(r Rect) {
	if r == (Rect{}) {
		return
	}
	b.add(Point{r.X, r.Y})
	b.add(Point{r.X + r.W, r.Y + r.H})
}

func elementBounds(sheet Stylesheet, e *Element, base Style) Rect {
	st := sheet.Resolve(e.Class, base)
	switch s := e.Shape.(type) {
	case Circle:
		return Rect{s.C.X - s.R, s.C.Y - s.R, 2 * s.R, 2 * s.R}
	case outlined:
		return s.path().bounds()
	case Text:
		return s.Box(st)
	case Image:
		return s.Rect
	case *Group:
		return groupBounds(sheet, s, st)
	}
	return Rect{}
}

func groupBounds(sheet Stylesheet, g *Group, st Style) Rect {
	b := emptyBounds()
	for _, item := range g.Items {
		b.cover(elementBounds(sheet, item, st))
	}
	r := b.rect()
	if g.Clip != nil {
		r = r.common(*g.Clip)
	}
	if r == (Rect{}) {
		return r
	}
	k := g.factor()
	return Rect{g.Offset.X + k*r.X, g.Offset.Y + k*r.Y, k * r.W, k * r.H}
}

// common returns the part that two rectangles share, the zero Rect when none.
func (r Rect) common(o Rect) Rect {
	x0, y0 := max(r.X, o.X), max(r.Y, o.Y)
	x1, y1 := min(r.X+r.W, o.X+o.W), min(r.Y+r.H, o.Y+o.H)
	if x1 < x0 || y1 < y0 {
		return Rect{}
	}
	return Rect{x0, y0, x1 - x0, y1 - y0}
}

// bounds returns the box round a path; curves count by their flattened form,
// within 0.01 mm.
func (p Path) bounds() Rect {
	b := emptyBounds()
	for _, part := range p.flatten(flatTolerance) {
		for _, q := range part.pts {
			b.add(q)
		}
	}
	return b.rect()
}

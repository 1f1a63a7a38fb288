package sheet

// brush is what a writer of painted pages does with each thing on a drawing.
// Lengths are millimetres in the frame of the group last entered.
type brush interface {
	path(p Path, st Style)
	words(t Text, st Style)
	picture(m Image)
	enter(g *Group)
	leave(g *Group)
	link(r Rect, to string)
	begin(p *Part) // what is painted until end is of this part
	end()
}

// walk paints a drawing layer by layer.
func walk(d *Drawing, b brush) {
	styles := newStyler(d.Styles)
	for _, name := range d.LayerOrder() {
		for _, e := range d.Items {
			if e.Layer == name {
				paint(styles, e, styled{}, b)
			}
		}
	}
}

func paint(styles *styler, e *Element, base styled, b brush) {
	st := styles.resolve(e.Class, base)
	if e.Part != nil {
		b.begin(e.Part)
		defer b.end()
	}
	switch s := e.Shape.(type) {
	case outlined:
		b.path(s.path(), st.Style)
	case Text:
		if s.S != "" && st.Fill.visible() {
			b.words(s, st.Style)
		}
	case Image:
		if s.Img != nil {
			b.picture(s)
		}
	case *Group:
		b.enter(s)
		for _, item := range s.Items {
			paint(styles, item, st, b)
		}
		b.leave(s)
	}
	if e.Link != "" && safeLink(e.Link) {
		b.link(elementBounds(styles.sheet, e, base.Style), e.Link)
	}
}

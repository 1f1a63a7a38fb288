package sheet

// TitleBlock is what a sheet says of itself at its foot. Empty fields are left out.
type TitleBlock struct {
	Title   string // what is drawn: "Hole B-goal, template"
	Subject string // of what: the arena's name
	Caution string // a sentence or two, wrapped
	// Fields are captioned entries in reading order: {"Scale", "1:1"}.
	Fields []Field
	// Issue are further entries, below the others on as many rows as they need, with
	// the symbol of third-angle projection at their end.
	Issue []Field
}

// Field is a captioned entry of a title block.
type Field struct{ Name, Value string }

// Margins of a framed sheet in millimetres: the border stands 10 mm in, 20 mm on
// the left for filing (ISO 5457:1999, 4.2; from memory). Smaller sheets than A4
// and those without filing use 10 mm all round.
const (
	Margin       = 10.0 // mm
	FilingMargin = 20.0 // mm
)

// leastFiled is the shorter side of the smallest sheet with a filing margin, in millimetres.
const leastFiled = 209.0

// Heights of the title block's parts in millimetres.
const (
	fieldsHeight  = 9.0
	titleHeight   = 11.0
	cautionLead   = 3.7
	cautionMargin = 1.4
	blockPad      = 1.6
)

// Border is the frame of a sheet: the margins are those of the sheet as it is printed.
func (d *Drawing) Border() Rect {
	k := d.growth()
	left, margin := FilingMargin/k, Margin/k
	if min(d.W, d.H)*k < leastFiled {
		left = margin
	}
	return Rect{left, margin, d.W - left - margin, d.H - 2*margin}
}

// Frame draws the border and, along its foot, the title block on layer FRAME,
// and returns the area left for the drawing, in millimetres.
func (d *Drawing) Frame(t TitleBlock) Rect {
	border := d.Border()
	g, _ := d.Group(LayerFrame, "")
	g.Add("frame", RoundRect(border, 0))
	h := t.draw(g, border)
	area := border.Inset(0)
	area.H -= h
	return area
}

// draw sets the block at the foot of the border and returns its height.
func (t TitleBlock) draw(g *Group, border Rect) float64 {
	var caution []string
	if t.Caution != "" {
		caution = Italic.Wrap(t.Caution, SizeText, border.W-2*blockPad)
	}
	rows := wrapFields(t.Fields, border.W)
	issued := wrapFields(t.Issue, border.W-symbolWidth)
	h := titleHeight + fieldsHeight*float64(len(rows)+len(issued))
	if len(caution) > 0 {
		h += float64(len(caution))*cautionLead + 2*cautionMargin
	}
	y := border.Y + border.H - h
	x1 := border.X + border.W
	g.Add("edge", Line{Pt(border.X, y), Pt(x1, y)})
	for i, s := range caution {
		g.Add("caution", Text{At: Pt(border.X+blockPad, y+cautionMargin+float64(i)*cautionLead), S: s, Size: SizeText, VAlign: Top})
	}
	if len(caution) > 0 {
		y += float64(len(caution))*cautionLead + 2*cautionMargin
		g.Add("rule", Line{Pt(border.X, y), Pt(x1, y)})
	}
	t.titles(g, Rect{border.X, y, border.W, titleHeight})
	y += titleHeight
	for _, r := range rows {
		g.Add("rule", Line{Pt(border.X, y), Pt(x1, y)})
		fieldsRow(g, r, Rect{border.X, y, border.W, fieldsHeight})
		y += fieldsHeight
	}
	if len(issued) > 0 {
		x := x1 - symbolWidth
		g.Add("rule", Line{Pt(x, y), Pt(x, border.Y+border.H)})
		thirdAngle(g, Pt(x+conePad, (y+border.Y+border.H)/2))
	}
	for i, r := range issued {
		end := x1 - symbolWidth
		if i == 0 {
			end = x1
		}
		g.Add("rule", Line{Pt(border.X, y), Pt(end, y)})
		fieldsRow(g, r, Rect{border.X, y, border.W - symbolWidth, fieldsHeight})
		y += fieldsHeight
	}
	return h
}

// titles sets title and subject on one line, the title to the left. A title too
// long is set smaller before it loses its end: it names the part.
func (t TitleBlock) titles(g *Group, r Rect) {
	room := r.W - 2*blockPad
	most := room * 0.45
	subject := Text{S: t.Subject, Size: Regular.FitSize(t.Subject, SizeHead, SizeText, most), Anchor: End, VAlign: Centre}
	subject.S = Regular.Shorten(t.Subject, subject.Size, most+1e-6)
	left := room - Regular.Width(subject.S, subject.Size) - 4
	title := Text{At: Pt(r.X+blockPad, r.Y+r.H/2), S: t.Title, VAlign: Centre}
	if Bold.Width(t.Title, SizeTitle) > left {
		title.Size = Bold.FitSize(t.Title, SizeTitle, SizeText, left)
		title.S = Bold.Shorten(t.Title, title.Size, left+1e-6)
	}
	g.Add("title", title)
	if subject.S != "" {
		subject.At = Pt(r.X+r.W-blockPad, title.At.Y)
		g.Add("text", subject)
	}
}

// fieldsRow sets captioned entries side by side, each as wide as it needs, the
// room left over shared out evenly. Values too long are shortened.
func fieldsRow(g *Group, fields []Field, r Rect) {
	widths := shareWidths(wanted(fields), r.W)
	spare := max(r.W-sum(widths), 0) / float64(len(widths))
	x := r.X
	for i, f := range fields {
		w := widths[i] + spare
		if i > 0 {
			g.Add("rule", Line{Pt(x, r.Y), Pt(x, r.Y+r.H)})
		}
		room := w - 2*blockPad + 1e-6
		g.Add("caption", Text{At: Pt(x+blockPad, r.Y+1.3), S: Regular.Shorten(f.Name, SizeSmall, room), VAlign: Top})
		g.Add("value", Text{At: Pt(x+blockPad, r.Y+r.H-2), S: Regular.Shorten(f.Value, SizeText, room)})
		x += w
	}
}

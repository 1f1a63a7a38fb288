package card

import (
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// A card has the shape of a postcard, A6 of ISO 216: a phone shows it whole, four stand
// on A4. In millimetres.
const (
	cardW, cardH = 105.0, 148.0
	cardMargin   = 5.0
	boxGap       = 2.0
	boxHigh      = 33.0
	mapScale     = 1.55
)

// Drawing draws the card; dark is for a phone held in the dark: light letters on a dark
// ground.
func (c Card) Drawing(sys unit.System, dark bool) *sheet.Drawing {
	look := chart.Styles().Merge(styles())
	if dark {
		look = darkened(look)
	}
	d := sheet.New("card-"+c.Person.ID, cardW, cardH, look)
	d.Layers = []string{"ground", "map", sheet.LayerText}
	gameLine, who := c.Head()
	d.Title = who + ": " + gameLine
	d.Add("ground", "card-ground", sheet.RoundRect(sheet.Rect{W: cardW, H: cardH}, 0))
	g, _ := d.Group(sheet.LayerText, "")
	const wide = cardW - 2*cardMargin
	half := wide * 0.62
	g.Add("head", sheet.Text{At: sheet.Pt(cardMargin, cardMargin), S: sheet.Bold.Shorten(gameLine, sheet.SizeText, half), Size: sheet.SizeText, VAlign: sheet.Top})
	g.Add("note", sheet.Text{At: sheet.Pt(cardW-cardMargin, cardMargin), S: sheet.Regular.Shorten(who, sheet.SizeText, wide-half-2), Size: sheet.SizeText, Anchor: sheet.End, VAlign: sheet.Top})
	y := cardMargin + 6.0
	c.boxes(g, y, wide)
	y += boxHigh + 2
	y = c.picture(d, y)
	c.foot(d, y, sys)
	return d
}

// boxes sets a box for each period: the hole as large as there is room, who attacks here,
// the lens.
func (c Card) boxes(g *sheet.Group, y, wide float64) {
	w := (wide - boxGap*float64(len(c.Turns)-1)) / float64(len(c.Turns))
	for k, t := range c.Turns {
		x := cardMargin + float64(k)*(w+boxGap)
		class := "card-box"
		if t.Hole == "" {
			class = "card-box-none"
		}
		g.Add(class, sheet.RoundRect(sheet.Rect{X: x, Y: y, W: w, H: boxHigh}, 1.5))
		head := fmt.Sprintf("period %d", t.Period)
		if !t.At.IsZero() {
			head += "  " + t.At.Format("15:04")
		}
		line := func(class, s string, face sheet.Face, at, most float64) {
			size := face.FitSize(s, most, sheet.SizeSmall, w-3)
			g.Add(class, sheet.Text{At: sheet.Pt(x+w/2, y+at), S: face.Shorten(s, size, w-3), Size: size, Anchor: sheet.Middle, VAlign: sheet.Centre})
		}
		line("note", head, sheet.Regular, 4, sheet.SizeText)
		if t.Hole == "" {
			line("note", "no seat", sheet.Regular, boxHigh/2, sheet.SizeHead)
			continue
		}
		line("card-hole", t.Hole, sheet.Bold, 13, 12)
		line("card-attack", t.Attacks, sheet.Bold, 21.5, 4.2)
		line("note", "attack here", sheet.Regular, 25.2, sheet.SizeSmall)
		line("card-attack", t.Lens.ID, sheet.Bold, 29.5, 4.2)
	}
}

// picture sets the rink with the card's holes, how far the lens turns in them with clean
// corners, and who attacks which end; it returns where it ends.
func (c Card) picture(d *sheet.Drawing, y float64) float64 {
	a := c.Arena
	a.Holes = nil
	m, frame := chart.SmallMap("rink", a, nil), chart.SmallFrame(a)
	d.Place("map", m, sheet.Pt(cardMargin, y), mapScale)
	g, _ := d.Group(sheet.LayerText, "")
	at := func(v geom.Vec2) sheet.Point {
		p := frame.At(v.X, v.Y)
		return sheet.Pt(cardMargin+p.X*mapScale, y+p.Y*mapScale)
	}
	for _, end := range []int{-1, +1} {
		p := at(geom.Vec2{X: float64(end) * a.Rink.Dimensions().Length.Metres() / 4.2})
		lines := c.Ends(end)
		for k, s := range lines {
			g.Add("card-end", sheet.Text{At: sheet.Pt(p.X, p.Y+(float64(k)-float64(len(lines)-1)/2)*5), S: sheet.Bold.Shorten(s, sheet.SizeText, 40),
				Size: sheet.SizeText, Anchor: sheet.Middle, VAlign: sheet.Centre})
		}
	}
	c.each(func(p Post) { c.mark(g, p, at) })
	return y + m.H*mapScale + 1.5
}

// Marks on the map: a lens's rays are drawn this far into the rink, in metres; the rest
// in millimetres.
const (
	rayLong  = 9.0
	markR    = 1.8
	labelOff = 5.0
)

// mark sets a hole on the map: a disc, its name, and the rays to which the lens turns.
func (c Card) mark(g *sheet.Group, p Post, at func(geom.Vec2) sheet.Point) {
	h, ok := c.Arena.Hole(p.Hole)
	if !ok {
		return
	}
	foot, in, along := c.Arena.Rink.Point(h.Station), c.Arena.Rink.Normal(h.Station), c.Arena.Rink.Tangent(h.Station)
	if turn, ok := p.Clean.Get(); ok {
		for _, side := range []float64{-1, 1} {
			sin, cos := math.Sincos(turn.Radians())
			g.Add("card-ray", sheet.Line{A: at(foot), B: at(foot.Add(in.Scale(rayLong * cos)).Add(along.Scale(side * rayLong * sin)))})
		}
	}
	g.Add("card-mark", sheet.Circle{C: at(foot), R: markR})
	toward := at(foot.Add(in)).Sub(at(foot))
	toward = toward.Scale(labelOff / max(toward.Dist(sheet.Point{}), 1e-9))
	g.Add("card-name", sheet.Text{At: at(foot).Add(toward), S: p.Hole, Size: sheet.SizeHead, Anchor: sheet.Middle, VAlign: sheet.Centre})
}

// foot sets what is read before the game, in the largest type that has room.
func (c Card) foot(d *sheet.Drawing, y float64, sys unit.System) {
	for _, size := range []float64{sheet.SizeText, sheet.SizeTable, sheet.SizeSmall, 2} {
		g := &sheet.Group{}
		if end := c.footIn(g, y, size, sys); end < cardH-cardMargin || size == 2 {
			d.Add(sheet.LayerText, "", g)
			return
		}
	}
}

// footIn sets the lenses; exposure to the left; who comes next and the duties to the
// right. It returns where it ends.
func (c Card) footIn(g *sheet.Group, y, size float64, sys unit.System) float64 {
	const wide = cardW - 2*cardMargin
	set := func(class, s string, x, y, w float64) float64 {
		return y + g.Paragraph(class, sheet.Regular, sheet.Pt(x, y), s, size, w, 1.3*size) + 0.25*size
	}
	for _, p := range c.Posts {
		y = set("card-lens", p.Mount(), cardMargin, y, wide)
	}
	y++
	left, end := 0.0, y
	if t := c.Exposure(sys); len(t.Rows) > 0 {
		const share, tableShare = 0.6, 0.85 // of the width, of the type's size: no zone's name is broken
		l := sheet.FitTable(t, tableShare*size, wide*share)
		end += l.Draw(g, sheet.Pt(cardMargin, y), 0, l.Rows())
		left = wide * (share + 0.03)
	}
	for _, s := range slices.Concat(c.Nexts(), c.Duties(sys)) {
		y = set("note", s, cardMargin+left, y, wide-left)
	}
	for _, s := range c.Assumed() {
		y = set("caption", s.In(sys), cardMargin+left, y, wide-left)
	}
	return max(y, end)
}

func styles() sheet.Stylesheet {
	return sheet.Stylesheet{
		{Class: "card-ground", Style: sheet.Style{Fill: sheet.White}},
		{Class: "card-box", Style: sheet.Style{Fill: sheet.Ice, Stroke: sheet.Deep, Width: sheet.W50}},
		{Class: "card-box-none", Style: sheet.Style{Stroke: sheet.Mist, Width: sheet.W25}},
		{Class: "card-hole", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Bold}},
		{Class: "card-attack", Style: sheet.Style{Fill: sheet.Deep, Face: sheet.Bold}},
		{Class: "card-end", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Bold}},
		{Class: "card-name", Style: sheet.Style{Fill: sheet.Deep, Face: sheet.Bold}},
		{Class: "card-mark", Style: sheet.Style{Fill: sheet.Deep, Stroke: sheet.White, Width: sheet.W35}},
		{Class: "card-ray", Style: sheet.Style{Stroke: sheet.Deep, Width: sheet.W35}},
		{Class: "card-lens", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Regular}},
		{Class: "card-cut", Style: sheet.Style{Stroke: sheet.Mist, Width: sheet.W18, Dash: []float64{2, 1.5}}},
	}
}

// night turns the palette of prints into one for the dark.
var night = map[sheet.Colour]sheet.Colour{
	sheet.Ink: sheet.RGB(0xf2, 0xf5, 0xf7), sheet.Slate: sheet.RGB(0xb4, 0xc2, 0xcc), sheet.Mist: sheet.RGB(0x4a, 0x58, 0x63),
	sheet.White: sheet.RGB(0x0c, 0x10, 0x14), sheet.Ice: sheet.RGB(0x17, 0x20, 0x27), sheet.Frost: sheet.RGB(0x2b, 0x3a, 0x45),
	sheet.Deep: sheet.RGB(0x8f, 0xce, 0xf5), sheet.Good: sheet.RGB(0x7f, 0xd0, 0xa8), sheet.Bad: sheet.RGB(0xf0, 0x92, 0x86), sheet.Doubt: sheet.RGB(0xe3, 0xb4, 0x62),
}

// darkened returns a style sheet for the dark; a colour keeps its opacity.
func darkened(s sheet.Stylesheet) sheet.Stylesheet {
	const light = 0xb0 // the least part of a colour that is a ground, from 0 to 255
	turn := func(c sheet.Colour) sheet.Colour {
		opaque := c
		opaque.A = 255
		if to, ok := night[opaque]; ok {
			to.A = c.A
			return to
		}
		if min(c.R, c.G, c.B) > light {
			return sheet.RGB(c.R/8, c.G/7, c.B/6).Alpha(float64(c.A) / 255)
		}
		return c
	}
	out := make(sheet.Stylesheet, len(s))
	for i, r := range s {
		r.Style.Fill, r.Style.Stroke = turn(r.Style.Fill), turn(r.Style.Stroke)
		out[i] = r
	}
	return out
}

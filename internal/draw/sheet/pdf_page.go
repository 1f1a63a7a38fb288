package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/draw/sheet/internal/pdffile"
)

// pdfPage writes the content of one page.
type pdfPage struct {
	w      *pdfWriter
	b      []byte
	height float64 // mm
	at     []placed
	links  []pdffile.Ref
	tags   *pageTags // nil: the file has no structure

	// What the graphics state holds, so that it is said once only.
	now pdfState
}

// pdfState is the part of the graphics state that this writer sets.
type pdfState struct {
	stroke, fill Colour
	alpha        int // 0 is not said yet
	width        float64
	dash         string
	cap          Cap
	face         Face
	size         float64
}

// placed is where a group's frame stands on the page.
type placed struct {
	offset Point
	scale  float64
	saved  pdfState
}

func (p placed) rect(r Rect) Rect {
	return Rect{p.offset.X + p.scale*r.X, p.offset.Y + p.scale*r.Y, p.scale * r.W, p.scale * r.H}
}

func (p placed) within(g *Group) placed {
	return placed{offset: p.offset.Add(g.Offset.Scale(p.scale)), scale: p.scale * g.factor()}
}

func (c *pdfPage) ops(format string, a ...any) { c.b = fmt.Appendf(c.b, format, a...) }

// pdfDecimals rounds coordinates in millimetres to 0.0001.
const pdfDecimals = 4

func (c *pdfPage) num(v float64) {
	c.b = append(appendRounded(c.b, v, pdfDecimals), ' ')
}

func (c *pdfPage) pt(p Point) {
	c.num(p.X)
	c.num(p.Y)
}

func (c *pdfPage) op(s string) { c.b = append(append(c.b, s...), '\n') }

func (c *pdfPage) enter(g *Group) {
	top := c.at[len(c.at)-1]
	next := top.within(g)
	next.saved = c.now
	c.at = append(c.at, next)
	c.op("q")
	if g.Offset != (Point{}) || g.factor() != 1 {
		c.b = append(appendRounded(c.b, g.factor(), 8), " 0 0 "...)
		c.b = append(appendRounded(c.b, g.factor(), 8), ' ')
		c.pt(g.Offset)
		c.op("cm")
	}
	if g.Clip != nil {
		c.pt(Point{g.Clip.X, g.Clip.Y})
		c.pt(Point{g.Clip.W, g.Clip.H})
		c.op("re W n")
	}
}

func (c *pdfPage) leave(*Group) {
	c.op("Q")
	c.now = c.at[len(c.at)-1].saved
	c.at = c.at[:len(c.at)-1]
}

func (c *pdfPage) path(p Path, st Style) {
	fill, stroke := st.Fill.visible(), st.Stroke.visible() && st.Width > 0
	if len(p.Steps) == 0 || !fill && !stroke {
		return
	}
	c.tag()
	if fill && stroke && st.Fill.A != st.Stroke.A {
		// One opacity serves both paints of an operator: paint twice.
		line := st
		line.Fill = None
		st.Stroke = None
		c.path(p, st)
		c.path(p, line)
		return
	}
	if fill {
		c.colour(&c.now.fill, st.Fill, "rg")
		c.alpha(st.Fill.A)
	}
	if stroke {
		c.colour(&c.now.stroke, st.Stroke, "RG")
		c.alpha(st.Stroke.A)
		c.pen(st)
	}
	c.trace(p)
	switch {
	case fill && stroke:
		c.op("B*")
	case fill:
		c.op("f*")
	default:
		c.op("S")
	}
}

func (c *pdfPage) trace(p Path) {
	var at, start Point
	for _, s := range p.Steps {
		switch s.Op {
		case MoveTo:
			c.pt(s.P)
			c.op("m")
			start = s.P
		case LineTo:
			c.pt(s.P)
			c.op("l")
		case ArcTo:
			arcOf(at, s.P, s.Bulge).cubics(func(c1, c2, q Point) { c.curve(c1, c2, q) })
		case CubicTo:
			c.curve(s.C1, s.C2, s.P)
		case ClosePath:
			c.op("h")
			s.P = start
		}
		at = s.P
	}
}

func (c *pdfPage) curve(c1, c2, q Point) {
	c.pt(c1)
	c.pt(c2)
	c.pt(q)
	c.op("c")
}

func (c *pdfPage) colour(now *Colour, want Colour, op string) {
	want.Name, want.A = "", 255
	if *now == want {
		return
	}
	*now = want
	for _, v := range [3]uint8{want.R, want.G, want.B} {
		c.num(float64(v) / 255)
	}
	c.op(op)
}

func (c *pdfPage) alpha(a uint8) {
	if c.now.alpha == int(a) || c.now.alpha == 0 && a == 255 {
		return
	}
	c.now.alpha = int(a)
	c.w.alphas[a] = true
	c.op("/A" + strconv.Itoa(int(a)) + " gs")
}

func (c *pdfPage) pen(st Style) {
	if c.now.width != st.Width {
		c.now.width = st.Width
		c.num(st.Width)
		c.op("w")
	}
	dash := "[] 0 d"
	if len(st.Dash) > 0 {
		dash = "[" + dashList(st.Dash) + "] 0 d"
	}
	if c.now.dash != dash && (c.now.dash != "" || len(st.Dash) > 0) {
		c.now.dash = dash
		c.op(dash)
	}
	if c.now.cap != st.Cap && (c.now.cap == Round || st.Cap == Round) {
		c.now.cap = st.Cap
		c.op(map[bool]string{true: "1 J", false: "0 J"}[st.Cap == Round])
	}
}

func (c *pdfPage) words(t Text, st Style) {
	face := max(st.Face, Regular)
	said := t.S
	if c.tag() {
		t.S += " " // a line's end parts words, as a reader for the blind takes them
	}
	c.w.glyphs.add(face, t.S)
	c.colour(&c.now.fill, st.Fill, "rg")
	c.alpha(st.Fill.A)
	size := t.size(st)
	c.op("BT")
	if c.now.face != face || c.now.size != size {
		c.now.face, c.now.size = face, size
		c.b = append(append(c.b, "/F"...), strconv.Itoa(int(face))...)
		c.b = append(c.b, ' ')
		c.num(size)
		c.op("Tf")
	}
	dx, dy := -face.Width(said, size)*t.Anchor.share(), t.drop(st)
	s, k := math.Sincos(t.Rotate)
	for _, v := range [4]float64{k, -s, -s, -k} {
		c.b = append(appendRounded(c.b, v, 6), ' ')
	}
	c.pt(Point{t.At.X + dx*k + dy*s, t.At.Y - dx*s + dy*k})
	c.op("Tm")
	c.b = append(c.b, '<')
	font := face.font()
	for _, r := range t.S {
		c.b = fmt.Appendf(c.b, "%04X", font.Index(r))
	}
	c.op("> Tj\nET")
}

func (c *pdfPage) picture(m Image) {
	c.tag()
	c.w.pictures = append(c.w.pictures, c.w.embed(m))
	c.alpha(255)
	c.op("q")
	// A picture fills the unit square with its top at y = 1; y is down here.
	c.num(m.W)
	c.b = append(c.b, "0 0 "...)
	c.num(-m.H)
	c.pt(Point{m.X, m.Y + m.H})
	c.op("cm /I" + strconv.Itoa(len(c.w.pictures)-1) + " Do Q")
}

func (c *pdfPage) link(r Rect, to string) {
	r = c.at[len(c.at)-1].rect(r)
	box := fmt.Sprintf("[%s %s %s %s]", points(r.X), points(c.height-r.Y-r.H), points(r.X+r.W), points(c.height-r.Y))
	action := ""
	if n, ok := strings.CutPrefix(to, "#page="); ok {
		page, err := strconv.Atoi(n)
		if err != nil || page < 1 || page > len(c.w.pages) {
			return
		}
		action = fmt.Sprintf("/Dest [%v /Fit]", c.w.pages[page-1])
	} else if strings.HasPrefix(to, "http") {
		action = "/A <</S /URI /URI " + pdffile.String(to) + ">>"
	} else {
		return
	}
	annot := c.w.f.Reserve()
	c.w.f.Set(annot, "<</Type /Annot /Subtype /Link /Rect "+box+" /Border [0 0 0] "+action+c.tags.link(annot, to)+">>")
	c.links = append(c.links, annot)
}

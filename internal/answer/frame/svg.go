package frame

import (
	"bytes"
	"encoding/base64"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/geom"
)

// WriteSVG draws the shot as SVG, in a view box of w by h units: the same shapes as
// [Shot.Picture], in the same light and under the same veil of hole and ledge. It leaves out
// noise; the stands and boards take one blur, that of the frame's upper middle, and so does each
// line of the ice; motion smears up and down and across, not aslant. A picture through the pane is made of pixels; it is
// refused.
func (s *Shot) WriteSVG(out io.Writer, w, h int) error {
	if s.pane != nil {
		return errors.New("a picture through the pane is made of pixels; write a name that ends in .png")
	}
	st := newStage(s.Camera, w, h)
	p := &svg{w: float64(w), h: float64(h)}
	p.line(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" role="img"><title>%s</title>`, w, h, escape(s.title()))
	v, f := s.veil(), s.falloff()
	if err := errors.Join(p.darkened("hole", len(v.nodes[0]), len(v.nodes), v.gains), p.darkened("light", len(f.nodes[0]), len(f.nodes), f.degrees)); err != nil {
		return err
	}
	p.line(`<g filter="url(#hole)"><g filter="url(#light)"><rect width="%d" height="%d" fill="%s"/>`, w, h, hex(darkPaint))
	hl := newHall(s.Arena.Rink, st.cam.Eye.XY())
	ice := slices.Concat(st.ice(s.Arena.Rink), st.shades(s))
	bare := min(1, len(ice)) // the ice itself, whose edge is at the boards
	still := slices.Concat(st.roof(s.Arena.Rink, hl), st.stands(s, hl), st.panes(s), st.boards(hl, s.Arena.Boards.Height.Metres()), ice[:bare])
	p.group(still, even(s.Blur(s.backdropDepth(0, 0.9), w)))
	for _, paint := range ice[bare:] {
		mid := paint.box.Min.Add(paint.box.Max).Div(2)
		p.group([]shape{paint}, even(s.Blur(s.backdropDepth(2*float64(mid.X)/p.w-1, 1-2*float64(mid.Y)/p.h), w)))
	}
	p.line(`</g>`)
	p.group(st.lights(s, hl), geom.Vec2{})
	p.group(st.planes(s), geom.Vec2{})
	for _, l := range st.figures(s) {
		disc := s.Blur(l.depth, w)
		p.group(l.shapes, geom.Vec2{X: widened(disc, l.way.X), Y: widened(disc, l.way.Y)})
	}
	if err := p.ledge(v); err != nil {
		return err
	}
	p.line(`</g>`)
	p.group(st.checks(s), geom.Vec2{})
	p.line(`</svg>`)
	_, err := io.WriteString(out, p.b.String())
	return err
}

func (s *Shot) title() string {
	return fmt.Sprintf("%s through the glass: %.0f mm at f/%.3g, pan %.1f deg, tilt %.1f deg", s.Arena.Name,
		s.Focal.Millimetres(), float64(s.Stop), s.Aim.Pan.Degrees(), s.Aim.Tilt.Degrees())
}

type svg struct {
	b       strings.Builder
	w, h    float64 // of the view box
	filters int
}

func (p *svg) line(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

// even is a disc's blur, as the half widths of the boxes that stand for it.
func even(disc float64) geom.Vec2 { return geom.Vec2{X: disc * boxOfDisc, Y: disc * boxOfDisc} }

// group writes shapes under one blur, given as the half widths h of boxes, twice over: a
// Gaussian of the same second moment has the deviation h sqrt(2/3).
func (p *svg) group(shapes []shape, half geom.Vec2) {
	if len(shapes) == 0 {
		return
	}
	filter := ""
	if most := max(half.X, half.Y); most >= leastBlur {
		var box image.Rectangle
		for _, s := range shapes {
			box = box.Union(s.box)
		}
		box = box.Inset(-int(3*most) - 2)
		p.filters++
		p.line(`<filter id="b%d" filterUnits="userSpaceOnUse" x="%d" y="%d" width="%d" height="%d" color-interpolation-filters="sRGB"><feGaussianBlur stdDeviation="%s %s"/></filter>`,
			p.filters, box.Min.X, box.Min.Y, box.Dx(), box.Dy(), short(half.X*math.Sqrt(2.0/3)), short(half.Y*math.Sqrt(2.0/3)))
		filter = fmt.Sprintf(` filter="url(#b%d)"`, p.filters)
	}
	p.line(`<g%s>`, filter)
	for _, s := range shapes {
		p.line(`<path d="%s" fill="%s"%s/>`, path(s.outline), hex(s.paint), opacity(s.paint))
	}
	p.line(`</g>`)
}

// svgEdge is how far beyond the view box things are drawn, as a share of it, so that blur finds
// what lies just outside.
const svgEdge = 0.04

// offset is that of sRGB's curve, v = 1.055 light^(1/2.4) - 0.055.
const offset = 0.055

// degrees are light over a picture at the nodes of a grid, by colour.
type degrees func(x, y int) [3]float32

func (v *veil) gains(x, y int) [3]float32 {
	g := v.nodes[y][x].gain
	return [3]float32{g, g, g}
}

func (f *falloff) degrees(x, y int) [3]float32 { return f.nodes[y][x] }

// darkened writes a filter that multiplies the light of what is drawn. A factor k of light is,
// on the curve of sRGB above its straight foot,
//
//	g v - 0.055 (1 - g),   g = k^(1/2.4)
//
// in display values: the foot comes out darker by three levels of 255 at most.
func (p *svg) darkened(id string, cols, rows int, of degrees) error {
	root := func(d float32) float64 { return math.Pow(float64(d), displayGamma/2.4) }
	most := 1.0
	for y := range rows {
		for x := range cols {
			for _, d := range of(x, y) {
				most = max(most, root(d))
			}
		}
	}
	href, err := packed(cols, rows, func(x, y int) color.RGBA {
		var to [3]uint8
		for c, d := range of(x, y) {
			to[c] = uint8(255*root(d)/most + 0.5)
		}
		return color.RGBA{to[0], to[1], to[2], 255}
	})
	p.line(`<filter id="%s" filterUnits="userSpaceOnUse" x="%s" y="%s" width="%s" height="%s" color-interpolation-filters="sRGB"><feImage %s result="map"/>`+
		`<feComposite in="SourceGraphic" in2="map" operator="arithmetic" k1="%.4f" k2="0" k3="%.4f" k4="%.3f"/></filter>`,
		id, short(-svgEdge*p.w), short(-svgEdge*p.h), short((1+2*svgEdge)*p.w), short((1+2*svgEdge)*p.h), p.over(href, cols, rows), most, offset*most, -offset)
	return err
}

// ledge lays the boards' ledge, out of focus, over what is drawn.
func (p *svg) ledge(v *veil) error {
	cols, rows := len(v.nodes[0]), len(v.nodes)
	href, err := packed(cols, rows, func(x, y int) color.RGBA {
		n := v.nodes[y][x].ledge
		paint := color.RGBA{A: uint8(255*n + 0.5)}
		for c, to := range [3]*uint8{&paint.R, &paint.G, &paint.B} {
			*to = uint8(min(float32(paint.A), n*ledgePaint[c]+0.5))
		}
		return paint
	})
	p.line(`<image %s/>`, p.over(href, cols, rows))
	return err
}

// over are the attributes of a map over the view box: its nodes lie in the middle of its
// pixels, and viewers interpolate between them, so that no cells and no seams show.
func (p *svg) over(href string, cols, rows int) string {
	cw, ch := p.w/float64(cols-1), p.h/float64(rows-1)
	return fmt.Sprintf(`x="%s" y="%s" width="%s" height="%s" preserveAspectRatio="none" href="%s"`,
		short(-cw/2), short(-ch/2), short(p.w+cw), short(p.h+ch), href)
}

// packed returns a map as a small picture in itself, a pixel for each of its nodes.
func packed(cols, rows int, paint func(x, y int) color.RGBA) (string, error) {
	im := image.NewRGBA(image.Rect(0, 0, cols, rows))
	for y := range rows {
		for x := range cols {
			im.SetRGBA(x, y, paint(x, y))
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, im); err != nil {
		return "", fmt.Errorf("packing a map of light: %w", err)
	}
	return "data:image/png;base64," + base64.StdEncoding.EncodeToString(b.Bytes()), nil
}

func path(outline []geom.Vec2) string {
	var b strings.Builder
	for i, q := range outline {
		b.WriteByte("ML"[min(i, 1)])
		b.WriteString(short(q.X))
		b.WriteByte(' ')
		b.WriteString(short(q.Y))
	}
	b.WriteByte('Z')
	return b.String()
}

func short(x float64) string {
	s := strconv.FormatFloat(x, 'f', 2, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

func hex(c color.NRGBA) string { return fmt.Sprintf("#%02x%02x%02x", c.R, c.G, c.B) }

func opacity(c color.NRGBA) string {
	if c.A == 255 {
		return ""
	}
	return ` fill-opacity="` + short(float64(c.A)/255) + `"`
}

var escapes = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")

func escape(s string) string { return escapes.Replace(s) }

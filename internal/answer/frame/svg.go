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
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/measure/geom"
)

// WriteSVG draws the shot as SVG, in a view box of w by h units: the same shapes as
// [Shot.Picture], under the same veil of hole and ledge. It leaves out the survey's falloff
// over the ice, noise and motion; the ice stays sharp, and the stands and boards take one
// blur, that of the frame's upper middle. A picture through the pane is made of pixels; it is
// refused.
func (s *Shot) WriteSVG(out io.Writer, w, h int) error {
	if s.pane != nil {
		return errors.New("a picture through the pane is made of pixels; write a name that ends in .png")
	}
	st := newStage(s.Camera, w, h)
	p := &svg{}
	p.line(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" role="img"><title>%s</title>`, w, h, escape(s.title()))
	p.line(`<rect width="%d" height="%d" fill="%s"/>`, w, h, hex(darkPaint))
	hl := newHall(s.Arena.Rink, st.cam.Eye.XY())
	p.group(s.Blur(s.backdropDepth(0, 0.9), w), s.Lighting.exposed(slices.Concat(st.roof(s.Arena.Rink, hl), st.stands(s, hl), st.panes(s))))
	p.group(s.Blur(s.backdropDepth(0, 0.9), w), s.Lighting.exposed(st.boards(hl, s.Arena.Boards.Height.Metres())))
	p.group(0, st.lights(s, hl))
	p.group(0, s.Lighting.exposed(slices.Concat(st.ice(s.Arena.Rink), st.shades(s))))
	p.group(0, st.planes(s))
	for _, l := range st.figures(s) {
		p.group(s.Blur(l.depth, w), l.shapes)
	}
	if err := p.veil(s.veil(), float64(w), float64(h)); err != nil {
		return err
	}
	p.group(0, st.checks(s))
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
	filters int
}

func (p *svg) line(format string, args ...any) { fmt.Fprintf(&p.b, format+"\n", args...) }

// group writes shapes under one blur, given as a disc's diameter: a Gaussian of
// the same second moment has the deviation c/4.
func (p *svg) group(disc float64, shapes []shape) {
	if len(shapes) == 0 {
		return
	}
	filter := ""
	if disc*boxOfDisc >= leastBlur {
		p.filters++
		p.line(`<filter id="b%d" x="-50%%" y="-50%%" width="200%%" height="200%%"><feGaussianBlur stdDeviation="%s"/></filter>`,
			p.filters, short(disc/4))
		filter = fmt.Sprintf(` filter="url(#b%d)"`, p.filters)
	}
	p.line(`<g%s>`, filter)
	for _, s := range shapes {
		p.line(`<path d="%s" fill="%s"%s/>`, path(s.outline), hex(s.paint), opacity(s.paint))
	}
	p.line(`</g>`)
}

// veil lays the veil over everything as a small picture, a pixel for each of its nodes, between
// which viewers interpolate: no cells, no seams. What is drawn becomes
//
//	gain (drawn (1-ledge) + ledge paint x ledge)
//
// in display values; it cannot be brighter than drawn.
func (p *svg) veil(v *veil, w, h float64) error {
	const across, down = veilAcross * veilFine, veilDown * veilFine
	im := image.NewRGBA(image.Rect(0, 0, across+1, down+1))
	for j, row := range v.nodes {
		for i, n := range row {
			gain := min(1, n.gain)
			paint := color.RGBA{A: uint8(255*(1-gain*(1-n.ledge)) + 0.5)}
			for c, x := range [3]*uint8{&paint.R, &paint.G, &paint.B} {
				*x = uint8(min(float32(paint.A), gain*n.ledge*ledgePaint[c]+0.5))
			}
			im.SetRGBA(i, j, paint)
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, im); err != nil {
		return fmt.Errorf("packing the veil: %w", err)
	}
	cw, ch := w/across, h/down // nodes lie in the middle of their pixels
	p.line(`<image x="%s" y="%s" width="%s" height="%s" preserveAspectRatio="none" href="data:image/png;base64,%s"/>`,
		short(-cw/2), short(-ch/2), short(w+cw), short(h+ch), base64.StdEncoding.EncodeToString(b.Bytes()))
	return nil
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

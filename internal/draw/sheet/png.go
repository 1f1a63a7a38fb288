package sheet

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"

	"golang.org/x/image/draw"
)

// maxPixels bounds a picture's memory: an A0 sheet at 300 dots per inch has 139 million.
const maxPixels = 160_000_000

var errPictureSize = errors.New("no such picture")

// PNG returns the drawing as a picture on white paper at a number of dots per
// inch. It fails when the picture would have no pixel or more than 160 million.
func PNG(d *Drawing, dpi float64) ([]byte, error) {
	img, err := Raster(d.pictured(Lack.boxes), dpi)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	enc := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := enc.Encode(&b, img); err != nil {
		return nil, fmt.Errorf("write picture: %w", err)
	}
	return withDensity(b.Bytes(), dpi), nil
}

// Raster paints the drawing on white at a number of dots per inch.
func Raster(d *Drawing, dpi float64) (*image.RGBA, error) {
	k := dpi / 25.4
	w, h := math.Round(d.W*k), math.Round(d.H*k)
	if !(w >= 1 && h >= 1 && w*h <= maxPixels) {
		return nil, fmt.Errorf("%w: %g x %g mm at %g dots per inch: from 1 to %d pixels will do",
			errPictureSize, d.W, d.H, dpi, maxPixels)
	}
	img := image.NewRGBA(image.Rect(0, 0, int(w), int(h)))
	draw.Draw(img, img.Bounds(), image.White, image.Point{}, draw.Src)
	walk(d, &pngPage{img: img, at: []canvasFrame{{placed{scale: k}, img.Bounds()}}})
	return img, nil
}

// canvasFrame is where a group's frame stands on the picture, in pixels.
type canvasFrame struct {
	placed
	clip image.Rectangle
}

type pngPage struct {
	img *image.RGBA
	at  []canvasFrame
	ink inker
}

func (c *pngPage) top() canvasFrame { return c.at[len(c.at)-1] }

func (c *pngPage) enter(g *Group) {
	t := c.top()
	next := canvasFrame{t.within(g), t.clip}
	if g.Clip != nil {
		r := next.rect(*g.Clip)
		next.clip = next.clip.Intersect(image.Rect(
			int(math.Round(r.X)), int(math.Round(r.Y)), int(math.Round(r.X+r.W)), int(math.Round(r.Y+r.H))))
	}
	c.at = append(c.at, next)
}

func (c *pngPage) leave(*Group) { c.at = c.at[:len(c.at)-1] }

func (c *pngPage) link(Rect, string) {}

func (c *pngPage) begin(*Part) {}

func (c *pngPage) end() {}

// pngTolerance is how far, in pixels, a chord may leave its curve.
const pngTolerance = 0.1

func (c *pngPage) path(p Path, st Style) {
	t := c.top()
	var parts []chain
	for _, part := range p.flatten(pngTolerance / t.scale) {
		parts = append(parts, t.chain(part))
	}
	if st.Fill.visible() {
		c.ink.fill(c.img, t.clip, oriented(parts), st.Fill.rgba())
	}
	if st.Stroke.visible() && st.Width > 0 {
		lines := parts
		if len(st.Dash) > 0 {
			lines = dashed(parts, st.Dash, t.scale)
		}
		c.ink.fill(c.img, t.clip, stroked(lines, st.Width*t.scale, st.Cap == Round), st.Stroke.rgba())
	}
}

func (f canvasFrame) chain(in chain) chain {
	out := chain{pts: make([]Point, len(in.pts)), closed: in.closed}
	for i, p := range in.pts {
		out.pts[i] = f.offset.Add(p.Scale(f.scale))
	}
	return out
}

func (c Colour) rgba() color.NRGBA { return color.NRGBA{c.R, c.G, c.B, c.A} }

func (c *pngPage) picture(m Image) {
	t := c.top()
	r := t.rect(m.Rect)
	dst := image.Rect(int(math.Round(r.X)), int(math.Round(r.Y)), int(math.Round(r.X+r.W)), int(math.Round(r.Y+r.H)))
	draw.NearestNeighbor.Scale(c.img.SubImage(t.clip).(*image.RGBA), dst, m.Img, m.Img.Bounds(), draw.Over, nil)
}

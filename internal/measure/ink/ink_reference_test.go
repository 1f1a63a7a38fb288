package ink_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"golang.org/x/image/vector"
	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/ink"
)

func vec(x, y float64) geom.Vec2 { return geom.Vec2{X: x, Y: y} }

func fill(p *ink.Pen, outline []geom.Vec2, paint color.NRGBA) {
	for i, a := range outline {
		p.Edge(a, outline[(i+1)%len(outline)])
	}
	p.Fill(paint)
}

// TestPenAgainstTheGoRasterizer fills star-shaped outlines, some of them partly
// outside the picture, and compares every pixel with golang.org/x/image/vector,
// to a step of eight bits. The picture is wider than 512 pixels, from which on
// that one works in floating point instead of coarse fixed point.
func TestPenAgainstTheGoRasterizer(t *testing.T) {
	const w, h = 520, 30
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 9).Draw(t, "corners")
		cx, cy := rapid.SampledFrom([]float64{0, w - 40}).Draw(t, "side")+rapid.Float64Range(-5, 45).Draw(t, "cx"), rapid.Float64Range(-5, h+5).Draw(t, "cy")
		var outline []geom.Vec2
		for i := range n {
			r := rapid.Float64Range(0.5, 25).Draw(t, "r")
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			outline = append(outline, vec(cx+r*cos, cy+r*sin))
		}
		got, want := image.NewRGBA(image.Rect(0, 0, w, h)), image.NewRGBA(image.Rect(0, 0, w, h))
		paint := color.NRGBA{200, 90, 10, 255}
		fill(ink.New(got), outline, paint)
		z := vector.NewRasterizer(w, h)
		for i, p := range outline {
			if i == 0 {
				z.MoveTo(float32(p.X), float32(p.Y))
			} else {
				z.LineTo(float32(p.X), float32(p.Y))
			}
		}
		z.ClosePath()
		z.Draw(want, want.Rect, image.NewUniform(paint), image.Point{})
		for i := range got.Pix {
			if d := int(got.Pix[i]) - int(want.Pix[i]); d < -1 || d > 1 {
				t.Fatalf("byte %d (x %d, y %d) is %d, the reference has %d", i, i/4%w, i/4/w, got.Pix[i], want.Pix[i])
			}
		}
	})
}

// TestPenCoversTheArea: the coverage of a triangle's pixels adds up to its area.
func TestPenCoversTheArea(t *testing.T) {
	im := image.NewRGBA(image.Rect(0, 0, 64, 64))
	a, b, c := vec(3.3, 5.1), vec(60.2, 20.7), vec(17.9, 61.4)
	fill(ink.New(im), []geom.Vec2{a, b, c}, color.NRGBA{255, 255, 255, 255})
	sum := 0.0
	for i := 3; i < len(im.Pix); i += 4 {
		sum += float64(im.Pix[i]) / 255
	}
	if area := math.Abs(b.Sub(a).Cross(c.Sub(a))) / 2; math.Abs(sum-area) > 0.5 {
		t.Errorf("pixels add up to %.2f, the triangle has %.2f", sum, area)
	}
}

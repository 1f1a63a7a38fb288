package sheet

import (
	"image"
	"image/color"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/ink"
)

// inker fills outlines on a picture, with one pen as long as the clip stays.
type inker struct {
	clip image.Rectangle
	pen  *ink.Pen
}

// fill paints closed parts, given in pixels, inside by the non-zero rule.
func (k *inker) fill(img *image.RGBA, clip image.Rectangle, parts []chain, c color.NRGBA) {
	if clip.Empty() {
		return
	}
	if k.pen == nil || clip != k.clip {
		k.clip, k.pen = clip, ink.New(img.SubImage(clip).(*image.RGBA))
	}
	for _, part := range parts {
		for i, p := range part.pts {
			k.pen.Edge(geom.Vec2(p), geom.Vec2(part.pts[(i+1)%len(part.pts)]))
		}
	}
	k.pen.Fill(c)
}

// oriented turns the parts so that the non-zero rule gives what the even-odd
// rule gives: a part inside an odd number of others runs the other way. It
// holds for parts that do not cross.
func oriented(parts []chain) []chain {
	out := make([]chain, len(parts))
	for i, part := range parts {
		depth := 0
		for j, other := range parts {
			if i != j && len(part.pts) > 0 && inside(part.pts[0], other.pts) {
				depth++
			}
		}
		out[i] = part
		if (signedArea(part.pts) > 0) != (depth%2 == 0) {
			out[i].pts = reversed(part.pts)
		}
	}
	return out
}

func reversed(pts []Point) []Point {
	out := make([]Point, len(pts))
	for i, p := range pts {
		out[len(pts)-1-i] = p
	}
	return out
}

// signedArea is positive when the points run clockwise as seen, with y down.
func signedArea(pts []Point) float64 {
	a := 0.0
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		a += p.X*q.Y - q.X*p.Y
	}
	return a / 2
}

// inside reports whether a point lies in a polygon, by counting crossings.
func inside(p Point, pts []Point) bool {
	in := false
	for i, a := range pts {
		b := pts[(i+1)%len(pts)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

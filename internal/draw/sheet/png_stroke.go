package sheet

import "math"

// stroked returns the outlines of lines of a width in pixels: a quadrangle for
// each piece and a disc for each join, all turning the same way.
func stroked(lines []chain, width float64, round bool) []chain {
	h := max(width, hairline) / 2
	var out []chain
	for _, l := range lines {
		pts := l.pts
		if l.closed {
			pts = append(pts[:len(pts):len(pts)], pts[0])
		}
		for i := 0; i+1 < len(pts); i++ {
			a, b := pts[i], pts[i+1]
			if d := a.Dist(b); d > 0 {
				n := Point{(b.Y - a.Y) / d * h, (a.X - b.X) / d * h}
				out = append(out, chain{pts: []Point{a.Add(n), b.Add(n), b.Sub(n), a.Sub(n)}, closed: true})
			}
			if i > 0 || l.closed || round {
				out = append(out, disc(a, h))
			}
		}
		if n := len(pts); n > 0 && round && !l.closed {
			out = append(out, disc(pts[n-1], h))
		}
	}
	return out
}

// hairline is the least width of a line in pixels.
const hairline = 0.5

func disc(c Point, r float64) chain {
	n := min(max(int(math.Ceil(math.Pi/math.Acos(1-min(pngTolerance/r, 0.5)))), 6), 64)
	out := chain{pts: make([]Point, n), closed: true}
	for i := range out.pts {
		// Falling angles turn clockwise as seen, as the quadrangles do.
		out.pts[i] = c.Polar(r, -2*math.Pi*float64(i)/float64(n))
	}
	return out
}

// dashed cuts lines, given in pixels, by a pattern in millimetres.
func dashed(lines []chain, dash []float64, scale float64) []chain {
	total := 0.0
	for _, v := range dash {
		total += v * scale
	}
	if !(total > hairline) {
		return lines
	}
	var out []chain
	for _, l := range lines {
		pts := l.pts
		if l.closed {
			pts = append(pts[:len(pts):len(pts)], pts[0])
		}
		out = append(out, dashOne(pts, dash, scale)...)
	}
	return out
}

func dashOne(pts []Point, dash []float64, scale float64) []chain {
	var out []chain
	k, left := 0, dash[0]*scale
	cur := []Point{pts[0]}
	for i := 0; i+1 < len(pts); i++ {
		a, b := pts[i], pts[i+1]
		d := a.Dist(b)
		for at := 0.0; at < d; {
			step := min(left, d-at)
			at += step
			left -= step
			p := a.Add(b.Sub(a).Scale(at / d))
			if k%2 == 0 {
				cur = append(cur, p)
			}
			if left > 0 {
				continue
			}
			if k%2 == 0 {
				out = append(out, chain{pts: cur})
			}
			k++
			left = max(dash[k%len(dash)]*scale, 1e-3)
			cur = []Point{p}
		}
	}
	if k%2 == 0 && len(cur) > 1 {
		out = append(out, chain{pts: cur})
	}
	return out
}

package geom

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// sliced is the area that an ellipse shares with r and, when both is set, with
// r moved by d: the sum of horizontal slices, whose ends are known in closed
// form. It shares no code with Overlap but RoundRect.right.
func sliced(r RoundRect, d Vec2, both bool, e Ellipse, n int) float64 {
	reach := e.Reach()
	// |M^-1 (q - c)|^2 = P x^2 + 2 Q x y + S y^2
	det := e.A.Cross(e.B)
	xx, xy, yx, yy := e.B.Y/det, -e.B.X/det, -e.A.Y/det, e.A.X/det
	p, q, s := xx*xx+yx*yx, xx*xy+yx*yy, xy*xy+yy*yy
	from, to := max(-reach.Y, -r.HalfH-e.Centre.Y), min(reach.Y, r.HalfH-e.Centre.Y)
	if both {
		from, to = max(from, d.Y-r.HalfH-e.Centre.Y), min(to, d.Y+r.HalfH-e.Centre.Y)
	}
	if from >= to {
		return 0
	}
	sum := 0.0
	for i := range n {
		// Points bunched toward the ends, where the slices' lengths go like a root.
		a := math.Pi * (float64(i) + 0.5) / float64(n)
		y := (from+to)/2 - (to-from)/2*math.Cos(a)
		weight := (to - from) / 2 * math.Sin(a) * math.Pi / float64(n)
		disc := q*q*y*y - p*(s*y*y-1)
		if disc <= 0 {
			continue
		}
		lo, hi := e.Centre.X+(-q*y-math.Sqrt(disc))/p, e.Centre.X+(-q*y+math.Sqrt(disc))/p
		cy := e.Centre.Y + y
		lo, hi = max(lo, -r.right(cy)), min(hi, r.right(cy))
		if both {
			lo, hi = max(lo, d.X-r.right(cy-d.Y)), min(hi, d.X+r.right(cy-d.Y))
		}
		if hi > lo {
			sum += (hi - lo) * weight
		}
	}
	return sum
}

func genRect(t *rapid.T) RoundRect {
	r := RoundRect{HalfW: rapid.Float64Range(0.2, 2).Draw(t, "w"), HalfH: rapid.Float64Range(0.2, 2).Draw(t, "h")}
	m := min(r.HalfW, r.HalfH)
	switch rapid.IntRange(0, 3).Draw(t, "corner") {
	case 0:
		r.Radius = m
	case 1:
	default:
		r.Radius = m * rapid.Float64Range(0, 1).Draw(t, "r")
	}
	return r
}

func genVec(t *rapid.T, name string, reach float64) Vec2 {
	g := rapid.OneOf(rapid.Float64Range(-reach, reach), rapid.Just(0.0))
	return Vec2{g.Draw(t, name+"x"), g.Draw(t, name+"y")}
}

func genEllipse(t *rapid.T) Ellipse {
	a := rapid.Float64Range(0.1, 2).Draw(t, "a")
	b := a * rapid.Float64Range(0.05, 1).Draw(t, "b")
	q := rapid.Float64Range(0, 7).Draw(t, "turn")
	return Ellipse{
		Centre: genVec(t, "c", 3),
		A:      Vec2{a * math.Cos(q), a * math.Sin(q)},
		B:      Vec2{-b * math.Sin(q), b * math.Cos(q)},
	}
}

func TestOverlapAgainstSlices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, e := genRect(t), genEllipse(t)
		d := genVec(t, "d", 2.5)
		both := rapid.Bool().Draw(t, "both")
		o := r.Outline()
		if both {
			o = r.Shared(d)
		}
		got, _ := o.Overlap(e)
		want := sliced(r, d, both, e, 4000)
		if math.Abs(got-want) > 3e-6*max(1, e.Area()) {
			t.Fatalf("area %.9g, slices %.9g", got, want)
		}
	})
}

func TestOverlapGradient(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, e := genRect(t), genEllipse(t)
		o := r.Shared(genVec(t, "d", 1))
		e.Centre = e.Centre.Add(Vec2{0.01234, 0.03456}) // off the kinks where walls and ellipse touch
		_, g := o.Overlap(e)
		const h = 1e-5
		slope := func(d Vec2) float64 {
			up, down := e, e
			up.Centre, down.Centre = e.Centre.Add(d.Scale(h)), e.Centre.Sub(d.Scale(h))
			a, _ := o.Overlap(up)
			b, _ := o.Overlap(down)
			return (a - b) / (2 * h)
		}
		got := Vec2{slope(Vec2{1, 0}), slope(Vec2{0, 1})}
		// Where the ellipse just begins to touch, the slope goes like a root: sqrt(h).
		if got.Sub(g).Len() > 0.02*max(1, e.Area()) {
			t.Fatalf("gradient %v, differences %v", g, got)
		}
	})
}

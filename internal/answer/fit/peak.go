package fit

import "math"

// golden is the golden section's smaller part.
const golden = 0.3819660112501051

// peakSteps bounds a hunt for a peak: golden steps alone shrink the range by 1e-20.
const peakSteps = 100

// peak returns where f, with one peak between lo and hi, is largest, to tol, and
// its value there: Brent's method, parabolas through the three best points with
// golden steps where those go wrong.
func peak(lo, hi, tol float64, f func(float64) float64) (at, value float64) {
	x := lo + golden*(hi-lo)
	fx := f(x)
	w, v, fw, fv := x, x, fx, fx
	var step, last float64
	for range peakSteps {
		mid := lo + (hi-lo)/2
		if math.Abs(x-mid) <= 2*tol-(hi-lo)/2 {
			break
		}
		parabola, u := false, 0.0
		if math.Abs(last) > tol {
			r := (x - w) * (fv - fx)
			q := (x - v) * (fw - fx)
			p := (x-v)*q - (x-w)*r
			if q = 2 * (q - r); q > 0 {
				p = -p
			}
			q = math.Abs(q)
			if math.Abs(p) < math.Abs(q*last/2) && p > q*(lo-x) && p < q*(hi-x) {
				last, step = step, p/q
				u = x + step
				if u-lo < 2*tol || hi-u < 2*tol {
					step = math.Copysign(tol, mid-x)
				}
				parabola = true
			}
		}
		if !parabola {
			if last = hi - x; x >= mid {
				last = lo - x
			}
			step = golden * last
		}
		if math.Abs(step) < tol {
			step = math.Copysign(tol, step)
		}
		u = x + step
		fu := f(u)
		if fu >= fx {
			if u >= x {
				lo = x
			} else {
				hi = x
			}
			v, fv, w, fw, x, fx = w, fw, x, fx, u, fu
			continue
		}
		if u < x {
			lo = u
		} else {
			hi = u
		}
		switch {
		case fu >= fw || w == x:
			v, fv, w, fw = w, fw, u, fu
		case fu >= fv || v == x || v == w:
			v, fv = u, fu
		}
	}
	return x, fx
}

// peaks looks at n+1 points of lo..hi, refines every one that is no lower than
// its neighbours, and returns the highest place found with its value.
func peaks(lo, hi float64, n int, tol float64, f func(float64) float64) (at, value float64) {
	step := (hi - lo) / float64(n)
	place := func(i int) float64 { return lo + step*float64(i) }
	value = math.Inf(-1)
	take := func(x, v float64) {
		if v > value {
			at, value = x, v
		}
	}
	before, here := math.Inf(-1), f(lo)
	for i := range n + 1 {
		after := math.Inf(-1)
		if i < n {
			after = f(place(i + 1))
		}
		take(place(i), here)
		if here >= before && here >= after && (here > before || here > after) {
			take(peak(place(max(i-1, 0)), place(min(i+1, n)), tol, f))
		}
		before, here = here, after
	}
	return at, value
}

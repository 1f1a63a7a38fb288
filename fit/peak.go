package fit

// golden is the golden section's smaller part.
const golden = 0.3819660112501051

// peak returns where f, with one peak between lo and hi, is largest, to tol:
// golden section.
func peak(lo, hi, tol float64, f func(float64) float64) (at, value float64) {
	a, b := lo, hi
	x, y := a+golden*(b-a), b-golden*(b-a)
	fx, fy := f(x), f(y)
	for b-a > tol {
		if fx >= fy {
			b, y, fy = y, x, fx
			x = a + golden*(b-a)
			fx = f(x)
		} else {
			a, x, fx = x, y, fy
			y = b - golden*(b-a)
			fy = f(y)
		}
	}
	if fx >= fy {
		return x, fx
	}
	return y, fy
}

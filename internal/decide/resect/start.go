package resect

import (
	"cmp"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/geom"
)

// The direct start tries eyes behind the boards all round, and focal lengths where
// nothing is known of them: two marks then tell the attitude exactly, and the others
// say how well it fits. Steps are so small that the fit finds its way from there.
const (
	startStep   = 1.0  // metres along the boards
	startHeight = 1.6  // metres: where people hold cameras
	startPairs  = 8    // pairs of marks that tell an attitude
	startSlack  = 5.0  // px that a mark may be off
	focalStep   = 1.2  // from one focal length to the next, a ratio
	mostStarts  = 16   // that are handed to the fit
	leastFocal  = 0.28 // frame widths: 10 mm on 36 mm
	mostFocal   = 40.0 // frame widths: 1440 mm on 36 mm
)

// start is a camera to begin with, and how badly the marks fit it.
type start struct {
	x    [numbers]float64
	miss float64
}

// ray is a mark as a direction in the camera's right-handed frame right, up, back, and
// as one in the rink's frame.
type ray struct {
	seen, there geom.Vec3
	slack       float64 // radians
}

// starts returns the cameras that fit a frame's marks best, the best first, one a step.
func (m *model) starts(f Frame, at []geom.Vec3) []start {
	var all []start
	two := pairs(f.Marks)
	for s := 0.0; s < m.rink.Perimeter().Metres() && !m.gone(); s += startStep {
		best := start{miss: math.Inf(1)}
		for _, focal := range f.focals() {
			if one := m.begin(f, at, two, s, focal); one.miss < best.miss {
				best = one
			}
		}
		all = append(all, best)
	}
	slices.SortStableFunc(all, func(a, b start) int { return cmp.Compare(a.miss, b.miss) })
	return all[:min(len(all), mostStarts)]
}

// focals are the focal lengths to try, in pixels.
func (f Frame) focals() []float64 {
	if f.Focal.length > 0 {
		return []float64{f.Focal.length.Metres() * f.across()}
	}
	var out []float64
	for k := leastFocal; k < mostFocal; k *= focalStep {
		out = append(out, k*float64(f.Pixels[0]))
	}
	return out
}

// begin returns the attitude at a station that most marks agree on.
func (b boards) begin(f Frame, at []geom.Vec3, two [][2]int, station, focal float64) start {
	m := b.mount(station, startHeight)
	eye := m.Origin.Sub(m.In.Scale(usualBack))
	rays := make([]ray, len(f.Marks))
	for i, mark := range f.Marks {
		x, y := f.middle()
		x, y = mark.X-x, y-mark.Y
		v := at[i].Sub(eye)
		rays[i] = ray{geom.Vec3{X: x, Y: y, Z: -focal}.Unit(), v.Unit(), startStep/max(v.Len(), startStep) + startSlack/focal}
		if f.Focal.length == 0 {
			rays[i].slack += (focalStep - 1) / 2 * math.Hypot(x, y) / math.Hypot(x, focal)
		}
	}
	out := start{miss: math.Inf(1)}
	var bestRight, bestBack geom.Vec3
	for _, p := range two {
		right, back, ok := turn(rays[p[0]], rays[p[1]])
		if !ok {
			continue
		}
		up := cross(back, right)
		miss := 0.0
		for _, r := range rays {
			seen := geom.Vec3{X: r.there.Dot(right), Y: r.there.Dot(up), Z: r.there.Dot(back)}
			off := seen.Sub(r.seen)
			e2 := off.Dot(off) / (r.slack * r.slack)
			miss += e2 / (1 + e2)
		}
		if miss < out.miss {
			out.miss, bestRight, bestBack = miss, right, back
		}
	}
	pan, tilt, roll := attitude(m, bestRight, bestBack.Scale(-1))
	out.x = [numbers]float64{station, startHeight, usualBack, pan, tilt, roll, math.Log(focal)}
	return out
}

// pairs returns the pairs of marks that lie farthest apart, so many at most.
func pairs(marks []Pin) [][2]int {
	var out [][2]int
	for i := range marks {
		for j := range i {
			out = append(out, [2]int{j, i})
		}
	}
	apart := func(p [2]int) float64 {
		a, b := marks[p[0]], marks[p[1]]
		return math.Hypot(a.X-b.X, a.Y-b.Y)
	}
	slices.SortStableFunc(out, func(p, q [2]int) int { return cmp.Compare(apart(q), apart(p)) })
	return out[:min(len(out), startPairs)]
}

// turn returns the right and the back of the camera that sees two directions where they
// are seen, the first exactly (the two-vector attitude of Black, 1964). ok is false for
// directions that are one.
func turn(a, b ray) (right, back geom.Vec3, ok bool) {
	seen, ok1 := triad(a.seen, b.seen)
	there, ok2 := triad(a.there, b.there)
	if !ok1 || !ok2 {
		return right, back, false
	}
	axis := func(part func(geom.Vec3) float64) (v geom.Vec3) {
		for k := range seen {
			v = v.Add(there[k].Scale(part(seen[k])))
		}
		return v
	}
	return axis(func(v geom.Vec3) float64 { return v.X }), axis(func(v geom.Vec3) float64 { return v.Z }), true
}

// triad returns a right-handed frame whose first vector is a and whose third is square
// to both.
func triad(a, b geom.Vec3) (f [3]geom.Vec3, ok bool) {
	n := cross(a, b)
	if n.Len() < 1e-9 {
		return f, false
	}
	n = n.Unit()
	return [3]geom.Vec3{a, cross(n, a), n}, true
}

// cross is the vector product in a right-handed frame: the rink's, or right, up, back.
func cross(a, b geom.Vec3) geom.Vec3 {
	return geom.Vec3{X: a.Y*b.Z - a.Z*b.Y, Y: a.Z*b.X - a.X*b.Z, Z: a.X*b.Y - a.Y*b.X}
}

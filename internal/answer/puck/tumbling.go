package puck

import (
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Flight is the direction of flight at the pane: angle from the pane's
// normal along the boards (positive toward rising station) and upward angle
// above level. Both within 90 degrees, not included.
type Flight struct{ Along, Up unit.Angle }

// Window is what a puck's centre may travel in the pane's plane, averaged
// over orientations.
type Window struct {
	AreaM2 float64 // mean free area in square metres, orientations that do not pass counting 0
	Pass   float64 // share of orientations that pass at all, 0 to 1
}

// Orientations are directions of a puck's axis, spread evenly over the
// sphere. Make them with NewOrientations; they are read only and may be shared.
type Orientations []geom.Vec3

// NewOrientations returns n axis directions (n is raised to an even number
// squared): the half sphere is cut in cells of equal area and each cell's
// middle is taken. The even number keeps the set its own mirror image, left to
// right and top to bottom.
func NewOrientations(n int) Orientations {
	side := max(2, int(math.Ceil(math.Sqrt(float64(max(n, 1))))))
	side += side % 2
	out := make(Orientations, 0, side*side)
	for i := range side {
		z := (float64(i) + 0.5) / float64(side) // a puck has no front: half a sphere does
		r := math.Sqrt(1 - z*z)
		for j := range side {
			s, c := math.Sincos(2 * math.Pi * (float64(j) + 0.5) / float64(side))
			out = append(out, geom.Vec3{X: r * c, Y: r * s, Z: z})
		}
	}
	return out
}

// Tumbling returns the mean window over the orientations for a flight. A
// point p of the puck is thrown along the flight u on the pane's plane at
// x = p.m, m = X - (ux/uz) Z (likewise y), so that the shadow's width is the
// support width of a disc with axis n,
//
//	h |n.m| + D sqrt(m.m - (n.m)^2)
//
// and the free travel is W - t |ux/uz| less that width, by the like in
// height. Source: own derivation; error in docs/formulas/puck.md.
func (o Opening) Tumbling(f Flight, axes Orientations) Window {
	kx, ky, ok := f.slopes()
	if !ok || len(axes) == 0 {
		return Window{}
	}
	area, pass := 0.0, 0
	for _, n := range axes {
		if a := o.freeArea(n, kx, ky); a > 0 {
			area += a
			pass++
		}
	}
	k := 1 / float64(len(axes))
	return Window{AreaM2: area * k, Pass: float64(pass) * k}
}

// FlatFlight is Flat for a flight that may also rise or fall, as an area: a
// puck with its axis upright.
func (o Opening) FlatFlight(f Flight) Window {
	kx, ky, ok := f.slopes()
	if !ok {
		return Window{}
	}
	a := o.freeArea(geom.Vec3{Y: 1}, kx, ky)
	if a <= 0 {
		return Window{}
	}
	return Window{AreaM2: a, Pass: 1}
}

// centreArea returns where the puck's centre flies through both faces'
// outlines, in square metres, whatever else of the puck touches:
// (W - t |kx|)(H - t |ky|); 0 past the faces' overlap.
func (o Opening) centreArea(f Flight) float64 {
	kx, ky, ok := f.slopes()
	if !ok {
		return 0
	}
	t := o.thick.Metres()
	return max(0, o.size.W.Metres()-t*math.Abs(kx)) * max(0, o.size.H.Metres()-t*math.Abs(ky))
}

// slopes returns ux/uz and uy/uz of the flight; ok is false when it does not
// go through the pane.
func (f Flight) slopes() (kx, ky float64, ok bool) {
	ca, cu := math.Cos(f.Along.Radians()), math.Cos(f.Up.Radians())
	if !(ca > 0) || !(cu > 0) {
		return 0, 0, false
	}
	return math.Tan(f.Along.Radians()), math.Tan(f.Up.Radians()) / ca, true
}

// freeArea returns the free area of a puck with axis n, in square metres; 0
// when it does not pass.
func (o Opening) freeArea(n geom.Vec3, kx, ky float64) float64 {
	w := o.size.W.Metres() - o.thick.Metres()*math.Abs(kx) - shadow(n.X-kx*n.Z, 1+kx*kx)
	if w <= 0 {
		return 0
	}
	h := o.size.H.Metres() - o.thick.Metres()*math.Abs(ky) - shadow(n.Y-ky*n.Z, 1+ky*ky)
	if h <= 0 {
		return 0
	}
	return w * h
}

// shadow is the width of the puck's shadow: nm = n.m, mm = m.m.
func shadow(nm, mm float64) float64 {
	return Thickness.Metres()*math.Abs(nm) + Diameter.Metres()*math.Sqrt(max(0, mm-nm*nm))
}

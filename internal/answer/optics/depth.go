package optics

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Depth is a range of distances from the lens, in metres, that look sharp.
type Depth struct {
	Near, Far  unit.Length // Far is +Inf at or past the hyperfocal distance
	Hyperfocal unit.Length
}

// Infinite reports whether the range has no far end.
func (d Depth) Infinite() bool { return math.IsInf(float64(d.Far), 1) }

// Hyperfocal returns the nearest distance in metres at which a lens of focal
// length f at stop N holds infinity within a circle of confusion c:
//
//	H = f^2/(N c) + f
//
// All arguments must be finite and above 0.
func Hyperfocal(f unit.Length, n unit.Stop, c unit.Length) (unit.Length, error) {
	if err := positive("focal length", f); err != nil {
		return 0, err
	}
	if err := positiveStop(n); err != nil {
		return 0, err
	}
	if err := positive("circle of confusion", c); err != nil {
		return 0, err
	}
	return f*f/(unit.Length(n)*c) + f, nil
}

// DepthOfField returns the sharp range for a subject at distance s from the
// lens:
//
//	near = s(H-f)/(H+s-2f),  far = s(H-f)/(H-s), infinite from s = H on
//
// s must lie beyond the focal length ([ErrTooNear]); the rest as [Hyperfocal].
func DepthOfField(f unit.Length, n unit.Stop, c, s unit.Length) (Depth, error) {
	h, err := Hyperfocal(f, n, c)
	if err != nil {
		return Depth{}, err
	}
	if err := beyondFocal(f, s); err != nil {
		return Depth{}, err
	}
	d := Depth{Near: s * (h - f) / (h + s - 2*f), Far: unit.Length(math.Inf(1)), Hyperfocal: h}
	if s < h*(1-hyperfocalSlack) {
		d.Far = s * (h - f) / (h - s)
	}
	return d, nil
}

// hyperfocalSlack is the share by which a distance may fall short of the
// hyperfocal and still count as at it: what rounding takes, far below what a
// ruler or a focus scale can tell.
const hyperfocalSlack = 1e-12

// The circle of confusion of a 36 x 24 mm frame in the trade's tables, 0.03 mm
// (lens makers' tables print 1/30 to 0.033 mm), and that frame.
var (
	frameCoc  = 0.03 * unit.Millimetre
	FullFrame = unit.Size{W: 36 * unit.Millimetre, H: 24 * unit.Millimetre} // the 36 x 24 mm frame
)

// CircleOfConfusion returns the circle of confusion in metres that suits a
// sensor: 0.03 mm on 36 x 24 mm, in proportion to the diagonal on others.
func CircleOfConfusion(sensor unit.Size) unit.Length {
	return frameCoc * Diagonal(sensor) / Diagonal(FullFrame)
}

// Diagonal returns the diagonal of a size in metres.
func Diagonal(s unit.Size) unit.Length {
	return unit.Length(math.Hypot(float64(s.W), float64(s.H)))
}

package puck

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Opening is a rectangular prism cut square through a pane: width along the
// boards, height, and the pane's thickness. Make one with NewOpening.
type Opening struct {
	size  unit.Size
	thick unit.Length
}

// maxOpening is the largest width, height or thickness taken: larger is a
// typing error, not a photo hole.
const maxOpening = 100 * unit.Metre

// touch is the play below which a puck touches rather than passes: one
// nanometre, so that 76.2 mm written as 3 in or as 0.0762 m says the same.
const touch = 1e-9 * unit.Metre

// NewOpening checks the sizes: width and height above zero, thickness not
// below zero, each at most 100 m.
func NewOpening(size unit.Size, thick unit.Length) (Opening, error) {
	for _, part := range []struct {
		name string
		v    unit.Length
		ok   bool
	}{
		{"width", size.W, size.W > 0},
		{"height", size.H, size.H > 0},
		{"pane thickness", thick, thick >= 0},
	} {
		if !part.ok || !(part.v <= maxOpening) {
			return Opening{}, fmt.Errorf("%s of %g mm: give a length above zero and up to %g m", part.name, part.v.Millimetres(), maxOpening.Metres())
		}
	}
	return Opening{size: size, thick: thick}, nil
}

// Size returns the opening's width and height.
func (o Opening) Size() unit.Size { return o.size }

// Thick returns the pane's thickness.
func (o Opening) Thick() unit.Length { return o.thick }

// Flat returns the window of a flat puck (its axis upright, flying level) at
// angle q from the pane's normal in the horizontal plane: the free travel of
// its centre along the pane and in height,
//
//	W - t tan |q| - D / cos q   by   H - 25.4 mm
//
// It is zero by zero when either is not above zero, and at 90 degrees and
// beyond. Source: own derivation (package doc).
func (o Opening) Flat(q unit.Angle) unit.Size {
	s, c := math.Sincos(math.Abs(q.Radians()))
	if c <= 0 || math.IsNaN(c) {
		return unit.Size{}
	}
	w := o.size.W - o.thick*unit.Length(s/c) - Diameter/unit.Length(c)
	h := o.size.H - Thickness
	if w <= touch || h <= touch {
		return unit.Size{}
	}
	return unit.Size{W: w, H: h}
}

// FlatLimit returns the angle from the pane's normal at which the flat
// window closes; unknown when no flat puck passes at all (W <= 76.2 mm or
// H <= 25.4 mm). From W cos q - t sin q = D:
//
//	q = acos(D / sqrt(W^2 + t^2)) - atan(t / W)
func (o Opening) FlatLimit() unit.Maybe[unit.Angle] {
	if o.size.W <= Diameter+touch || o.size.H <= Thickness+touch {
		return unit.Maybe[unit.Angle]{}
	}
	return unit.Known(o.limit(Diameter))
}

// limit returns the angle at which a body of width d square to its flight
// no longer passes in the horizontal plane, for 0 < d < W.
func (o Opening) limit(d unit.Length) unit.Angle {
	w, t := o.size.W.Metres(), o.thick.Metres()
	return unit.Angle(math.Acos(d.Metres()/math.Hypot(w, t)) - math.Atan2(t, w))
}

// AnyLimit returns the angle from the pane's normal, in the horizontal plane,
// beyond which no puck in level flight passes in whatever orientation;
// unknown when none passes at all. The best orientation either lies flat
// (width D square to the flight) or flies like a wheel, its axis level and
// square to the flight, tilted by b only as far as a low opening asks:
//
//	height  h sin b + D cos b <= H,   width  h cos b + D sin b
//
// Source: own derivation from the support width of a disc (tumbling.go): at a
// given height the width is concave in the axis' share along it, so one of
// the two ends is the least.
func (o Opening) AnyLimit() unit.Maybe[unit.Angle] {
	d, h, high := Diameter.Metres(), Thickness.Metres(), o.size.H.Metres()
	if o.size.H <= Thickness+touch {
		return unit.Maybe[unit.Angle]{}
	}
	tilt := 0.0
	if high < d {
		tilt = math.Atan2(h, d) + math.Acos(high/math.Hypot(d, h))
	}
	width := min(Diameter, unit.Length(h*math.Cos(tilt)+d*math.Sin(tilt)))
	if width >= o.size.W-touch {
		return unit.Maybe[unit.Angle]{}
	}
	return unit.Known(o.limit(width))
}

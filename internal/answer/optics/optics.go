// Package optics answers what a lens, a pane and an exposure do to a picture:
// depth of field, view and magnification, blur of a moving subject, the loss
// and shift of a plane-parallel panel, and how much light asks for what
// shutter, stop and ISO.
//
// The models are the handbooks' first-order ones:
//
//	subject        lens           sensor
//	   |<--- s --->|<- f(1+m) ->|          thin lens, distances from the lens
//	   |           ()           |          m = f/(s-f)
//
//	   i \ |
//	------\|------- n         plane-parallel plate in air: the ray leaves
//	       \ r                parallel to itself, shifted sideways
//	--------\------           d = t sin(i-r)/cos r
//	         \ i
//
//	N^2/t = E S / C           incident light, ISO 2720, C = 250 unless said
//
// Assumptions: a thin lens whose stop is the marked f-number; unpolarised
// light; a plate without absorption or coating; a subject lit like the meter's
// receptor. Limits: near 1:1 the marked f-number no longer holds; a zoom that
// focuses inside is shorter when near.
//
// Quantities are SI with their own types; results are pure functions of the
// arguments. Bad arguments give an error that names the value and its range.
package optics

import (
	"errors"
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// positive checks that every length of a named list is finite and above 0.
func positive(what string, l unit.Length) error {
	if !(l > 0) || math.IsInf(float64(l), 0) {
		return fmt.Errorf("%s %v m: must be above 0", what, float64(l))
	}
	return nil
}

func positiveStop(n unit.Stop) error {
	if !(n > 0) || math.IsInf(float64(n), 0) {
		return fmt.Errorf("stop f/%v: must be above 0", float64(n))
	}
	return nil
}

// ErrTooNear is wrapped when a subject lies at or inside the focal length.
var ErrTooNear = errors.New("the subject must lie beyond the focal length")

func beyondFocal(focal, distance unit.Length) error {
	if !(distance > focal) || math.IsInf(float64(distance), 0) {
		return fmt.Errorf("distance %s with a focal length of %s: %w",
			distance.Format(unit.Metric), focal.Format(unit.Metric), ErrTooNear)
	}
	return nil
}

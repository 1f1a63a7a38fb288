package optics

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// MaxIndex is the highest refractive index that is taken for real.
const MaxIndex = 10

func checkIndex(n float64) error {
	if !(n >= 1 && n <= MaxIndex) {
		return fmt.Errorf("index %v: must lie between 1 and %d, as 1.49 for acrylic", n, MaxIndex)
	}
	return nil
}

func checkIncidence(i unit.Angle) error {
	if !(i >= 0 && float64(i) < math.Pi/2) || i.Degrees() >= 90 {
		return fmt.Errorf("angle %.6g deg: must be at least 0 and below 90 from the normal", i.Degrees())
	}
	return nil
}

// Refract returns the angle inside a medium of index n for a ray from air at
// angle i from the normal, asin(sin i / n). 0 <= i < 90 degrees, n >= 1.
func Refract(i unit.Angle, n float64) (unit.Angle, error) {
	if err := checkIndex(n); err != nil {
		return 0, err
	}
	if err := checkIncidence(i); err != nil {
		return 0, err
	}
	return unit.Angle(math.Asin(math.Sin(float64(i)) / n)), nil
}

// Reflectance is the reflected share of the light at one face, in [0, 1].
type Reflectance struct{ S, P float64 } // polarised across and along the plane of incidence

// Mean returns the share of unpolarised light.
func (r Reflectance) Mean() float64 { return (r.S + r.P) / 2 }

// fresnel takes sound arguments. q = n cos r, written so that n = 1 gives cos i exactly.
func fresnel(i, n float64) Reflectance {
	c := math.Cos(i)
	q := math.Sqrt((n-1)*(n+1) + c*c)
	s := (c - q) / (c + q)
	p := (n*n*c - q) / (n*n*c + q)
	return Reflectance{S: s * s, P: p * p}
}

// Brewster returns the angle in air at which light polarised along the plane
// of incidence is not reflected: atan n.
func Brewster(n float64) (unit.Angle, error) {
	if err := checkIndex(n); err != nil {
		return 0, err
	}
	return unit.Angle(math.Atan(n)), nil
}

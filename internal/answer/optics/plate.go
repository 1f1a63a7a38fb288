package optics

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Plate is a clear plane-parallel panel in air: glass or plastic, uncoated,
// without absorption.
type Plate struct {
	Index     float64     // refractive index, 1 to [MaxIndex]
	Thickness unit.Length // metres, above 0
}

// Passage is what a ray suffers in a plate.
type Passage struct {
	Shift      unit.Length // square to the ray, metres; the ray's direction stays
	Refraction unit.Angle  // inside the plate, from the normal
	// Transmission is the share of unpolarised light that goes straight
	// through both faces: the mean over both polarisations of (1-R)^2.
	Transmission float64
	// WithMultiples is that share with the light reflected to and fro inside
	// added: the mean of (1-R)/(1+R).
	WithMultiples float64
	Reflectance   Reflectance // of one face
}

// Stops returns the loss of the first pass in stops, -log2 of the transmission.
func (p Passage) Stops() float64 { return -math.Log2(p.Transmission) }

// Pass returns what a ray suffers that meets the plate at angle i from its
// normal, 0 <= i < 90 degrees:
//
//	shift = t sin(i-r)/cos r = t sin i (1 - cos i / (n cos r))
//
// Index 1 shifts and reflects nothing, exactly.
func (p Plate) Pass(i unit.Angle) (Passage, error) {
	if err := positive("thickness", p.Thickness); err != nil {
		return Passage{}, err
	}
	r, err := Refract(i, p.Index)
	if err != nil {
		return Passage{}, err
	}
	face := fresnel(float64(i), p.Index)
	sin, cos := math.Sincos(float64(i))
	q := math.Sqrt((p.Index-1)*(p.Index+1) + cos*cos) // n cos r
	return Passage{
		Shift:         p.Thickness * unit.Length(sin*(q-cos)/q),
		Refraction:    r,
		Transmission:  mean(face, func(r float64) float64 { return (1 - r) * (1 - r) }),
		WithMultiples: mean(face, func(r float64) float64 { return (1 - r) / (1 + r) }),
		Reflectance:   face,
	}, nil
}

// mean averages a function of the reflectance over both polarisations.
func mean(r Reflectance, f func(float64) float64) float64 { return (f(r.S) + f(r.P)) / 2 }

// Sideways returns how far the ray leaves the plate from where it would have
// left without it, along the face, in metres: shift / cos i.
func (p Passage) Sideways(i unit.Angle) unit.Length {
	return p.Shift / unit.Length(math.Cos(float64(i)))
}

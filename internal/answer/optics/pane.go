package optics

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Pane is a plate as it stands in a rink: it scatters light that it should
// pass straight, and mirrors what stands behind the camera.
//
//	scene  ----\            ghost: once more to and fro inside
//	            \----\ /--> picture   (direct)
//	   n         /\   X
//	  scattered /  \ / \-- stands behind the camera, mirrored
type Pane struct {
	Plate
	// Haze is the share of the light passed that is scattered by more than 2.5
	// degrees when it falls in square (ASTM D1003), in [0, 1).
	Haze float64
}

// Surround is the light against which a detail must show: luminances over the
// mean luminance of the scene, without unit.
type Surround struct {
	Detail float64 // of the detail, above 0
	Mirror float64 // of what the pane mirrors into the lens, at least 0
}

// Seen is what a picture through a pane has of a scene.
type Seen struct {
	Passage
	Ghost     Ghost
	Scattered float64 // share of the light passed, at this angle: 1 - (1-haze)^(1/cos r)
	// Contrast is what is left of the contrast of a fine detail: over its
	// luminance lie the scattered light of the whole scene and the mirrored
	// stands, and the ghost blurs the finest pattern against itself. In [0, 1].
	Contrast float64
}

// Ghost is the second image that light makes which goes to and fro once more
// between the faces.
type Ghost struct {
	Apart    unit.Length // square to the ray, metres; the direction is the same
	Strength float64     // over the first image's light: mean of (1-R)^2 R^2 over mean of (1-R)^2
}

// Ghost returns the second image at angle i from the normal, 0 <= i < 90
// degrees: apart by 2 t tan r cos i = t sin 2i / sqrt(n^2 - sin^2 i).
// A real pane's faces are not quite parallel, which adds an angle that is not
// counted here.
func (p Plate) Ghost(i unit.Angle) (Ghost, error) {
	pass, err := p.Pass(i)
	if err != nil {
		return Ghost{}, err
	}
	sin := math.Sin(float64(i))
	return Ghost{
		Apart:    p.Thickness * unit.Length(math.Sin(2*float64(i))/math.Sqrt(p.Index*p.Index-sin*sin)),
		Strength: mean(pass.Reflectance, func(r float64) float64 { return (1 - r) * (1 - r) * r * r }) / pass.Transmission,
	}, nil
}

// See returns what a picture has of a detail at angle i from the pane's normal.
// With T the first pass, s the scattered share, R the share mirrored by both
// faces and g the ghost's strength, the contrast left is
//
//	T (1-s) d / (T (1-s) d + T s + R m) * (1-g)/(1+g)
//
// for a detail of luminance d against a scene of mean 1 and stands of m. The
// scatter is taken as a bulk's (Beer and Lambert's law along the refracted
// way); scratches scatter more at a slant, so this is the least.
func (p Pane) See(i unit.Angle, s Surround) (Seen, error) {
	if !(p.Haze >= 0 && p.Haze < 1) {
		return Seen{}, fmt.Errorf("haze %g: write a share from 0 to below 1, as 0.05 for 5 %%", p.Haze)
	}
	if !(s.Detail > 0 && s.Mirror >= 0) || math.IsInf(s.Detail+s.Mirror, 0) {
		return Seen{}, fmt.Errorf("luminances %g and %g: the detail's must be above 0, the mirrored stands' at least 0", s.Detail, s.Mirror)
	}
	pass, err := p.Pass(i)
	if err != nil {
		return Seen{}, err
	}
	ghost, err := p.Ghost(i)
	if err != nil {
		return Seen{}, err
	}
	scattered := 1 - math.Pow(1-p.Haze, 1/math.Cos(float64(pass.Refraction)))
	direct := pass.Transmission * (1 - scattered) * s.Detail
	veil := pass.Transmission*scattered + pass.Mirrored()*s.Mirror
	return Seen{
		Passage: pass, Ghost: ghost, Scattered: scattered,
		Contrast: direct / (direct + veil) * (1 - ghost.Strength) / (1 + ghost.Strength),
	}, nil
}

// Mirrored returns the share of unpolarised light that both faces throw back:
// all that does not pass, for a plate that takes none.
func (p Passage) Mirrored() float64 { return 1 - p.WithMultiples }

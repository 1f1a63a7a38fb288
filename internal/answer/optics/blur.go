package optics

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Motion is a subject that moves across the view while the shutter is open.
type Motion struct {
	Speed         unit.Speed   // of the subject, m/s
	Shutter       unit.Shutter // s
	Magnification float64      // image size over subject size, without unit
	Pitch         unit.Length  // of one pixel, m
	// Across is the angle between the motion and the line of sight; the zero
	// value means straight across (90 degrees).
	Across unit.Maybe[unit.Angle]
	// Follow is the share of the subject's angular speed that the camera
	// pans with: 0 held still, 1 followed exactly.
	Follow float64
}

// Blur returns the smear of the subject in pixels:
//
//	v t m |sin(across)| |1 - follow| / pitch
//
// with the camera held still and motion straight across, v t m / pitch.
func (k Motion) Blur() float64 { return k.smear() * math.Abs(1-k.Follow) }

// Background returns the smear in pixels of a resting background in the image
// plane, which a panning camera drags: v t m |sin(across)| follow / pitch. As the
// camera turns about itself, a background at any distance smears as much.
func (k Motion) Background() float64 { return k.smear() * math.Abs(k.Follow) }

func (k Motion) smear() float64 {
	across := math.Abs(math.Sin(float64(k.Across.Or(90 * unit.Degree))))
	return float64(k.Speed) * float64(k.Shutter) * k.Magnification * across / float64(k.Pitch)
}

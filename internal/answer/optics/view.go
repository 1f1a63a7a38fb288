package optics

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// ViewAngle returns the whole angle of view across a sensor's side, for a lens
// focused far away:
//
//	2 atan(side / 2f)
//
// in (0, pi). Both must be above 0.
func ViewAngle(side, f unit.Length) (unit.Angle, error) {
	if err := positive("sensor side", side); err != nil {
		return 0, err
	}
	if err := positive("focal length", f); err != nil {
		return 0, err
	}
	return unit.Angle(2 * math.Atan(float64(side/(2*f)))), nil
}

// Magnification returns image size over subject size, f/(s-f), without unit,
// for a subject at distance s from the lens, beyond the focal length.
func Magnification(f, s unit.Length) (float64, error) {
	if err := positive("focal length", f); err != nil {
		return 0, err
	}
	if err := beyondFocal(f, s); err != nil {
		return 0, err
	}
	return float64(f / (s - f)), nil
}

// PixelPitch returns the side of one pixel in metres: sensor width over pixels across.
func PixelPitch(sensorWidth unit.Length, pixelsAcross int) (unit.Length, error) {
	if err := positive("sensor width", sensorWidth); err != nil {
		return 0, err
	}
	if pixelsAcross < 1 {
		return 0, fmt.Errorf("pixels across %d: must be 1 or more", pixelsAcross)
	}
	return sensorWidth / unit.Length(pixelsAcross), nil
}

// PixelsOn returns how many pixels a subject of the given size, square to the
// view, covers at magnification m.
func PixelsOn(size unit.Length, m float64, pitch unit.Length) float64 {
	return float64(size) * m / float64(pitch)
}

package frame

import (
	"errors"
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// SubjectPixels returns how many of the body's pixels a standing player (1.876 m
// with skates and helmet, or the moment's subject when the aim is at him) is
// tall at the aim's distance: height x magnification / pixel pitch.
func (s *Shot) SubjectPixels() (float64, error) {
	m, pitch, err := s.scale()
	if err != nil {
		return 0, err
	}
	return optics.PixelsOn(s.subjectHeight(), m, pitch), nil
}

// MotionPixels returns how far a skater who crosses the view at the shot's speed
// smears over the body's pixels: speed x shutter x magnification / pixel pitch.
func (s *Shot) MotionPixels() (float64, error) {
	m, pitch, err := s.scale()
	if err != nil {
		return 0, err
	}
	return optics.Motion{Speed: s.Speed, Shutter: s.Shutter, Magnification: m, Pitch: pitch}.Blur(), nil
}

// scale returns the magnification at the aim's distance, without unit, and the
// pitch of the body's pixels.
func (s *Shot) scale() (float64, unit.Length, error) {
	m, err := optics.Magnification(s.Focal, s.Aim.Distance)
	if err != nil {
		return 0, 0, fmt.Errorf("the target is too near: %w", err)
	}
	if s.Pixels[0] < 1 {
		return 0, 0, errors.New("the body's pixels are not known")
	}
	pitch, err := optics.PixelPitch(s.Sensor, s.Pixels[0])
	return m, pitch, err
}

// subjectNear is how near the aim must be to the moment's subject to mean him,
// in metres seen from above.
const subjectNear = 1.0

// Target is what the camera is aimed at, in metres of the rink frame.
func (s *Shot) Target() geom.Vec3 {
	return s.Mount.Point(s.Aim.Direction().Scale(s.Aim.Distance.Metres()))
}

func (s *Shot) subjectHeight() unit.Length {
	if s.Moment == nil {
		return modelHeight
	}
	target := s.Target()
	p := s.Moment.People[s.Moment.Subject]
	if math.Hypot(p.X-target.X, p.Y-target.Y) > subjectNear {
		return modelHeight
	}
	return unit.Length(p.Height)
}

// Blur returns the diameter of the disc of confusion at a depth along the
// axis (metres), in picture pixels of a picture so many pixels wide:
// f^2 |z-s| / (N (s-f) z), thin lens.
func (s *Shot) Blur(depth float64, across int) float64 {
	if depth <= 0 {
		return 0
	}
	f, focus := s.Focal.Metres(), s.Focus.Metres()
	c := f * f * math.Abs(depth-focus) / (float64(s.Stop) * (focus - f) * depth)
	return c / s.Sensor.Metres() * float64(across)
}

// ThroughPanel reports whether the lens looks through a clear panel.
func (s *Shot) ThroughPanel() bool { return s.panel != nil }

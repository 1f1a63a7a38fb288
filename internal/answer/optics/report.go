package optics

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
)

// Shot is what command optics is asked about: a lens focused on a subject.
type Shot struct {
	Focal    unit.Length
	Stop     unit.Stop
	Distance unit.Length // from the lens
	Coc      unit.Length // circle of confusion
	Sensor   unit.Size
	// Moving is a subject that crosses the view; nil for a resting one.
	Moving *Crossing
	// PixelsAcross is the sensor's width in pixels; 0 when it is not known.
	PixelsAcross int
}

// Crossing is a subject's motion across the view.
type Crossing struct {
	Speed   unit.Speed
	Shutter unit.Shutter
	Follow  float64 // share of its angular speed that the camera pans with, 0 to 1
}

// ShotReport is the answer. What was not asked, or cannot be told, is not known.
type ShotReport struct {
	Depth
	ViewW, ViewH unit.Angle              // across and upright
	Field        unit.Size               // what the frame spans at the subject
	Pitch        unit.Maybe[unit.Length] // from pixel to pixel
	Blur         unit.Maybe[float64]     // pixels, camera held still
	Followed     unit.Maybe[float64]     // pixels, camera panning
	Background   unit.Maybe[float64]     // pixels, camera panning
	// Magnification is image size over subject size, without unit.
	Magnification float64
}

// Report computes a shot.
func (k Shot) Report() (ShotReport, error) {
	d, err := DepthOfField(k.Focal, k.Stop, k.Coc, k.Distance)
	if err != nil {
		return ShotReport{}, err
	}
	m, err := Magnification(k.Focal, k.Distance)
	if err != nil {
		return ShotReport{}, err
	}
	h, err := ViewAngle(k.Sensor.W, k.Focal)
	if err != nil {
		return ShotReport{}, err
	}
	v, err := ViewAngle(k.Sensor.H, k.Focal)
	if err != nil {
		return ShotReport{}, err
	}
	times := unit.Length(m)
	r := ShotReport{Depth: d, ViewW: h, ViewH: v, Magnification: m, Field: unit.Size{W: k.Sensor.W / times, H: k.Sensor.H / times}}
	return r, k.motion(&r)
}

// motion fills in pitch and blur as far as they were asked.
func (k Shot) motion(r *ShotReport) error {
	if k.PixelsAcross == 0 {
		if k.Moving != nil {
			return fmt.Errorf("blur in pixels needs the sensor's pixels across")
		}
		return nil
	}
	pitch, err := PixelPitch(k.Sensor.W, k.PixelsAcross)
	if err != nil {
		return err
	}
	r.Pitch = unit.Known(pitch)
	if k.Moving == nil {
		return nil
	}
	if !(k.Moving.Follow >= 0 && k.Moving.Follow <= 1) {
		return fmt.Errorf("share followed %v: must lie between 0 and 1", k.Moving.Follow)
	}
	move := Motion{Speed: k.Moving.Speed, Shutter: k.Moving.Shutter, Magnification: r.Magnification, Pitch: pitch}
	r.Blur = unit.Known(move.Blur())
	if move.Follow = k.Moving.Follow; move.Follow > 0 {
		r.Followed, r.Background = unit.Known(move.Blur()), unit.Known(move.Background())
	}
	return nil
}

// PanelReport is what a ray suffers in a panel.
type PanelReport struct {
	Passage
	LossStops float64     // of the first pass, in stops
	Sideways  unit.Length // along the face
	Brewster  unit.Angle  // from the normal: no glare through a polariser
}

// Report computes the passage of a ray at angle i from the normal.
func (p Plate) Report(i unit.Angle) (PanelReport, error) {
	pass, err := p.Pass(i)
	if err != nil {
		return PanelReport{}, err
	}
	brewster, err := Brewster(p.Index)
	return PanelReport{pass, pass.Stops(), pass.Sideways(i), brewster}, err
}

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

// ShotReport is the answer; contract field names, null where nothing was asked or there is no end.
type ShotReport struct {
	NearM        float64  `json:"near_m"`
	FarM         *float64 `json:"far_m"` // null at or past the hyperfocal distance
	HyperfocalM  float64  `json:"hyperfocal_m"`
	ViewHDeg     float64  `json:"view_h_deg"`
	ViewVDeg     float64  `json:"view_v_deg"`
	FieldWM      float64  `json:"field_w_m"` // what the frame spans at the subject
	FieldHM      float64  `json:"field_h_m"`
	CocMM        float64  `json:"coc_mm"`
	PixelPitchMM *float64 `json:"pixel_pitch_mm"`
	BlurPx       *float64 `json:"blur_px"`          // camera held still
	FollowedPx   *float64 `json:"blur_followed_px"` // camera panning
	BackgroundPx *float64 `json:"blur_background_px"`
	// Magnification is image size over subject size, without unit.
	Magnification float64 `json:"magnification"`
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
	r := ShotReport{
		NearM: d.Near.Metres(), HyperfocalM: d.Hyperfocal.Metres(),
		ViewHDeg: h.Degrees(), ViewVDeg: v.Degrees(), Magnification: m,
		FieldWM: k.Sensor.W.Metres() / m, FieldHM: k.Sensor.H.Metres() / m,
		CocMM: k.Coc.Millimetres(),
	}
	if !d.Infinite() {
		r.FarM = ptr(d.Far.Metres())
	}
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
	r.PixelPitchMM = ptr(pitch.Millimetres())
	if k.Moving == nil {
		return nil
	}
	if !(k.Moving.Follow >= 0 && k.Moving.Follow <= 1) {
		return fmt.Errorf("share followed %v: must lie between 0 and 1", k.Moving.Follow)
	}
	move := Motion{Speed: k.Moving.Speed, Shutter: k.Moving.Shutter, Magnification: r.Magnification, Pitch: pitch}
	r.BlurPx = ptr(move.Blur())
	if move.Follow = k.Moving.Follow; move.Follow > 0 {
		r.FollowedPx, r.BackgroundPx = ptr(move.Blur()), ptr(move.Background())
	}
	return nil
}

func ptr(v float64) *float64 { return &v }

// PanelReport is what a ray suffers in a panel; the JSON of command panel.
type PanelReport struct {
	ShiftMM       float64 `json:"shift_mm"`     // square to the ray
	Transmission  float64 `json:"transmission"` // share through both faces, unpolarised, first pass
	RefractionDeg float64 `json:"refraction_deg"`
	// WithMultiples is the share with the light thrown to and fro inside added.
	WithMultiples float64 `json:"transmission_with_multiples"`
	LossStops     float64 `json:"loss_stops"` // of the first pass
	SidewaysMM    float64 `json:"sideways_mm"`
	BrewsterDeg   float64 `json:"brewster_deg"`
}

// Report computes the passage of a ray at angle i from the normal.
func (p Plate) Report(i unit.Angle) (PanelReport, error) {
	pass, err := p.Pass(i)
	if err != nil {
		return PanelReport{}, err
	}
	brewster, err := Brewster(p.Index)
	if err != nil {
		return PanelReport{}, err
	}
	return PanelReport{
		ShiftMM: pass.Shift.Millimetres(), Transmission: pass.Transmission, RefractionDeg: pass.Refraction.Degrees(),
		WithMultiples: pass.WithMultiples, LossStops: pass.Stops(), SidewaysMM: pass.Sideways(i).Millimetres(),
		BrewsterDeg: brewster.Degrees(),
	}, nil
}

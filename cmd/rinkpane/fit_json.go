package main

import (
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/wire"
)

// fitReport is everything that fit has to tell.
type fitReport struct {
	title    string // the lens and hole by their names; empty in the bare form
	c        fit.Case
	sys      unit.System
	assumed  []arena.Assumption
	portrait bool
	limits   fit.Limits
	loss     fit.Loss
	view     *fit.View // at the aim asked for
}

// fitJSON is the answer of fit; contract field names.
type fitJSON struct {
	wire.Limits

	NoseMM       float64 `json:"nose_mm"`
	PupilMM      float64 `json:"pupil_mm"`
	PupilDepthMM float64 `json:"pupil_depth_mm"`

	LengthMM *float64    `json:"lens_length_mm"` // from the nose to the body's front, null with an unknown camera
	BodyMM   *[2]float64 `json:"body_mm"`        // of the body's front as held, width and height, null likewise

	*fitViewJSON

	Loss     []fitPanJSON  `json:"loss"`
	TiltLoss []fitTiltJSON `json:"tilt_loss"`

	Assumed []wire.Assumption `json:"assumed"`
}

// fitViewJSON is the light at the aim asked for.
type fitViewJSON struct {
	Centre  float64     `json:"transmission_centre"`
	Corners [4]float64  `json:"transmission_corners"`
	Pose    fitPoseJSON `json:"pose"`
}

// fitPoseJSON is where the lens stands: the nose's centre in the hole frame,
// how far it is beside the hole's centre, and how far the foremost point is
// behind the rink face.
type fitPoseJSON struct {
	CentreMM [3]float64 `json:"nose_centre_mm"`
	ShiftMM  float64    `json:"shift_mm"`
	BehindMM float64    `json:"behind_face_mm"`
}

type fitPanJSON struct {
	PanDeg float64 `json:"pan_deg"`
	fitLossJSON
}

type fitTiltJSON struct {
	TiltDeg float64 `json:"tilt_deg"`
	fitLossJSON
}

type fitLossJSON struct {
	Centre *float64    `json:"stops_centre"`
	Corner *float64    `json:"stops_corner"`
	Pose   fitPoseJSON `json:"pose"`
}

func (r fitReport) json() fitJSON {
	out := fitJSON{
		Limits: wire.LimitsOf(r.limits), Assumed: wire.Assumed(r.assumed, r.sys),
		NoseMM: r.c.Nose * 1e3, PupilMM: r.c.Pupil * 1e3, PupilDepthMM: r.c.PupilDepth * 1e3,
		Loss: make([]fitPanJSON, len(r.loss.Pan)), TiltLoss: make([]fitTiltJSON, len(r.loss.Tilt)),
	}
	if k, known := r.c.Camera.Get(); known {
		long := k.Length * 1e3
		out.LengthMM, out.BodyMM = &long, &[2]float64{k.Width * 1e3, k.Height * 1e3}
	}
	for i, row := range r.loss.Pan {
		out.Loss[i] = fitPanJSON{tableDegrees(row.Angle), r.row(row)}
	}
	for i, row := range r.loss.Tilt {
		out.TiltLoss[i] = fitTiltJSON{tableDegrees(row.Angle), r.row(row)}
	}
	if r.view != nil {
		out.fitViewJSON = &fitViewJSON{r.view.Centre, r.view.Corners, r.pose(r.view.Pose)}
	}
	return out
}

func (r fitReport) row(row fit.LossRow) fitLossJSON {
	return fitLossJSON{wire.Stops(row.Centre), wire.Stops(row.Corner), r.pose(row.Pose)}
}

func (r fitReport) pose(p fit.Pose) fitPoseJSON {
	return fitPoseJSON{
		CentreMM: [3]float64{p.Nose.X * 1e3, p.Nose.Y * 1e3, p.Nose.Z * 1e3},
		ShiftMM:  p.Shift() * 1e3,
		BehindMM: max(0, -p.Foremost(r.c.Nose).Z) * 1e3,
	}
}

// tableDegrees is a row's angle in degrees, a whole billionth where only the way
// through radians keeps it from one: 15, not 14.999999999999998.
func tableDegrees(a unit.Angle) float64 {
	d := a.Degrees()
	if whole := math.Round(d*1e9) / 1e9; math.Abs(whole-d) < 1e-12 {
		return whole
	}
	return d
}

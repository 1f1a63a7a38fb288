package wire

import (
	"example.org/rinkpane/internal/answer/gain"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
)

// Gain is what a hole brings over shooting through its pane.
type Gain struct {
	Hole      string       `json:"hole"`
	Pane      string       `json:"pane"`
	Lens      string       `json:"lens"`
	FocalMM   float64      `json:"focal_mm"`
	Stop      unit.Stop    `json:"stop"`
	HazeNew   float64      `json:"haze_new"`  // share, ASTM D1003
	HazeWorn  float64      `json:"haze_worn"` // share, likewise
	Stands    float64      `json:"stands"`    // luminance behind the camera over the scene's, a ratio
	DistanceM float64      `json:"distance_m"`
	Reached   float64      `json:"reached_share"` // share of the moments toward which the hole passes half of its light
	Within    GainMeans    `json:"within_reach"`
	All       GainMeans    `json:"all_moments"`
	OverM     float64      `json:"over_glass_m"` // an eye must be higher to look over the pane
	Angles    []GainAngle  `json:"angles"`
	Assumed   []Assumption `json:"assumed"`
}

// GainMeans are means over moments, by weight.
type GainMeans struct {
	HolePass     float64 `json:"hole_transmission"` // share
	PanePass     float64 `json:"pane_transmission"` // share
	NewContrast  float64 `json:"contrast_new"`      // share
	WornContrast float64 `json:"contrast_worn"`     // share
}

// GainAngle is one angle from straight through the pane; plain numbers are shares, 0 to 1.
type GainAngle struct {
	AngleDeg     float64 `json:"angle_deg"`
	Share        float64 `json:"moments_share"`            // share
	HoleCentre   float64 `json:"hole_transmission"`        // share
	HoleCorner   float64 `json:"hole_transmission_corner"` // share
	Pane         float64 `json:"pane_transmission"`        // share
	Mirrored     float64 `json:"mirrored_share"`           // share
	ShiftMM      float64 `json:"shift_mm"`
	GhostMM      float64 `json:"ghost_mm"`
	GhostPx      float64 `json:"ghost_px"`
	GhostShare   float64 `json:"ghost_share"`   // share
	ContrastNew  float64 `json:"contrast_new"`  // share
	ContrastWorn float64 `json:"contrast_worn"` // share
}

// GainOf encodes what a hole gains.
func GainOf(g gain.Answer, sys unit.System) Gain {
	out := Gain{
		Hole: g.Hole, Pane: g.Pane, Lens: g.Lens, FocalMM: g.Focal.Millimetres(), Stop: g.Stop,
		HazeNew: g.New.Haze, HazeWorn: g.Worn.Haze, Stands: g.Mirror, DistanceM: g.Distance.Metres(),
		Reached: g.Reached, Within: GainMeans(g.Within), All: GainMeans(g.All), OverM: g.Top.Metres(),
		Assumed: Assumed(g.Assumed, sys),
	}
	for _, r := range g.Rows {
		out.Angles = append(out.Angles, GainAngle{
			AngleDeg: r.Angle.Degrees(), Share: r.Share, HoleCentre: r.Hole.Centre, HoleCorner: r.Hole.Corner,
			Pane: r.New.Transmission, Mirrored: r.New.Mirrored(), ShiftMM: r.New.Shift.Millimetres(),
			GhostMM: r.New.Ghost.Apart.Millimetres(), GhostPx: r.GhostPx, GhostShare: r.New.Ghost.Strength,
			ContrastNew: r.New.Contrast, ContrastWorn: r.Worn.Contrast,
		})
	}
	return out
}

// PaneSeen is what a pane does to the middle of a picture taken through it.
type PaneSeen struct {
	Contrast float64 `json:"contrast"` // share left of a dark jersey's fine detail
	GhostPx  float64 `json:"ghost_px"`
	ShiftMM  float64 `json:"shift_mm"`
	Haze     float64 `json:"haze"` // scattered share at this angle
}

// PaneSeenOf encodes it.
func PaneSeenOf(s optics.Seen, ghostPx float64) *PaneSeen {
	return &PaneSeen{s.Contrast, ghostPx, s.Shift.Millimetres(), s.Scattered}
}

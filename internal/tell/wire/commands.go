package wire

import (
	"math"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/gain"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/survey/starter"
)

// Answers that commands alone give. Names are the contract's.

// Rink encodes a rink's measures and landmarks.
func Rink(r rink.Rink) Object {
	d := r.Dimensions()
	return Object{
		"length_m", d.Length, "width_m", d.Width, "corner_radius_m", d.CornerRadius, "perimeter_m", r.Perimeter(), "ice_area_m2", r.Area(),
		"landmarks", Each(r.LandmarkPlaces(), func(l rink.LandmarkPlace) Object {
			return Object{"corner", l.Corner.String(), "landmark", l.Landmark, "station_m", l.Station, "x_m", l.At.X, "y_m", l.At.Y}
		}),
	}
}

// Missing encodes what an arena's survey holds and lacks.
func Missing(a arena.Arena, r starter.Report) Object {
	return Object{
		"name", a.Name, "complete", r.Complete(), "perimeter_m", r.Perimeter, "glazed_m", r.Glazed, "open_m", r.Open,
		"panes", r.Panes, "holes", len(a.Holes), "readings", len(a.Light.Readings),
		"unsurveyed", Each(r.Unsurveyed, func(s starter.Stretch) Object {
			return Object{"from_m", a.Rink.Wrap(s.From), "to_m", a.Rink.Wrap(s.To), "length_m", s.Length()}
		}),
		"gaps", Each(r.Gaps, gap),
		"origins", Each(r.Origins, func(o starter.Origin) Object {
			return Object{"part", o.Part, "measured", o.Measured, "drawing", o.Drawing, "frames", o.Frames, "guess", o.Guess, "unsaid", o.Unsaid}
		}),
		"guesses", Each(r.Guesses, gap),
		"doubts", Each(r.Doubts, func(d starter.Doubt) Object {
			return Object{"part", d.Part, "of", d.Of, "says", d.Says.In(a.Units), "cure", d.Cure.In(a.Units)}
		}),
	}
}

func gap(g starter.Gap) Object {
	return Object{"part", g.Part, "field", g.Field, "of", g.Of, "holes", g.Holes, "costs", g.Costs, "cure", g.Cure}
}

// Shot encodes what a lens gives that is focused on a subject.
func Shot(k optics.Shot, r optics.ShotReport) Object {
	return Object{
		"near_m", r.Near, "far_m", finite(r.Far), "hyperfocal_m", r.Hyperfocal, "view_h_deg", r.ViewW, "view_v_deg", r.ViewH,
		"field_w_m", r.Field.W, "field_h_m", r.Field.H, "coc_mm", k.Coc, "pixel_pitch_mm", r.Pitch,
		"blur_px", r.Blur, "blur_followed_px", r.Followed, "blur_background_px", r.Background, "magnification", r.Magnification,
	}
}

// finite is not known where a length has no end.
func finite(l unit.Length) unit.Maybe[unit.Length] {
	if math.IsInf(l.Metres(), 0) {
		return unit.Maybe[unit.Length]{}
	}
	return unit.Known(l)
}

// Panel encodes what a ray suffers in a panel.
func Panel(r optics.PanelReport) Object {
	return Object{
		"shift_mm", r.Shift, "transmission", r.Transmission, "refraction_deg", r.Refraction,
		"transmission_with_multiples", r.WithMultiples, "loss_stops", r.LossStops, "sideways_mm", r.Sideways, "brewster_deg", r.Brewster,
	}
}

// Window encodes what one hole lets through at an angle from the pane's normal.
func Window(o puck.Opening, at unit.Angle, tumbling puck.Window) Object {
	return Object{
		"flat_window_mm", o.Flat(at), "flat_limit_deg", o.FlatLimit(), "any_limit_deg", o.AnyLimit(),
		"tumbling_area_mm2", tumbling.AreaM2 * 1e6, "tumbling_pass_share", tumbling.Pass,
	}
}

// Frame encodes a picture in numbers, and the file that it was drawn to.
func Frame(s frame.Answer, file string, sys unit.System) Object {
	out := Object{
		"hole", s.Hole, "lens", s.Lens.ID, "pan_deg", s.Aim.Pan, "tilt_deg", s.Aim.Tilt, "distance_m", s.Aim.Distance, "subject_px", s.Subject,
		"transmission", s.View.Centre, "transmission_corners", s.View.Corners, "focal_mm", s.Shot.Focal, "stop", s.Shot.Stop,
		"served", s.Served, // share of the frame about its centre that the pose is for, 1: all of it
		"blur_px", s.Blur,
		"eye_m", [3]float64{s.Camera.Eye.X, s.Camera.Eye.Y, s.Camera.Eye.Z}, // the entrance pupil, rink frame
		"roll_deg", 0.0, "shutter_s", s.Shot.Shutter, "focus_m", s.Shot.Focus, "iso", s.Lighting.ISO,
		"iso_used", s.Lighting.Used, "under_stops", s.Lighting.Short, "light_surveyed", s.Lighting.Surveyed,
		"colour_k", s.Lighting.Colour.At(s.Shot.Target().XY()), "colour_assumed", s.Lighting.Colour.Assumed,
	}
	if s.Points != nil {
		out = append(out, "check_points", Each(s.Points, func(c frame.CheckPoint) Object {
			return Object{"number", c.Number, "landmark", c.Name, "x_px", c.Px.X, "y_px", c.Px.Y}
		}))
	}
	if file != "" {
		out = append(out, "file", file)
	}
	if p := s.Pane; p != nil {
		out = append(out, "pane", Object{"contrast", p.Contrast, "ghost_px", p.GhostPx, "shift_mm", p.Shift, "haze", p.Scattered})
	}
	return append(out, "assumed", Assumed(s.Assumed, sys))
}

// Gain encodes what a hole brings over shooting through its pane; shares are of 1.
func Gain(g gain.Answer, sys unit.System) Object {
	means := func(m gain.Means) Object {
		return Object{"hole_transmission", m.HolePass, "pane_transmission", m.PanePass, "contrast_new", m.NewContrast, "contrast_worn", m.WornContrast}
	}
	return Object{
		"hole", g.Hole, "pane", g.Pane, "lens", g.Lens, "focal_mm", g.Focal, "stop", g.Stop, "haze_new", g.New.Haze, "haze_worn", g.Worn.Haze,
		"stands", g.Mirror, "distance_m", g.Distance, "reached_share", g.Reached, "within_reach", means(g.Within), "all_moments", means(g.All),
		"over_glass_m", g.Top, "angles", Each(g.Rows, func(r gain.Row) Object {
			return Object{
				"angle_deg", r.Angle, "moments_share", r.Share, "hole_transmission", r.Hole.Centre, "hole_transmission_corner", r.Hole.Corner,
				"pane_transmission", r.New.Transmission, "mirrored_share", r.New.Mirrored(), "shift_mm", r.New.Shift,
				"ghost_mm", r.New.Ghost.Apart, "ghost_px", r.GhostPx, "ghost_share", r.New.Ghost.Strength,
				"contrast_new", r.New.Contrast, "contrast_worn", r.Worn.Contrast,
			}
		}),
		"assumed", Assumed(g.Assumed, sys),
	}
}

// Sight encodes what holes see. Scores are by hole, nil on a rink too small for a
// game; asked: a height beside the puck's and the face's was asked for.
func Sight(reaches []sight.Reach, scores []float64, asked bool, sys unit.System) Object {
	step := 0.0
	holes := make([]Object, len(reaches))
	for i, r := range reaches {
		step = r.Grid.Step
		var score unit.Maybe[float64]
		if scores != nil {
			score = unit.Known(scores[i])
		}
		h := Object{"hole", r.Hole, "reach_share", r.Layers[0].Share, "reach_face_share", r.Layers[1].Share,
			"reach_whole_share", r.Layers[0].Whole, "reach_whole_face_share", r.Layers[1].Whole, "score", score}
		if asked {
			h = append(h, "height_m", r.Layers[2].Height, "reach_height_share", r.Layers[2].Share)
		}
		h = append(h, "blind_strip_m", r.Blind.Ahead, "blind_strip_mean_m", r.Blind.Mean, "ledge_strip_m", finite(unit.Length(r.Blind.Ledge)))
		holes[i] = append(h, "lenses", Each(r.Lenses, func(l sight.LensReach) Object {
			return Object{
				"lens", l.ID, "focal_mm", l.Focal, "stop", l.Stop, "fits", l.Fits, "reach_share", l.Share[0], "reach_face_share", l.Share[1],
				"reach_whole_share", l.WholeAt(0), "reach_whole_face_share", l.WholeAt(1),
				"blind_strip_m", l.Blind.Ahead, "blind_strip_mean_m", l.Blind.Mean,
			}
		}), "assumed", Assumed(r.Assumed, sys))
	}
	return Object{"grid_m", step, "holes", holes}
}

// Fit encodes a lens in a hole.
func Fit(a fit.Answer, sys unit.System) Object {
	c, l := a.Case, a.Limits
	out := Object{
		"fits", l.Fits, "pan_body_deg", l.Pan.Body, "pan_camera_deg", l.Pan.Camera, "pan_clear_deg", l.Pan.Clear, "pan_usable_deg", l.Pan.Usable,
		"tilt_body_deg", l.Tilt.Body, "tilt_camera_deg", l.Tilt.Camera, "tilt_clear_deg", l.Tilt.Clear, "tilt_usable_deg", l.Tilt.Usable,
		"nose_mm", c.Nose * 1e3, "pupil_mm", c.Pupil * 1e3, "pupil_depth_mm", c.PupilDepth * 1e3,
	}
	if k, known := c.Camera.Get(); known { // lens from the nose to the body's front, and that front as held
		out = append(out, "lens_length_mm", k.Length*1e3, "body_mm", []float64{k.Width * 1e3, k.Height * 1e3})
	} else {
		out = append(out, "lens_length_mm", nil, "body_mm", nil)
	}
	// Where the lens stands: the nose's centre in the hole frame, how far it is
	// beside the hole's centre, and how far the foremost point is behind the rink face.
	pose := func(p fit.Pose) Object {
		n := p.Nose.Scale(1e3)
		return Object{"nose_centre_mm", []float64{n.X, n.Y, n.Z}, "shift_mm", p.Shift() * 1e3, "behind_face_mm", p.Behind(c.Nose) * 1e3}
	}
	if v := a.View; v != nil {
		out = append(out, "transmission_centre", v.Centre, "transmission_corners", v.Corners, "pose", pose(v.Pose))
	}
	rows := func(axis string, list []fit.LossRow) []Object {
		return Each(list, func(r fit.LossRow) Object {
			return Object{axis + "_deg", rowDegrees(r.Angle), "stops_centre", Stops(r.Centre), "stops_corner", Stops(r.Corner), "pose", pose(r.Pose)}
		})
	}
	return append(out, "loss", rows("pan", a.Loss.Pan), "tilt_loss", rows("tilt", a.Loss.Tilt), "assumed", Assumed(a.Assumed, sys))
}

// rowDegrees is a row's angle in degrees, a whole billionth where only the way
// through radians keeps it from one: 15, not 14.999999999999998.
func rowDegrees(a unit.Angle) float64 {
	d := a.Degrees()
	if whole := math.Round(d*1e9) / 1e9; math.Abs(whole-d) < 1e-12 {
		return whole
	}
	return d
}

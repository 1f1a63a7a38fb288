package wire

import (
	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/measure/unit"
)

// Resect encodes where a hole stands by the frames that were taken through it. Names are
// the contract's; the camera that stands beside the place is the first frame's.
func Resect(a resect.Answer, sys unit.System) Object {
	first := a.Frames[0]
	out := Object{"hole", nil, "station_m", a.Station, "height_m", a.Height, "focal_mm", first.Focal,
		"pan_deg", first.Pan, "tilt_deg", first.Tilt, "roll_deg", first.Roll,
		"ellipse", Object{"major_m", a.Ellipse.Major, "minor_m", a.Ellipse.Minor, "angle_deg", a.Ellipse.Angle}}
	if h, ok := a.Near.Get(); ok {
		out[1] = h.ID
	}
	var marks []Object
	for _, f := range a.Frames {
		for _, m := range f.Marks {
			marks = append(marks, Object{"landmark", m.Landmark, "residual_px", m.Px, "used", m.Used, "like", m.Like, "frame", f.Frame})
		}
	}
	return append(out, "marks", marks, "off_along_m", offHole(a, a.Off.Station), "off_up_m", offHole(a, a.Off.Height),
		"noise_px", a.Noise, "degrees_of_freedom", a.FreedomDegrees,
		"frames", Each(a.Frames, func(v resect.View) Object {
			return Object{"frame", v.Frame, "focal_mm", v.Focal, "focal_spread_mm", v.FocalSpread, "pan_deg", v.Pan, "tilt_deg", v.Tilt, "roll_deg", v.Roll,
				"camera_station_m", v.Camera.Station, "camera_height_m", v.Camera.Height, "camera_behind_m", v.Behind}
		}),
		"rivals", Each(a.Rivals, func(s resect.Site) Object { return Object{"station_m", s.Station, "height_m", s.Height} }),
		"help", helpOf(a.Help), "assumed", Assumed(a.Assumed, sys))
}

// offHole is null when no hole is near.
func offHole(a resect.Answer, l unit.Length) unit.Maybe[unit.Length] {
	if a.Near.IsZero() {
		return unit.Maybe[unit.Length]{}
	}
	return unit.Known(l)
}

func helpOf(h *resect.Help) any {
	if h == nil {
		return nil
	}
	return Object{"frame", h.Frame, "landmark", h.Landmark, "major_m", h.Major}
}

// Landmarks encodes the places of an arena that can be marked in a frame.
func Landmarks(list []resect.Landmark) Object {
	return Object{"landmarks", Each(list, func(l resect.Landmark) Object {
		return Object{"landmark", l.Name, "x_m", l.At.X, "y_m", l.At.Y, "z_m", l.At.Z}
	})}
}

package words

import (
	"fmt"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/table"
)

// ResectText tells where a hole stands by the frames that were taken through it.
func ResectText(a arena.Arena, r resect.Answer, sys unit.System) string {
	p := page{sys: sys}
	p.say("the hole    %s, %s above the ice\n", NearPlace(a.PlaceOf(r.Station), sys), Near(r.Height, sys))
	p.say("sure to     %s and %s (95 %%, half axes; the longer %.0f deg from along the boards)\n", r.Ellipse.Major, r.Ellipse.Minor, r.Ellipse.Angle.Degrees())
	p.say("in the plan %s\n\n", ResectHole(r, sys))
	for _, v := range r.Frames {
		if v.Frame != "" {
			p.say("%s\n", v.Frame)
		}
		p.say("camera      %.0f mm, pan %.1f deg, tilt %.1f deg, roll %.1f deg; eye %s behind the boards' face\n\n",
			v.Focal.Millimetres(), v.Pan.Degrees(), v.Tilt.Degrees(), v.Roll.Degrees(), Near(v.Behind, sys))
		p.say("%s\n", ResectMarks().Of("", v.Marks, sys).Shown().Text())
	}
	p.lines(ResectNotes(r, sys)...)
	p.assumed(r.Assumed)
	return p.String()
}

// ResectHole says which hole of the plan is meant, and how far off it is.
func ResectHole(r resect.Answer, sys unit.System) string {
	h, ok := r.Near.Get()
	if !ok {
		return "no hole is near"
	}
	side, up := "toward rising station", "higher"
	if r.Off.Station < 0 {
		side = "toward falling station"
	}
	if r.Off.Height < 0 {
		up = "lower"
	}
	return fmt.Sprintf("hole %s; the frame says %s %s, %s %s", h.ID,
		max(r.Off.Station, -r.Off.Station).Format(sys), side, max(r.Off.Height, -r.Off.Height).Format(sys), up)
}

// ResectNotes says what the marks leave open, and what would help.
func ResectNotes(r resect.Answer, sys unit.System) []string {
	out := []string{fmt.Sprintf("The marks agree to %.1f px, as far as %.0f degrees of freedom tell; the ellipse knows of no error in the rink's own markings.", r.Noise, r.FreedomDegrees)}
	for _, o := range r.Rivals {
		out = append(out, fmt.Sprintf("They fit a place at station %s, %s above the ice, as well: mark something more.", o.Station.Format(sys), Near(o.Height, sys)))
	}
	if h := r.Help; h != nil {
		in := ""
		if h.Frame != "" {
			in = " in " + h.Frame
		}
		out = append(out, fmt.Sprintf("%s%s would help most, if it can be seen: sure to %s then.", h.Landmark, in, h.Major.Format(sys)))
	}
	return out
}

// ResectMarks are the columns of a frame's marks.
func ResectMarks() table.Fields[resect.Residual] {
	return table.Fields[resect.Residual]{
		left("landmark", "landmark", func(m resect.Residual) string { return m.Landmark }),
		numbered("off by", "residual_px", func(m resect.Residual) string { return fmt.Sprintf("%.1f px", m.Px) }),
		left("", "used", func(m resect.Residual) string { return fmt.Sprint(m.Used) }),
		left("says", "", func(m resect.Residual) string {
			switch {
			case m.Used:
				return ""
			case m.Like != "":
				return "does not fit: left out; " + m.Like + " lies there"
			}
			return "does not fit: left out"
		}),
	}
}

// Landmarks tells the places of an arena that can be marked in a frame, from centre ice.
func Landmarks(list []resect.Landmark, sys unit.System) string {
	at := func(head, name string, of func(resect.Landmark) float64) table.Field[resect.Landmark] {
		return length(head, name, func(l resect.Landmark) unit.Length { return unit.Length(of(l)) })
	}
	return table.Fields[resect.Landmark]{
		left("landmark", "landmark", func(l resect.Landmark) string { return l.Name }),
		at("toward B", "x_m", func(l resect.Landmark) float64 { return l.At.X }),
		at("toward boxes", "y_m", func(l resect.Landmark) float64 { return l.At.Y }),
		at("above ice", "z_m", func(l resect.Landmark) float64 { return l.At.Z }),
	}.Of("", list, sys).Text()
}

package words

import (
	"fmt"

	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
)

// Shot tells what a lens focused on a subject gives.
func Shot(k optics.Shot, r optics.ShotReport, sys unit.System) string {
	p := page{sys: sys}
	p.say("lens %s at %s, subject at %s, circle of confusion %.3g mm\n\n", k.Focal.Format(unit.Metric), k.Stop.Format(), k.Distance, k.Coc.Millimetres())
	if r.Infinite() {
		p.say("sharp          from %s to infinity\n", r.Near)
	} else {
		p.say("sharp          from %s to %s, %s in all\n", r.Near, r.Far, r.Far-r.Near)
	}
	p.say("hyperfocal     %s\nview           %.1f x %.1f deg, %s at the subject\n", r.Hyperfocal, r.ViewW.Degrees(), r.ViewH.Degrees(), r.Field)
	p.say("magnification  %.4g (1 to %.3g)\n", r.Magnification, 1/r.Magnification)
	if px, ok := r.Blur.Get(); ok {
		p.say("blur           %.1f px at %s across the view and %s, camera held still\n", px, k.Moving.Speed.Format(sys), k.Moving.Shutter.Format())
	}
	if px, ok := r.Followed.Get(); ok {
		p.say("  panning      %.1f px, background %.1f px, with %.0f %% of the motion followed\n", px, r.Background.Or(0), 100*k.Moving.Follow)
	}
	return p.String()
}

// Panel tells what a ray at an angle from the normal suffers in a panel.
func Panel(of optics.Plate, at unit.Angle, r optics.PanelReport, sys unit.System) string {
	p := page{sys: sys}
	p.say("panel %s thick, index %v, ray at %s from the normal\n\n", of.Thickness, of.Index, at.Format())
	p.say("inside        %.2f deg from the normal\n", r.Refraction.Degrees())
	p.say("shift         %s square to the ray, %s along the face\n", r.Shift, r.Sideways)
	p.say("transmission  %.1f %% straight through both faces, a loss of %.2f stops\n", 100*r.Transmission, r.LossStops)
	p.say("              %.1f %% with the light thrown to and fro inside\n", 100*r.WithMultiples)
	p.say("no glare      at %.1f deg through a polariser (Brewster's angle)\n", r.Brewster.Degrees())
	return p.String()
}

// Exposure tells a setting for one light, each value with its nearest mark; with
// mains in Hz also its flicker-safe times.
func Exposure(lux unit.Illuminance, x optics.Exposure, mains unit.Maybe[float64], safe []unit.Shutter, sys unit.System) string {
	p := page{sys: sys}
	p.say("light    %s, EV %.2f at ISO 100\n\n", lux.Format(sys), x.EV100)
	shutter, stop, iso := x.Marks()
	for _, row := range []struct{ name, id, exact, mark string }{
		{"shutter", "shutter", x.Shutter.Format(), shutter.Text}, {"stop", "stop", x.Stop.Format(), stop.Text},
		{"ISO", "iso", fmt.Sprintf("%.4g", float64(x.ISO)), fmt.Sprint(iso.Nominal)},
	} {
		solved := ""
		if row.id == x.Solved {
			solved = "  <- solved"
		}
		p.say("%-8s %-12s mark %-8s%s\n", row.name, row.exact, row.mark, solved)
	}
	hz, ok := mains.Get()
	if !ok {
		return p.String()
	}
	p.say("\nflicker  %s\n", FlickerSafe(hz, safe))
	for _, s := range safe {
		if s == x.Shutter {
			return p.String()
		}
	}
	p.say("         at other times lamps that flicker light each frame differently: use the\n" +
		"         camera's flicker timing, or ask whether the lamps are flicker-free\n")
	return p.String()
}

// Frame tells a picture in numbers, and the file that it was drawn to.
func Frame(s frame.Answer, file string, sys unit.System) string {
	p, way := page{sys: sys}, "through hole "
	if s.Pane != nil {
		way = "through the pane at "
	}
	p.say("%s %s of %s\n\n", s.Lens.Name, way+s.Hole, s.Arena.Name)
	p.say("setting    %s, f/%.3g, %s\n", s.Shot.Focal.Format(unit.Metric), float64(s.Shot.Stop), s.Shot.Shutter.Format())
	p.say("aim        pan %.1f deg, tilt %.1f deg, %s away\n", s.Aim.Pan.Degrees(), s.Aim.Tilt.Degrees(), s.Aim.Distance)
	p.say("camera     entrance pupil at x %s, y %s, %s above the ice, from centre ice; roll 0 deg\n", unit.Length(s.Camera.Eye.X), unit.Length(s.Camera.Eye.Y), unit.Length(s.Camera.Eye.Z))
	p.exposed(s.Shot)
	p.say("subject    %.0f px tall\nblur       %.1f px of a skater who crosses the view at %s\n", s.Subject, s.Blur, s.Shot.Speed.Format(sys))
	c := s.View.Corners
	p.say("light      %.0f %% passes to the centre, %.0f %% to the worst corner\n", 100*s.View.Centre, 100*min(c[0], c[1], c[2], c[3]))
	if s.Served < 1 {
		p.say("pose       for the middle %.0f %% of the frame: no pose lights every corner of it\n", 100*s.Served)
	}
	if g := s.Pane; g != nil {
		p.say("pane       leaves %.0f %% of a dark jersey's contrast; scatters %.1f %%, second image %.0f px off\n", 100*g.Contrast, 100*g.Scattered, g.GhostPx)
	}
	if file != "" {
		p.say("picture    %s\n", file)
	}
	if len(s.Points) > 0 {
		p.say("\ncheck points in the picture, pixels from its upper left corner\n")
	}
	for _, c := range s.Points {
		p.say("%4d  %7.1f %7.1f  %s\n", c.Number, c.Px.X, c.Px.Y, c.Name)
	}
	if len(s.Assumed) > 0 {
		p.say("\n")
		p.assumed(s.Assumed)
	}
	return p.String()
}

// underTold is by how many stops a picture is off before words are made of it.
const underTold = 0.1

// exposed tells a picture's exposure and the light that it is taken in.
func (p *page) exposed(s *frame.Shot) {
	l := s.Lighting
	p.say("exposure   f/%.3g, %s, ISO %s", float64(s.Stop), s.Shutter.Format(), optics.NearestISO(l.Used).Text)
	iso, known := l.ISO.Get()
	switch {
	case known && l.Short > underTold:
		p.say("; faces there ask for ISO %s: they are %.1f stops under", optics.NearestISO(iso).Text, l.Short)
	case known && l.Short < -underTold:
		p.say("; faces there ask for ISO %s: they are %.1f stops over", optics.NearestISO(iso).Text, -l.Short)
	case known:
		p.say(" for faces there")
	}
	p.say("\n")
	if !l.Surveyed {
		p.say("lamps      no light was surveyed: taken to be even, %s on faces\n", l.Faces.Format(p.sys))
	}
	assumed := ""
	if l.Colour.Assumed {
		assumed = " (assumed; light.colour of the arena file sets it)"
	}
	p.say("colour     %.0f K%s\n", l.Colour.At(s.Target().XY()), assumed)
}

package words

import (
	"fmt"
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// Fit tells how a lens stands in a hole: whether it enters, how far it turns and
// what light it loses on the way. The title names lens and hole, "" for none.
func Fit(title string, a fit.Answer, portrait bool, sys unit.System) string {
	p := page{sys: sys}
	fitHead(&p, title, a.Case, portrait)
	nose, least := unit.Length(a.Case.Nose), unit.Length(min(a.Case.Width, a.Case.Height))
	if a.Limits.Fits {
		p.say("The nose enters the hole with %s to spare.\n\n", least-nose)
	} else {
		p.say("The nose does not enter: it is %s wider than the hole's %s. The lens can only stand\n"+
			"behind the pane; take the hood off, or take a slimmer lens.\n\n", nose-least, least)
	}
	limits := table.New("up to", "pan deg", "tilt deg", "").Numbers(1, 3)
	pan, tilt := a.Limits.Pan, a.Limits.Tilt
	limits.Add("touch", limit(pan.Body), limit(tilt.Body), "the foremost point at the rink face, nothing cut")
	limits.Add("camera", limit(pan.Camera), limit(tilt.Camera), "the foremost point at the rink face, the body clear of the glass")
	limits.Add("clean", limit(pan.Clear), limit(tilt.Clear), "every frame corner keeps 95 % of its light")
	limits.Add("half", limit(pan.Usable), limit(tilt.Usable), "the frame's centre keeps half")
	p.WriteString(limits.Text())
	if a.View != nil {
		aimed(&p, *a.View, a.Case)
	}
	p.say("\nstops lost by pan, right or left\n%s", lossFields("pan", a.Case).Of("", a.Loss.Pan, sys).Text())
	p.say("\nstops lost by tilt, up or down\n%s\n", lossFields("tilt", a.Case).Of("", a.Loss.Tilt, sys).Text())
	fitNotes(&p, a, title == "")
	p.assumed(a.Assumed)
	return p.String()
}

func fitHead(p *page, title string, c fit.Case, portrait bool) {
	if title != "" {
		p.say("%s\n\n", title)
	}
	corner := "square corners"
	if c.Corner > 0 {
		corner = unit.Length(c.Corner).Format(p.sys) + " corners"
	}
	p.say("hole   %s, %s, in a pane of %s\n", unit.Size{W: unit.Length(c.Width), H: unit.Length(c.Height)}, corner, unit.Length(c.Thick))
	p.say("lens   nose %s, pupil %s wide and %s behind the nose\n", unit.Length(c.Nose), unit.Length(c.Pupil), unit.Length(c.PupilDepth))
	if k, known := c.Camera.Get(); known {
		p.say("camera body of %s, %s behind the nose\n", unit.Size{W: unit.Length(k.Width), H: unit.Length(k.Height)}, unit.Length(k.Length))
	}
	held, pivot := "landscape", "hand-held, free to shift"
	if portrait {
		held = "portrait"
	}
	if c.Pivot == fit.Centre {
		pivot = "fixed, turning about the hole's centre"
	}
	if b, ok := c.Back.Get(); ok {
		pivot += fmt.Sprintf(", %s behind the rear face", unit.Length(b).Format(p.sys))
	}
	view := func(tan float64) float64 { return 2 * math.Atan(tan) * 180 / math.Pi }
	p.say("view   %.1f x %.1f deg, %s; %s\n\n", view(c.TanX), view(c.TanY), held, pivot)
}

func limit(m unit.Maybe[unit.Angle]) string {
	if q, ok := m.Get(); ok {
		return fmt.Sprintf("%.2f", q.Degrees())
	}
	return "-"
}

func aimed(p *page, v fit.View, c fit.Case) {
	light := func(t float64) string { return fmt.Sprintf("%.1f %%", 100*t) }
	p.say("\naimed at pan %s, tilt %s: light through the hole\n", unit.Angle(v.Pose.Pan).Format(), unit.Angle(v.Pose.Tilt).Format())
	t := table.New("", "left", "centre", "right").Numbers(1, 4)
	t.Add("upper corners", light(v.Corners[1]), "", light(v.Corners[3]))
	t.Add("centre", "", light(v.Centre))
	t.Add("lower corners", light(v.Corners[0]), "", light(v.Corners[2]))
	p.say("%sthe nose stands %s aside, %s behind the rink face\n", t.Text(), unit.Length(v.Pose.Shift()), unit.Length(v.Pose.Behind(c.Nose)))
	if v.Pose.Shift() > fit.ArmsComfort {
		p.say("that is more than %s beside the hole's centre: beyond an arm's comfort\n", unit.Length(fit.ArmsComfort))
	}
}

// lossFields are the columns of one axis's losses.
func lossFields(axis string, c fit.Case) table.Fields[fit.LossRow] {
	stops := func(head, name string, of func(fit.LossRow) float64) table.Field[fit.LossRow] {
		return numbered(head, name, func(r fit.LossRow) string {
			if s, ok := fit.Stops(of(r)); ok {
				return fmt.Sprintf("%.2f", s)
			}
			return "-"
		})
	}
	return table.Fields[fit.LossRow]{
		numbered(axis+" deg", axis+"_deg", func(r fit.LossRow) string { return fmt.Sprintf("%.1f", r.Angle.Degrees()) }),
		stops("centre", "stops_centre", func(r fit.LossRow) float64 { return r.Centre }),
		stops("worst corner", "stops_corner", func(r fit.LossRow) float64 { return r.Corner }),
		inUnits("aside", "shift_mm", true, func(r fit.LossRow, sys unit.System) table.Cell {
			aside := unit.Length(r.Pose.Shift()).Format(sys)
			if uneasy(r) {
				aside += " *"
			}
			return table.Words(aside)
		}),
		length("behind", "behind_face_mm", func(r fit.LossRow) unit.Length { return unit.Length(r.Pose.Behind(c.Nose)) }),
	}
}

// uneasy reports that the camera stands beyond an arm's comfort; dark that no light
// reaches some corner.
func uneasy(r fit.LossRow) bool { return r.Pose.Shift() > fit.ArmsComfort }
func dark(r fit.LossRow) bool   { return r.Corner <= 0 }

func fitNotes(p *page, a fit.Answer, bare bool) {
	if a.Case.Pivot == fit.Centre {
		p.lines("The axis goes through the hole's centre on the rink face; aside is from the hole's centre to the nose's, behind from the rink face to the nose's foremost point.")
	} else {
		p.lines("The camera stands where the darkest of frame centre and corners is brightest; of equal places in the one nearest the rink face, then with the foremost point nearest the hole's centre. Aside is from the hole's centre to the nose's, behind from the rink face to the nose's foremost point.")
	}
	switch {
	case !a.Case.Camera.IsZero():
		p.lines("Beyond the angle of camera the body meets the glass before the nose reaches the rink face, and the lens must be drawn back; clean and half end where it would leave the hole. Fingers and straps come on top.")
	case bare:
		p.lines("The size of the camera is not known, so nothing is said of where it meets the glass: add --length and --body-size.")
	default:
		p.lines("The size of the camera is not known, so nothing is said of where it meets the glass: add length to the lens and size to the body in the kit.")
	}
	rows := slices.Concat(a.Loss.Pan, a.Loss.Tilt)
	if slices.ContainsFunc(rows, dark) {
		p.lines("- no light. Where one corner stays dark wherever the camera stands, all places count as equal; the frame's centre alone may do better.")
	}
	if slices.ContainsFunc(rows, uneasy) {
		p.lines("* more than " + unit.Length(fit.ArmsComfort).Format(p.sys) + " beside the hole's centre: beyond an arm's comfort.")
	}
}

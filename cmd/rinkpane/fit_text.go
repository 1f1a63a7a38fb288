package main

import (
	"fmt"
	"io"
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/unit"
)

// text prints the fit for people.
func (r fitReport) text(w io.Writer) {
	r.head(w)
	r.verdict(w)
	r.limitTable(w)
	if r.view != nil {
		r.aimed(w)
	}
	far := r.lossTable(w, "pan", "right or left", r.loss.Pan)
	far = r.lossTable(w, "tilt", "up or down", r.loss.Tilt) || far
	camera := "The size of the camera is not known, so nothing is said of where it meets the glass: add length to the lens and size to the body in the kit."
	if r.title == "" {
		camera = "The size of the camera is not known, so nothing is said of where it meets the glass: add --length and --body-size."
	}
	if !r.c.Camera.IsZero() {
		camera = "Beyond the angle of camera the body meets the glass before the nose reaches the rink face, and the lens must be drawn back; clean and half end where it would leave the hole. Fingers and straps come on top."
	}
	notes := []string{
		"The camera stands where the darkest of frame centre and corners is brightest; of equal places in the one nearest the rink face, then with the foremost point nearest the hole's centre. Aside is from the hole's centre to the nose's, behind from the rink face to the nose's foremost point.",
		camera,
	}
	if r.c.Pivot == fit.Centre {
		notes[0] = "The axis goes through the hole's centre on the rink face; aside is from the hole's centre to the nose's, behind from the rink face to the nose's foremost point."
	}
	if r.dark() {
		notes = append(notes, "- no light. Where one corner stays dark wherever the camera stands, all places count as equal; the frame's centre alone may do better.")
	}
	if far {
		notes = append(notes, fmt.Sprintf("* more than %s beside the hole's centre: beyond an arm's comfort.", length(fit.ArmsComfort).Format(r.sys)))
	}
	fmt.Fprintln(w)
	writeLines(w, notes)
	writeAssumed(w, r.assumed, r.sys)
}

// dark reports whether some row has no light at a corner.
func (r fitReport) dark() bool {
	is := func(row fit.LossRow) bool { return row.Corner <= 0 }
	return slices.ContainsFunc(r.loss.Pan, is) || slices.ContainsFunc(r.loss.Tilt, is)
}

func length(m float64) unit.Length { return unit.Length(m) }

func (r fitReport) head(w io.Writer) {
	c := r.c
	if r.title != "" {
		fmt.Fprintf(w, "%s\n", r.title)
	}
	hole := unit.Size{W: length(c.Width), H: length(c.Height)}
	corner := "square corners"
	if c.Corner > 0 {
		corner = length(c.Corner).Format(r.sys) + " corners"
	}
	fmt.Fprintf(w, "hole   %s, %s, in a pane of %s\n", hole.Format(r.sys), corner, length(c.Thick).Format(r.sys))
	fmt.Fprintf(w, "lens   nose %s, pupil %s wide and %s behind the nose\n", length(c.Nose).Format(r.sys), length(c.Pupil).Format(r.sys), length(c.PupilDepth).Format(r.sys))
	if k, known := c.Camera.Get(); known {
		body := unit.Size{W: length(k.Width), H: length(k.Height)}
		fmt.Fprintf(w, "camera body of %s, %s behind the nose\n", body.Format(r.sys), length(k.Length).Format(r.sys))
	}
	held := "landscape"
	if r.portrait {
		held = "portrait"
	}
	pivot := "hand-held, free to shift"
	if c.Pivot == fit.Centre {
		pivot = "fixed, turning about the hole's centre"
	}
	if b, ok := c.Back.Get(); ok {
		pivot += fmt.Sprintf(", %s behind the rear face", length(b).Format(r.sys))
	}
	view := func(tan float64) float64 { return 2 * math.Atan(tan) * 180 / math.Pi }
	fmt.Fprintf(w, "view   %.1f x %.1f deg, %s; %s\n\n", view(c.TanX), view(c.TanY), held, pivot)
}

func (r fitReport) verdict(w io.Writer) {
	least := length(min(r.c.Width, r.c.Height))
	play := least - length(r.c.Nose)
	if r.limits.Fits {
		fmt.Fprintf(w, "The nose enters the hole with %s to spare.\n\n", play.Format(r.sys))
		return
	}
	fmt.Fprintf(w, "The nose does not enter: it is %s wider than the hole's %s. The lens can only stand\nbehind the pane; take the hood off, or take a slimmer lens.\n\n", (-play).Format(r.sys), least.Format(r.sys))
}

func (r fitReport) limitTable(w io.Writer) {
	p, t := r.limits.Pan, r.limits.Tilt
	rows := [][]string{
		{"touch", limitCell(p.Body), limitCell(t.Body), "the foremost point at the rink face, nothing cut"},
		{"camera", limitCell(p.Camera), limitCell(t.Camera), "the foremost point at the rink face, the body clear of the glass"},
		{"clean", limitCell(p.Clear), limitCell(t.Clear), "every frame corner keeps 95 % of its light"},
		{"half", limitCell(p.Usable), limitCell(t.Usable), "the frame's centre keeps half"},
	}
	writeTable(w, []string{"up to", "pan deg", "tilt deg", ""}, rows)
}

func limitCell(m unit.Maybe[unit.Angle]) string {
	q, ok := m.Get()
	if !ok {
		return "-"
	}
	return fmt.Sprintf("%.2f", q.Degrees())
}

func (r fitReport) aimed(w io.Writer) {
	v := r.view
	fmt.Fprintf(w, "\naimed at pan %s, tilt %s: light through the hole\n", unit.Angle(v.Pose.Pan).Format(), unit.Angle(v.Pose.Tilt).Format())
	writeTable(w, []string{"", "left", "centre", "right"}, [][]string{
		{"upper corners", lightCell(v.Corners[1]), "", lightCell(v.Corners[3])},
		{"centre", "", lightCell(v.Centre), ""},
		{"lower corners", lightCell(v.Corners[0]), "", lightCell(v.Corners[2])},
	})
	fmt.Fprintf(w, "the nose stands %s aside, %s behind the rink face\n", r.aside(v.Pose), r.behind(v.Pose))
	if v.Pose.Shift() > fit.ArmsComfort {
		fmt.Fprintf(w, "that is more than %s beside the hole's centre: beyond an arm's comfort\n", length(fit.ArmsComfort).Format(r.sys))
	}
}

// lightCell prints a transmission.
func lightCell(t float64) string { return fmt.Sprintf("%.1f %%", 100*t) }

func (r fitReport) aside(p fit.Pose) string { return length(p.Shift()).Format(r.sys) }

func (r fitReport) behind(p fit.Pose) string {
	return max(0, -length(p.Foremost(r.c.Nose).Z)).Format(r.sys)
}

// lossTable prints one axis's losses, and reports whether the lens ever stands
// beyond an arm's comfort.
func (r fitReport) lossTable(w io.Writer, axis, way string, rows []fit.LossRow) bool {
	fmt.Fprintf(w, "\nstops lost by %s, %s\n", axis, way)
	far := false
	var cells [][]string
	for _, row := range rows {
		aside := r.aside(row.Pose)
		if row.Pose.Shift() > fit.ArmsComfort {
			aside, far = aside+" *", true
		}
		cells = append(cells, []string{
			fmt.Sprintf("%.1f", row.Angle.Degrees()), stopsCell(row.Centre), stopsCell(row.Corner), aside, r.behind(row.Pose),
		})
	}
	writeTable(w, []string{axis + " deg", "centre", "worst corner", "aside", "behind"}, cells)
	return far
}

// stopsCell prints a loss; "-" where no light comes through.
func stopsCell(t float64) string {
	s, ok := fit.Stops(t)
	if !ok {
		return "-"
	}
	return fmt.Sprintf("%.2f", s)
}

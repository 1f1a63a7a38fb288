package sheet

// A check bar is 100 mm long as printed, in ten parts dark and white by turns, so that a
// ruler laid on it shows a print that was fitted to the page, and one that a printer
// stretched in one direction only: the metric reference graduation of ISO 5457 (from
// memory), along two sides of the sheet.
const (
	checkParts = 10
	checkPart  = 10.0 // mm as printed
	checkThick = 2.0
	checkOff   = 2.5 // of the bars' middles from the frame
)

// CheckBars draws a bar of 100 mm along the foot and one up the left side of a frame,
// in the margin outside it, and says beside them what they are for.
func (d *Drawing) CheckBars(layer string, frame Rect) {
	k := d.growth()
	g, _ := d.Group(layer, "")
	part, thick, off := checkPart/k, checkThick/k, checkOff/k
	foot, left := frame.Y+frame.H+off, frame.X-off
	for i := range checkParts {
		from := float64(i) * part
		along := Rect{frame.X + from, foot - thick/2, part, thick}
		up := Rect{left - thick/2, frame.Y + frame.H - from - part, thick, part}
		for _, r := range []Rect{along, up} {
			if i%2 == 0 {
				g.Add("check-dark", RoundRect(r, 0))
			}
		}
	}
	for _, r := range []Rect{{frame.X, foot - thick/2, checkParts * part, thick}, {left - thick/2, frame.Y + frame.H - checkParts*part, thick, checkParts * part}} {
		g.Add("check", RoundRect(r.Inset(W13/2), 0)) // the bar ends with the line's outer edge
	}
	g.Add("caption", Text{At: Pt(frame.X+checkParts*part+2, foot), S: "each bar 100 mm: measure both; if one is off, scale nothing from this sheet", VAlign: Centre})
}

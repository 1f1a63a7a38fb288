package holes

import (
	"fmt"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// holeView is everything the page says of the hole picked.
type holeView struct {
	ID, Where string
	Status    rules.Status
	Best      string // the recommended lens in words, "" when none fits
	Reach     string
	Peek      string // address of a small picture of what is seen through the lens picked
	Picture   string // address of the view through the lens
	Facts     []shell.Fact
	Findings  findingsView
	Fits      []fitRow
	Turns     table.Table // the same as a table of its own, for paper
	Light     table.Table // a row a part of the ice, the slot before the hole's own net marked
	Assumed   string      // what had to be assumed, ""
	Lens      string      // the lens picked
	Moved     bool        // not saved yet: reach and framing are not known
}

// fitRow is one lens in the hole: its cells are those of [fitColumns].
type fitRow struct {
	Name, Short        string // "tele zoom 70-200 mm f/2.8", "70-200 at 70 mm"
	URL                string // with this lens picked
	Fits, Best, Chosen bool
	Cells              []string
}

// fitColumns are what the page says of a lens in a hole, of the columns that every
// table of lenses has; the first is worked out when the hand rests.
var fitColumns = []string{"framing_share", "pan_clear_deg", "pan_usable_deg", "pan_body_deg", "pan_camera_deg", "tilt_clear_deg", "tilt_usable_deg", "tilt_body_deg", "tilt_camera_deg"}

// lightColumns are what it says of the light, in the order of the page.
var lightColumns = []string{"zone", "median_lx", "face_iso_nominal", "iso_nominal", "shutter", "stop", "ev100", "distance_m", "framed_mm", "near_m", "far_m"}

// viewHole says everything of the hole picked. While it is moved, what takes
// longer to work out is left open.
func viewHole(live *liveView, h plan.Hole, sys unit.System) holeView {
	v := holeView{
		ID: h.ID, Where: h.Place.Say(sys), Status: h.Status, Moved: live.moved,
		Findings: viewFindings(live.now.FindingsOf(h.ID), h.ID, sys),
		Reach:    reachWords(h.Reach, sys),
	}
	if best, ok := h.BestFit(); ok {
		v.Best = best.Lens.Name
	}
	v.Facts = holeFacts(h, sys)
	if thick := h.Opening.Thick; !thick.Surveyed() {
		v.Assumed = "The survey lacks this pane's thickness; " + thick.Value.Format(sys) + " is assumed."
	}
	fits := words.Fits(h)
	cells := fits.Pick(fitColumns...).Of("", h.Fits, sys).Texts()
	for i, f := range h.Fits {
		row := fitRow{
			Name: f.Lens.Name, Short: words.Lens(f), Fits: f.Fits, Best: h.IsBest(i),
			URL: live.Address.WithLens(f.Lens.ID, f.Focal.Millimetres()).URL(), Chosen: i == live.now.Picked.Lens, Cells: cells[i],
		}
		if row.Chosen {
			v.Lens = words.Lens(f)
		}
		if live.moved {
			row.Cells[0] = "…"
		}
		v.Fits = append(v.Fits, row)
	}
	v.Turns = fits.Of("", h.Fits, sys)
	for i := range h.Fits {
		v.Turns.Strong = append(v.Turns.Strong, h.IsBest(i))
	}
	v.Light = words.Light().Pick(lightColumns...).Of("", h.Light, sys)
	for _, row := range h.Light {
		v.Light.Strong = append(v.Light.Strong, row.Zone == h.Slot)
	}
	return v
}

func holeFacts(h plan.Hole, sys unit.System) []shell.Fact {
	return []shell.Fact{
		{Name: "Size", Value: h.Size.Format(sys)},
		{Name: "Centre above the ice", Value: h.Height.Format(sys)},
		{Name: "Station", Value: h.Station.Format(sys)},
		{Name: "Pane", Value: h.Pane},
		{Name: "State", Value: string(h.State)},
	}
}

func reachWords(r plan.IceShare, sys unit.System) string {
	return fmt.Sprintf("By the %s. Straight ahead, the %s nearest to the boards stay unseen", words.ReachWords(r), words.Near(r.Blind, sys))
}

func degrees(a unit.Maybe[unit.Angle]) string {
	if _, ok := a.Get(); !ok {
		return "-"
	}
	return words.Turn(a) + "°"
}

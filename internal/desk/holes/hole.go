package holes

import (
	"fmt"
	"strconv"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/words"
)

// holeView is everything the page says of the hole picked.
type holeView struct {
	ID, Where string
	Status    rules.Status
	Best      string // the recommended lens in words, "" when none fits
	Reach     string
	Picture   string // address of the view through the lens
	Facts     []shell.Fact
	Findings  findingsView
	Fits      []fitRow
	Light     []lightRow
	Assumed   string // what had to be assumed, ""
	Lens      string // the lens picked
	Moved     bool   // not saved yet: reach and framing are not known
}

// fitRow is one lens in the hole; angles in degrees, "-" where the mark fails
// straight ahead.
type fitRow struct {
	Name, Focal, Frames             string
	URL                             string // with this lens picked
	Fits, Best, Chosen              bool
	PanBody, PanClear, PanUsable    string
	TiltBody, TiltClear, TiltUsable string
}

// lightRow is one part of the ice.
type lightRow struct {
	Zone, Lux, EV, Shutter, Stop, ISO string
	Away, Framed, Sharp               string
	Near                              bool // the slot before the hole's own net
}

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
	for i, f := range h.Fits {
		row := viewFit(f, h.IsBest(i))
		row.URL = live.Address.WithLens(f.Lens.ID, f.Focal.Millimetres()).URL()
		row.Chosen = i == live.now.Picked.Lens
		if row.Chosen {
			v.Lens = words.Lens(f)
		}
		if live.moved {
			row.Frames = "…"
		}
		v.Fits = append(v.Fits, row)
	}
	for _, l := range h.Light {
		row := viewLight(l, sys)
		row.Near = l.Zone == h.Slot
		v.Light = append(v.Light, row)
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

func reachWords(r plan.Reach, sys unit.System) string {
	return fmt.Sprintf("%.0f %% of the ice at puck height, %.0f %% at face height; straight ahead, the %s nearest to the boards stay unseen",
		100*r.Share, 100*r.FaceShare, r.Blind.Format(sys))
}

func viewFit(f plan.LensFit, best bool) fitRow {
	return fitRow{
		Name: f.Lens.Name, Focal: strconv.FormatFloat(f.Focal.Millimetres(), 'f', -1, 64) + " mm", Fits: f.Fits, Best: best,
		Frames:  words.Percent(f.Framing),
		PanBody: degrees(f.Pan.Body), PanClear: degrees(f.Pan.Clear), PanUsable: degrees(f.Pan.Usable),
		TiltBody: degrees(f.Tilt.Body), TiltClear: degrees(f.Tilt.Clear), TiltUsable: degrees(f.Tilt.Usable),
	}
}

func degrees(a unit.Maybe[unit.Angle]) string {
	if _, ok := a.Get(); !ok {
		return "-"
	}
	return words.Turn(a) + "°"
}

func viewLight(l light.Row, sys unit.System) lightRow {
	v := lightRow{
		Zone: l.Zone, Lux: unit.Illuminance(l.MedianLx).Format(sys), EV: strconv.FormatFloat(l.EV100, 'f', 1, 64),
		Shutter: unit.Shutter(l.ShutterS).Format(), Stop: unit.Stop(l.Stop).Format(), ISO: words.ISO(l),
		Away: words.Far(unit.Length(l.DistanceM), sys),
	}
	if d := l.Depth; d != nil {
		v.Framed = strconv.FormatFloat(d.FocalMM, 'f', 0, 64) + " mm"
		v.Sharp = "from " + words.Far(unit.Length(d.NearM), sys)
		if d.FarM != nil {
			v.Sharp = words.Far(unit.Length(d.NearM), sys) + " to " + words.Far(unit.Length(*d.FarM), sys)
		}
	}
	return v
}

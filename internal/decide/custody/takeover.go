package custody

import (
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
)

// TakeOver returns the edits by which the survey takes over what an inspection
// measured, so that all that is computed counts with the real hole: its size, corner
// radius, the smaller of its edge roundings, its place on the pane, the pane's
// thickness; and that it is cut. A place moves along the boards by as much as it is off
// on the pane, which on a bent pane is right to a hundredth of that.
func TakeOver(a arena.Arena, j Judged) []edit.Edit {
	h, known := a.Hole(j.Hole)
	if !known {
		return nil
	}
	is := map[Quantity]unit.Length{}
	off := map[Quantity]unit.Length{}
	for _, f := range j.Findings {
		is[f.What] = f.Value
		off[f.What] = f.Value - (f.Low.Or(f.Value)+f.High.Or(f.Value))/2
	}
	var out []edit.Edit
	set := func(path, value string) {
		out = append(out, edit.Edit{Do: edit.Set, Path: path, Value: edit.One(value)})
	}
	of := "holes[" + h.ID + "]."
	w, wide := is[Width]
	high, tall := is[Height]
	if wide || tall {
		size := h.Size
		if wide {
			size.W = w
		}
		if tall {
			size.H = high
		}
		set(of+"size", size.W.Exact(unit.Metric)+" x "+size.H.Exact(unit.Metric))
	}
	if r, ok := is[CornerRadius]; ok {
		set(of+"corner-radius", r.Exact(unit.Metric))
	}
	front, ok := is[RoundingRink]
	if back, both := is[RoundingBack]; both && (!ok || back < front) {
		front, ok = back, true
	}
	if ok {
		set(of+"rounding", front.Exact(unit.Metric))
	}
	if t, ok := is[Thickness]; ok {
		set("panes["+h.Pane+"].thickness", t.Exact(unit.Metric))
	}
	if off[FromLeft] != 0 || off[AboveBoards] != 0 {
		station, height := (h.Station + off[FromLeft]).Metres(), (h.Height + off[AboveBoards]).Metres()
		out = append(out, edit.Edit{Do: edit.Move, Hole: h.ID, To: &edit.Spot{Station: &station, Height: &height}})
	}
	if h.State != glass.Cut {
		out = append(out, edit.Edit{Do: edit.Turn, Hole: h.ID, State: glass.Cut})
	}
	return out
}

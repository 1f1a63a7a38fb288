package words

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// What a column is called and what its cells are. left, right and whole make
// columns of words, of numbers, and of numbers that CSV has in full.

func left[T any](head, name string, cell func(T) string) table.Field[T] {
	return inUnits(head, name, false, func(row T, _ unit.System) table.Cell { return table.Words(cell(row)) })
}

func inUnits[T any](head, name string, right bool, cell func(T, unit.System) table.Cell) table.Field[T] {
	return table.Field[T]{Column: table.Column{Head: head, Name: name, Right: right}, Cell: cell}
}

func far[T any](head, name string, of func(T) unit.Length) table.Field[T] {
	return inUnits(head, name, true, func(row T, sys unit.System) table.Cell { return table.Number(Far(of(row), sys), of(row).Metres()) })
}

func share[T any](head, name string, of func(T) float64) table.Field[T] {
	return inUnits(head, name, true, func(row T, _ unit.System) table.Cell { return table.Number(Percent(of(row)), of(row)) })
}

func shareIfTold[T any](head, name string, of func(T) unit.Maybe[float64]) table.Field[T] {
	return inUnits(head, name, true, func(row T, _ unit.System) table.Cell {
		v, told := of(row).Get()
		if !told {
			return table.None()
		}
		return table.Number(Percent(v), v)
	})
}

func turn[T any](head, name string, of func(T) unit.Maybe[unit.Angle]) table.Field[T] {
	return inUnits(head, name, true, func(row T, _ unit.System) table.Cell {
		a, ok := of(row).Get()
		if !ok {
			return table.None()
		}
		return table.Number(Turn(of(row)), a.Degrees())
	})
}

// explained adds the sentence that explains a column.
func explained[T any](f table.Field[T], key string) table.Field[T] {
	f.Key = key
	return f
}

// Holes are the columns that say everything of a hole in a line; each teller
// picks its own by their names.
func Holes() table.Fields[plan.Hole] {
	return table.Fields[plan.Hole]{
		left("hole", "hole", func(h plan.Hole) string { return h.ID }),
		left("hole", "hole_marked", func(h plan.Hole) string { return h.ID + statusMark(h.Status) }),
		inUnits("where", "where", false, func(h plan.Hole, sys unit.System) table.Cell { return table.Words(h.Place.Say(sys)) }),
		left("pane", "pane", func(h plan.Hole) string { return h.Pane }),
		length("station", "station_m", func(h plan.Hole) unit.Length { return h.Station }),
		length("height", "height_m", func(h plan.Hole) unit.Length { return h.Height }),
		inUnits("size", "size", true, func(h plan.Hole, sys unit.System) table.Cell { return table.Words(h.Size.Format(sys)) }),
		left("state", "state", func(h plan.Hole) string { return string(h.State) }),
		left("rules", "status", func(h plan.Hole) string { return string(h.Status) }),
		left("best lens", "best_lens", func(h plan.Hole) string {
			return best(h, func(f plan.LensFit) string { return f.Lens.ID }, "none fits")
		}),
		left("best lens", "best_lens_focal", Best),
		numbered("mm", "best_focal_mm", func(h plan.Hole) string {
			return best(h, func(f plan.LensFit) string { return plain(f.Focal.Millimetres()) }, "")
		}),
		explained(numbered("clean", "pan_clear_deg", func(h plan.Hole) string {
			return best(h, func(f plan.LensFit) string { return Turn(f.Pan.Clear) }, "")
		}), "degrees from straight ahead, to either side, with every corner of the picture clean"),
		explained(numbered("half", "pan_usable_deg", func(h plan.Hole) string {
			return best(h, func(f plan.LensFit) string { return Turn(f.Pan.Usable) }, "")
		}), "the same until half the light is lost"),
		explained(numbered("frames", "framing_share", func(h plan.Hole) string {
			return best(h, func(f plan.LensFit) string { return Percent(f.Framing) }, "")
		}), "ice on which the lens, zoomed as needed, fills a quarter to all of the frame's height with a player"),
		explained(share("centre", "reach_share", func(h plan.Hole) float64 { return h.Reach.Share }), CentreKey),
		explained(shareIfTold("whole frame", "reach_whole_share", func(h plan.Hole) unit.Maybe[float64] { return h.Reach.Whole }), WholeKey),
		explained(numbered("ISO for faces", "face_iso_nominal", func(h plan.Hole) string { return slot(h, FaceISO) }),
			"at 1/1000 s, wide open, for upright faces in the slot of the hole's own end"),
		explained(numbered("flat meter", "iso_nominal", func(h plan.Hole) string { return slot(h, ISO) }), "the ISO there by a meter that looks up"),
		share("centre, puck", "reach_puck_share", func(h plan.Hole) float64 { return h.Reach.Share }),
		share("face", "reach_face_share", func(h plan.Hole) float64 { return h.Reach.FaceShare }),
		shareIfTold("whole frame, puck", "reach_whole_puck_share", func(h plan.Hole) unit.Maybe[float64] { return h.Reach.Whole }),
		shareIfTold("face", "reach_whole_face_share", func(h plan.Hole) unit.Maybe[float64] { return h.Reach.WholeFace }),
		length("blind strip", "blind_strip_m", func(h plan.Hole) unit.Length { return h.Reach.Blind }),
		length("mean", "blind_strip_mean_m", func(h plan.Hole) unit.Length { return h.Reach.BlindMean }),
		left("assumed", "assumed", func(h plan.Hole) string {
			if n := len(h.Reach.Assumed); n > 0 {
				return say.Count(n, "number")
			}
			return ""
		}),
	}
}

func numbered[T any](head, name string, cell func(T) string) table.Field[T] {
	f := left(head, name, cell)
	f.Right = true
	return f
}

// best says something of a hole's recommended lens, or else what stands instead.
func best(h plan.Hole, of func(plan.LensFit) string, without string) string {
	if f, ok := h.BestFit(); ok {
		return of(f)
	}
	return without
}

// slot prints something of the slot of the hole's own end.
func slot(h plan.Hole, of func(light.Row) string) string {
	if l, ok := h.SlotLight(); ok {
		return of(l)
	}
	return "no reading"
}

func statusMark(s rules.Status) string {
	switch s {
	case rules.Fail:
		return " x"
	case rules.Unknown:
		return " ?"
	}
	return ""
}

// Fits are the columns of a hole's lenses.
func Fits(h plan.Hole) table.Fields[plan.LensFit] {
	out := table.Fields[plan.LensFit]{
		left("lens", "lens", func(f plan.LensFit) string { return f.Lens.ID }),
		numbered("mm", "focal_mm", func(f plan.LensFit) string { return plain(f.Focal.Millimetres()) }),
		turn("turn: clean", "pan_clear_deg", func(f plan.LensFit) unit.Maybe[unit.Angle] { return f.Pan.Clear }),
		turn("half", "pan_usable_deg", func(f plan.LensFit) unit.Maybe[unit.Angle] { return f.Pan.Usable }),
		turn("touch", "pan_body_deg", func(f plan.LensFit) unit.Maybe[unit.Angle] { return f.Pan.Body }),
		turn("camera", "pan_camera_deg", func(f plan.LensFit) unit.Maybe[unit.Angle] { return f.Pan.Camera }),
		turn("tilt: clean", "tilt_clear_deg", func(f plan.LensFit) unit.Maybe[unit.Angle] { return f.Tilt.Clear }),
		turn("half", "tilt_usable_deg", func(f plan.LensFit) unit.Maybe[unit.Angle] { return f.Tilt.Usable }),
		turn("touch", "tilt_body_deg", func(f plan.LensFit) unit.Maybe[unit.Angle] { return f.Tilt.Body }),
		turn("camera", "tilt_camera_deg", func(f plan.LensFit) unit.Maybe[unit.Angle] { return f.Tilt.Camera }),
		share("frames", "framing_share", func(f plan.LensFit) float64 { return f.Framing }),
		left("note", "remark", func(f plan.LensFit) string {
			switch b, ok := h.BestFit(); {
			case !f.Fits:
				return "too wide to enter"
			case ok && b.Lens.ID == f.Lens.ID && b.Focal == f.Focal:
				return "best"
			}
			return ""
		}),
	}
	for i := 2; i < len(out)-1; i++ { // a lens that is too wide turns nowhere
		whole := out[i].Cell
		out[i].Cell = func(f plan.LensFit, sys unit.System) table.Cell {
			if !f.Fits {
				return table.Words("")
			}
			return whole(f, sys)
		}
	}
	return out
}

// AnglesKey explains the columns of [Fits].
const AnglesKey = "Degrees from straight ahead, to either side. clean: no corner of the picture loses more than a twentieth of " +
	"its light. half: the middle of the picture keeps half, the nose still in the hole. touch: the barrel meets the glass. " +
	"camera: the body behind it does, the nose at the rink face; -: not even straight ahead, or the kit does not know the size."

// Light are the columns of a hole's light table, a row a part of the ice.
func Light() table.Fields[light.Row] {
	depth := func(of func(light.Depth, unit.System) string) func(light.Row, unit.System) table.Cell {
		return func(l light.Row, sys unit.System) table.Cell {
			if l.Depth == nil {
				return table.Words("")
			}
			return table.Words(of(*l.Depth, sys))
		}
	}
	return table.Fields[light.Row]{
		left("part of the ice", "zone", func(l light.Row) string { return l.Zone }),
		inUnits("light", "median_lx", true, func(l light.Row, sys unit.System) table.Cell {
			return table.Number(l.Median.Format(sys), l.Median.Lux())
		}),
		numbered("EV", "ev100", func(l light.Row) string { return fmt.Sprintf("%.1f", l.EV100) }),
		numbered("shutter", "shutter", func(l light.Row) string { return l.Shutter.Format() }),
		numbered("stop", "stop", func(l light.Row) string { return l.Stop.Format() }),
		numbered("ISO", "face_iso_nominal", FaceISO),
		numbered("flat", "iso_nominal", ISO),
		far("away", "distance_m", func(l light.Row) unit.Length { return l.Distance }),
		inUnits("framed at", "framed_mm", true, depth(func(d light.Depth, _ unit.System) string { return fmt.Sprintf("%.0f mm", d.Focal.Millimetres()) })),
		inUnits("sharp from", "near_m", true, depth(func(d light.Depth, sys unit.System) string { return Far(d.Near, sys) })),
		inUnits("to", "far_m", true, depth(func(d light.Depth, sys unit.System) string {
			if d.Infinite() {
				return "any"
			}
			return Far(d.Far, sys)
		})),
	}
}

// Rules are the columns of the rules summed up over the whole arena.
func Rules() table.Fields[plan.RuleSummary] {
	return table.Fields[plan.RuleSummary]{
		left("rule", "rule", func(s plan.RuleSummary) string { return s.Rule }),
		left("answer", "status", func(s plan.RuleSummary) string { return string(s.Status) }),
		inUnits("margin", "margin", false, func(s plan.RuleSummary, sys unit.System) table.Cell { return table.Words(Rule(s, sys)) }),
		left("rule set", "rule_set", func(s plan.RuleSummary) string { return s.Set }),
	}
}

// Findings are the columns of findings one by one.
func Findings() table.Fields[rules.Finding] {
	return table.Fields[rules.Finding]{
		left("rule", "rule", func(f rules.Finding) string { return f.Rule }),
		left("holes", "holes", func(f rules.Finding) string { return strings.Join(f.Holes, ", ") }),
		left("answer", "status", func(f rules.Finding) string { return string(f.Status) }),
		inUnits("margin", "margin", false, func(f rules.Finding, sys unit.System) table.Cell { return table.Words(f.Spare().In(sys)) }),
		inUnits("in words", "message", false, func(f rules.Finding, sys unit.System) table.Cell { return table.Words(f.Say(sys)) }),
		inUnits("margin, or what to do", "margin_or_cure", false, func(f rules.Finding, sys unit.System) table.Cell {
			return table.Words(MarginOrCure(f, sys))
		}),
	}
}

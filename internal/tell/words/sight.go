package words

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/tell/table"
)

// Sight tells the reach of each hole, and of each lens when there is one hole only.
// Scores are by hole; nil on a rink too small for a game.
func Sight(name string, reaches []sight.Reach, scores []float64, sys unit.System) string {
	p := page{sys: sys}
	p.say("%s: what the holes see\n\n", name)
	if len(reaches) == 0 {
		p.say("There is no working hole.\n")
		return p.String()
	}
	rows := make([]sightRow, len(reaches))
	var assumed []arena.Assumption
	for i, r := range reaches {
		rows[i] = sightRow{Reach: r}
		if scores != nil {
			rows[i].score = unit.Known(scores[i])
		}
		assumed = append(assumed, r.Assumed...)
	}
	layers := reaches[0].Layers
	p.WriteString(sightFields(layers, sys).Of("", rows, sys).Text())
	if len(reaches) == 1 {
		p.say("\n%s", lensFields(layers, sys).Of("", reaches[0].Lenses, sys).Text())
	}
	p.say("\n")
	p.hang("", "Shares are of the ice, at the height of a puck (%s) and of a face (%s): "+
		CentreKey+"; whole frame, at the first height: "+WholeKey+". The blind strip is the ice along the near boards that no lens sees: straight ahead, and its mean over %s "+
		"of boards; the next column is what the boards' top alone hides. The score, 0 to 1, is the mean of the view's worth over moments "+
		"of a game by their news weight (see docs/moments.md).", sight.PuckHeight, sight.FaceHeight, 2*sight.StripSide)
	p.assumed(assumed)
	return p.String()
}

type sightRow struct {
	sight.Reach
	score unit.Maybe[float64]
}

func sightFields(layers []sight.Layer, sys unit.System) table.Fields[sightRow] {
	out := table.Fields[sightRow]{left("hole", "hole", func(r sightRow) string { return r.Hole })}
	for i, l := range layers {
		out = append(out, tenths(at(l.Height, sys), func(r sightRow) float64 { return r.Layers[i].Share }))
	}
	out = append(out, whole(func(r sightRow) unit.Maybe[float64] { return r.Layers[0].Whole }))
	return append(out, append(blind(func(r sightRow) sight.Blind { return r.Blind }),
		inUnits("by the boards", "ledge_strip_m", true, func(r sightRow, sys unit.System) table.Cell {
			if math.IsInf(r.Blind.Ledge, 0) {
				return table.Words("all")
			}
			return table.Words(unit.Length(r.Blind.Ledge).Format(sys))
		}),
		numbered("score", "score", func(r sightRow) string {
			if s, ok := r.score.Get(); ok {
				return fmt.Sprintf("%.3f", s)
			}
			return "-"
		}))...)
}

func lensFields(layers []sight.Layer, sys unit.System) table.Fields[sight.LensReach] {
	out := table.Fields[sight.LensReach]{
		left("lens", "lens", func(l sight.LensReach) string { return l.ID }),
		numbered("focal", "focal_mm", func(l sight.LensReach) string { return l.Focal.Format(unit.Metric) }),
		left("stop", "stop", func(l sight.LensReach) string { return l.Stop.Format() }),
		left("enters", "fits", func(l sight.LensReach) string { return map[bool]string{true: "yes", false: "no"}[l.Fits] }),
	}
	for i, l := range layers {
		out = append(out, tenths(at(l.Height, sys), func(l sight.LensReach) float64 { return l.Share[i] }))
	}
	out = append(out, whole(func(l sight.LensReach) unit.Maybe[float64] { return l.WholeAt(0) }))
	return append(out, blind(func(l sight.LensReach) sight.Blind { return l.Blind })...)
}

// What a share of the ice is the share of: everybody who tells reach says it so.
const (
	CentreKey = "ice at which some lens can be aimed with half of its light or more at the frame's centre"
	WholeKey  = "the same with half or more at every corner of the frame too, within one stop"
)

// whole is the share of the first height that is seen with the frame's corners too.
func whole[T any](of func(T) unit.Maybe[float64]) table.Field[T] {
	return numbered("whole frame", "reach_whole_share", func(row T) string {
		if share, known := of(row).Get(); known {
			return fmt.Sprintf("%.1f %%", 100*share)
		}
		return "-"
	})
}

// ReachWords say what a hole sees of the ice at the height of a puck and of a face,
// by the frame's centre and by the whole frame.
func ReachWords(r plan.IceShare) string {
	out := fmt.Sprintf("centre of the frame with half of its light or more: %s of the ice at puck height, %s at faces", Percent(r.Share), Percent(r.FaceShare))
	puck, told := r.Whole.Get()
	if !told {
		return out
	}
	return out + fmt.Sprintf("; whole frame within one stop: %s and %s", Percent(puck), Percent(r.WholeFace.Or(puck)))
}

func blind[T any](of func(T) sight.Blind) table.Fields[T] {
	return table.Fields[T]{
		length("blind strip", "blind_strip_m", func(row T) unit.Length { return unit.Length(of(row).Ahead) }),
		length("mean", "blind_strip_mean_m", func(row T) unit.Length { return unit.Length(of(row).Mean) }),
	}
}

// tenths is a share in tenths of a percent.
func tenths[T any](head string, of func(T) float64) table.Field[T] {
	return numbered(head, "", func(row T) string { return fmt.Sprintf("%.1f %%", 100*of(row)) })
}

// at names the height of a map.
func at(z unit.Length, sys unit.System) string {
	switch z {
	case sight.PuckHeight:
		return "puck"
	case sight.FaceHeight:
		return "face"
	}
	return "at " + z.Format(sys)
}

package gain

import (
	"cmp"
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/play"
)

// weights are the moments of a game as a hole has them: by the angle of the
// way to the subject's chest from straight through the pane.
type weights struct {
	all, reached float64
	byDegree     [90]struct{ all, reached float64 }
	near         [rows]float64
	distances    []distance
}

type distance struct {
	far    unit.Length
	weight float64
}

func (w *weights) add(s *frame.Shot, outline *fit.Outline, m play.Moment) {
	aim := s.Mount.AimAt(frame.Chest(m))
	u := aim.Direction()
	if !(u.Z > 0) {
		return // level with the glass or behind it: in no picture from here
	}
	deg := math.Acos(min(1, u.Z)) * 180 / math.Pi
	w.all += m.Weight
	w.byDegree[min(int(deg+0.5), 89)].all += m.Weight
	w.near[min(int(deg/rowStep.Degrees()+0.5), rows-1)] += m.Weight
	if outline.ContainsDirection(u) {
		w.reached += m.Weight
		w.byDegree[min(int(deg+0.5), 89)].reached += m.Weight
	}
	w.distances = append(w.distances, distance{aim.Distance, m.Weight})
}

// medianDistance is the distance that half of the weight lies within.
func (w *weights) medianDistance() unit.Length {
	slices.SortFunc(w.distances, func(a, b distance) int { return cmp.Compare(a.far, b.far) })
	sum := 0.0
	for _, d := range w.distances {
		if sum += d.weight; sum >= w.all/2 {
			return d.far
		}
	}
	return 0
}

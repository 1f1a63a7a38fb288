package plan

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// Which lens is best in a hole? The one that frames a player on the largest
// share of the ice: it can be aimed there with half of its light or more, and
// the player fills between a quarter and the whole of the frame's height.
//
//	  a quarter: 4 d0              all of it: d0 = f H / s
//	 far .--------------------------. near
//	     |      frames a player     |  . hole     f focal length
//	     '--------------------------'             H player, s sensor's height
//
// A zoom counts at both ends of its range. Between lenses that do equally well
// the first in the kit wins. Own choice: it prefers a lens that makes pictures
// over one that merely turns far.

// farthestFrame is the distance at which a player fills the least of the frame,
// over the distance at which it fills all of it: a quarter. Own choice.
const farthestFrame = 4.0

// playerHeight is how tall a player stands in the model of the game, in metres.
func playerHeight() float64 { return play.DefaultAssumptions().Standing() }

// band is the distances from a hole, in metres, at which a lens end frames a player.
type band struct {
	near, far float64
}

// framing is the band of each lens end of a reach.
func framingOf(r sight.Reach, k kit.Kit) []band {
	out := make([]band, len(r.Lenses))
	for i, l := range r.Lenses {
		lens, _ := k.Lens(l.ID)
		d0 := (l.Focal / k.BodyOf(lens).Sensor.H).Metres() * playerHeight()
		out[i] = band{d0, farthestFrame * d0}
	}
	return out
}

// pickBest sets the hole's best lens, the end of its range at which it does
// best, and every row's share of the ice on which it frames a player.
func (h *Hole) pickBest(r sight.Reach, bands []band) {
	ends, lenses := framed(r, bands)
	most := 0
	for _, n := range lenses {
		most = max(most, n)
	}
	cells := float64(max(r.Grid.Cells(), 1))
	bestEnd := 0
	for i, l := range r.Lenses {
		row := slices.IndexFunc(h.Fits, func(f LensFit) bool { return f.Lens.ID == l.ID && f.Focal == l.Focal })
		h.Fits[row].Framing = float64(lenses[l.ID]) / cells
		best, ok := h.BestFit()
		if most == 0 || lenses[l.ID] < most || ok && (best.Lens.ID != l.ID || ends[i] <= bestEnd) {
			continue
		}
		h.Best, bestEnd = unit.Known(row), ends[i]
	}
}

// framed counts the cells on which each lens end, and each lens at either end,
// frames a player.
func framed(r sight.Reach, bands []band) (ends []int, lenses map[string]int) {
	ends, lenses = make([]int, len(r.Lenses)), map[string]int{}
	faces := r.Layers[1]
	rise := faces.Height.Metres() - r.Eye.Z
	for row := range r.Grid.Rows {
		first, last := r.Grid.Run(row)
		for column := first; column < last; column++ {
			seen := faces.Seen[r.Grid.Index(column, row)]
			flat := r.Grid.At(column, row).Sub(r.Eye.At).Len()
			away := math.Hypot(flat, rise)
			before := ""
			for i, l := range r.Lenses {
				if seen&(1<<i) == 0 || away < bands[i].near || away > bands[i].far {
					continue
				}
				ends[i]++
				if l.ID != before {
					lenses[l.ID]++
					before = l.ID
				}
			}
		}
	}
	return ends, lenses
}

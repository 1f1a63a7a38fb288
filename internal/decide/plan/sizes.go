package plan

import (
	"math"

	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/survey/kit"
)

// Sizes returns for every cell of a layer of a reach, in the order of
// [sight.Reach.Parts], how large a skater stands in the frame there through a lens:
// the share of the frame's height, the larger of those ends of its range that can be
// aimed there; 0 where none can, NaN off the ice.
//
//	share = f H / (s d)    f focal length, H skater, s sensor's height, d distance
func Sizes(r sight.Reach, layer int, lens string, body kit.Body) []float64 {
	out, player := r.Parts(layer), playerHeight()
	rise := r.Layers[layer].Height.Metres() - r.Eye.Z
	for row := range r.Grid.Rows {
		first, last := r.Grid.Run(row)
		for column := first; column < last; column++ {
			i := r.Grid.Index(column, row)
			away := r.Grid.At(column, row).Sub(r.Eye.At)
			largest := 0.0
			for k, l := range r.Lenses {
				if l.ID == lens && r.Layers[layer].Seen[i]>>k&1 == 1 {
					largest = max(largest, (l.Focal/body.Sensor.H).Metres()*player/math.Hypot(math.Hypot(away.X, away.Y), rise))
				}
			}
			out[i] = largest
		}
	}
	return out
}

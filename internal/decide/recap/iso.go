package recap

import (
	"cmp"
	"math"
	"slices"
)

// AtISO is what was kept at one whole stop of sensitivity, and how much noisier a picture
// is there than at ISO 100: noise over signal grows with the root of the sensitivity where
// photons make it (Poisson), by one each two stops.
type AtISO struct {
	ISO   float64 // ISO 12232, the whole stop from 100
	Taken         // pictures
	Noise float64 // over that at ISO 100, a ratio
}

// ByISO sums bursts up by the whole stop nearest to their first frame's sensitivity.
func ByISO(frames []Matched, o Options) (out []AtISO) {
	at := map[int]*AtISO{}
	all := make([]*Matched, len(frames))
	for i := range frames {
		all[i] = &frames[i]
	}
	for _, b := range bursts(all) {
		iso, ok := b[0].ISO.Get()
		if !ok {
			continue
		}
		stop := int(math.Round(math.Log2(float64(iso) / 100)))
		if at[stop] == nil {
			s := 100 * math.Exp2(float64(stop))
			at[stop] = &AtISO{ISO: s, Noise: math.Sqrt(s / 100)}
		}
		at[stop].count(b, max(o.KeptFrom, 1))
	}
	for _, a := range at {
		out = append(out, *a)
	}
	slices.SortFunc(out, func(a, b AtISO) int { return cmp.Compare(a.ISO, b.ISO) })
	return out
}

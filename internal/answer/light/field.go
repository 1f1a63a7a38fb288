package light

import (
	"errors"
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Field is the light over the ice, interpolated from readings. Make one with
// [NewField] or [Uniform].
type Field struct {
	points []Point // no two at one place
	hull   []Point
	near   nearby
	spread float64 // metres
}

// ErrNoReadings says that there is nothing to interpolate.
var ErrNoReadings = errors.New("no light readings; add light.readings to the arena, or give the light itself")

// NewField builds the field of some readings. Readings at one place are
// averaged. A reading that is not above 0 or not finite is refused.
func NewField(points []Point) (*Field, error) {
	if len(points) == 0 {
		return nil, ErrNoReadings
	}
	for _, p := range points {
		if !(p.Lux > 0) || math.IsInf(float64(p.Lux), 0) || math.IsNaN(p.At.X+p.At.Y) || math.IsInf(p.At.X+p.At.Y, 0) {
			return nil, fmt.Errorf("reading of %v lx at (%v, %v) m: light and place must be finite, the light above 0",
				float64(p.Lux), p.At.X, p.At.Y)
		}
	}
	f := &Field{points: merge(points)}
	for _, p := range f.points {
		f.spread = max(f.spread, p.At.Sub(f.points[0].At).Len())
	}
	if f.spread > 0 {
		f.near = nearbyOf(f.points)
	}
	f.hull = hull(f.points)
	return f, nil
}

// Uniform is a field of the same light everywhere, which counts as measured.
func Uniform(lux unit.Illuminance) *Field {
	return &Field{points: []Point{{Lux: lux}}, spread: math.Inf(1)}
}

// Survey returns the readings of an arena as points of the light on a flat meter.
func Survey(l arena.Light) []Point {
	return surveyOf(l, false)
}

// merge averages readings at one place, keeping the order of first sight.
func merge(points []Point) []Point {
	var out []Point
	var counts []float64
	squares := map[[2]int64][]int{} // of side flat: readings at one place lie in squares that touch
	for _, p := range points {
		x, y := int64(math.Floor(p.At.X/flat)), int64(math.Floor(p.At.Y/flat))
		met := none
		for k := range int64(9) {
			for _, i := range squares[[2]int64{x + k%3 - 1, y + k/3 - 1}] {
				if out[i].At.Sub(p.At).Len() < flat && (met == none || i < met) {
					met = i
				}
			}
		}
		if met == none {
			squares[[2]int64{x, y}] = append(squares[[2]int64{x, y}], len(out))
			out, counts = append(out, p), append(counts, 1)
			continue
		}
		counts[met]++
		out[met].Lux += (p.Lux - out[met].Lux) / unit.Illuminance(counts[met])
	}
	return out
}

// At returns the light at a place on the ice (metres, rink frame) and whether
// the place lies outside the readings, where the light of the nearest point
// between them is taken.
func (f *Field) At(q geom.Vec2) (lux unit.Illuminance, extrapolated bool) {
	return f.at(q, new(cell))
}

// at is At with room to work in.
func (f *Field) at(q geom.Vec2, room *cell) (lux unit.Illuminance, extrapolated bool) {
	if len(f.points) == 1 {
		return f.points[0].Lux, !math.IsInf(f.spread, 1) && f.points[0].At.Sub(q).Len() > flat
	}
	b := against(f.hull, q)
	if b.inside {
		return unit.Illuminance(f.natural(q, room)), false
	}
	return unit.Illuminance(b.lux), b.off > 2*flat
}

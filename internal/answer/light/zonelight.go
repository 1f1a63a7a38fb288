package light

import (
	"slices"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// ZoneLight is the light of one zone of the ice.
type ZoneLight struct {
	Zone                    string
	Low, Median, High, Mean unit.Illuminance
	// Uniformity is the lowest light over the mean, a share (EN 12193).
	Uniformity float64
	// Extrapolated is the share of the zone that lies outside the readings.
	Extrapolated float64
}

// Over returns the light of a zone; ok is false when none of it is on the ice.
func (f *Field) Over(r rink.Rink, z Zone) (zl ZoneLight, ok bool) {
	return f.over(z.ID, z.places(r))
}

// OverIce returns the light of the whole ice, named "ice".
func (f *Field) OverIce(r rink.Rink) (zl ZoneLight, ok bool) {
	d := r.Dimensions()
	end := geom.Vec2{X: d.Length.Metres() / 2, Y: d.Width.Metres() / 2}
	return f.over("ice", Zone{Min: end.Scale(-1), Max: end}.places(r))
}

func (f *Field) over(id string, places []geom.Vec2) (ZoneLight, bool) {
	if len(places) == 0 {
		return ZoneLight{}, false
	}
	lux := make([]unit.Illuminance, len(places))
	sum, outside := unit.Illuminance(0), 0
	var room cell
	for i, p := range places {
		e, beyond := f.at(p, &room)
		lux[i] = e
		sum += lux[i]
		if beyond {
			outside++
		}
	}
	slices.Sort(lux)
	n := len(lux)
	z := ZoneLight{
		Zone: id, Low: lux[0], Median: (lux[(n-1)/2] + lux[n/2]) / 2, High: lux[n-1],
		Mean: sum / unit.Illuminance(n), Extrapolated: float64(outside) / float64(n),
	}
	z.Uniformity = float64(z.Low / z.Mean)
	return z, true
}

package light

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

func northAmerican(t interface{ Fatal(...any) }) rink.Rink {
	r, err := rink.Standard(rink.NorthAmerican)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The North American zones in feet: goal line 89, circle tops 54, spots (69,
// 22), neutral-zone edge of the blue line 25, boards 100 x 42.5 from centre ice.
func TestZonesOfTheBook(t *testing.T) {
	want := map[string][4]float64{ // x0, y0, x1, y1
		"end-B": {25, -42.5, 100, 42.5}, "slot-B": {54, -22, 89, 22}, "neutral": {-25, -42.5, 25, 42.5},
		"corner-B-box": {69, 22, 100, 42.5}, "corner-A-bench": {-100, -42.5, -69, -22},
	}
	met := 0
	for _, z := range Zones(northAmerican(t)) {
		w, ok := want[z.ID]
		if !ok {
			continue
		}
		met++
		for i, got := range []float64{z.Min.X, z.Min.Y, z.Max.X, z.Max.Y} {
			if math.Abs(got/0.3048-w[i]) > 1e-9 {
				t.Errorf("%s: side %d at %v ft, want %v", z.ID, i, got/0.3048, w[i])
			}
		}
	}
	if met != len(want) {
		t.Errorf("met %d of %d zones", met, len(want))
	}
}

// Every zone has places on the ice, also on a bare sheet, and all of the ice
// lies in an end zone or the neutral zone.
func TestZonesCoverTheIce(t *testing.T) {
	bare, err := rink.New(rink.Dimensions{Length: 40, Width: 18, CornerRadius: 4})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range []rink.Rink{northAmerican(t), bare} {
		zones := Zones(r)
		if len(zones) != 9 {
			t.Fatalf("%d zones", len(zones))
		}
		length := 0.0
		for _, z := range zones {
			places := z.places(r)
			if len(places) == 0 {
				t.Errorf("%s has no ice", z.ID)
			}
			for _, p := range places {
				if !r.Contains(p) {
					t.Errorf("%s: %v is off the ice", z.ID, p)
				}
			}
			switch z.ID {
			case "end-A", "neutral", "end-B":
				length += z.Max.X - z.Min.X
			}
		}
		if math.Abs(length-r.Dimensions().Length.Metres()) > 1e-9 {
			t.Errorf("end, neutral and end zone are %v long together", length)
		}
	}
}

// EN 12193, ice hockey class I: 750 lx with uniformity 0.7. An even slope of
// 700 to 800 lx along the rink has mean 750 and uniformity near 700/750.
func TestStatisticsOfASlope(t *testing.T) {
	r := northAmerican(t)
	var points []Point
	for _, x := range []float64{-30.48, 30.48} {
		for _, y := range []float64{-13, 13} {
			p := Point{Lux: unit.Illuminance(750 + x*50/30.48)}
			p.At.X, p.At.Y = x, y
			points = append(points, p)
		}
	}
	ice, ok := fieldOf(t, points).OverIce(r)
	if !ok {
		t.Fatal("no ice")
	}
	if math.Abs(ice.Mean.Lux()-750) > 1e-6 || math.Abs(ice.Median.Lux()-750) > 1 || ice.Extrapolated != 0 {
		t.Errorf("%+v", ice)
	}
	if math.Abs(ice.Uniformity-700.0/750) > 0.01 {
		t.Errorf("uniformity %v", ice.Uniformity)
	}
}

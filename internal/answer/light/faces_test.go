package light

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

func faceReport(t *testing.T, l arena.Light, uniform unit.Maybe[unit.Illuminance]) (Row, string) {
	t.Helper()
	a := demo(t)
	a.Light = l
	r, err := Compute(a, Request{Wanted: Usual(), Uniform: uniform})
	if err != nil {
		t.Fatal(err)
	}
	said := ""
	for _, n := range r.Notes {
		said += n.In(unit.Metric) + " "
	}
	return r.Holes[0].Zones[0], said
}

// Flat readings of 1000 lx: faces get 600 lx, or the share of the arena file, so
// that the ISO for faces is the flat one over the share; and the note says so.
func TestFacesGetAShareOfFlatReadings(t *testing.T) {
	readings := []arena.Reading{{Lux: 1000}}
	for _, c := range []struct {
		upright unit.Maybe[float64]
		share   float64
		words   string
	}{{unit.Maybe[float64]{}, 0.6, "60 % of a flat meter's light (common practice, no published source"}, {unit.Known(0.75), 0.75, "75 % of a flat meter's light (light.upright-share"}} {
		for _, uniform := range []unit.Maybe[unit.Illuminance]{{}, unit.Known(unit.Illuminance(800))} {
			row, said := faceReport(t, arena.Light{Readings: readings, Upright: c.upright}, uniform)
			if math.Abs(row.FaceLux.Lux()-c.share*row.Median.Lux()) > 1e-9 || math.Abs(float64(row.Faces.ISO)*c.share-float64(row.ISO)) > 1e-6 || !strings.Contains(said, c.words) {
				t.Errorf("share %g: faces %v of %v, ISO %v of %v, said %q", c.share, row.FaceLux, row.Median, row.Faces.ISO, row.ISO, said)
			}
		}
	}
}

// A body that takes ISO 2000 at most is within it by a flat meter of 1000 lx, which
// asks for ISO 1960 (C = 250, f/2.8, 1/1000 s), and past it for faces, which ask for 3267.
func TestFacesPassTheBodysLimitFirst(t *testing.T) {
	a := demo(t)
	a.Light = arena.Light{Readings: []arena.Reading{{Lux: 1000}}}
	r, err := Compute(a, Request{Wanted: Usual(), Body: kit.Body{ISOMax: 2000}})
	if err != nil {
		t.Fatal(err)
	}
	if row := r.Holes[0].Zones[0]; row.OverISO || !row.OverISOFaces {
		t.Errorf("flat ISO %v over 2000: %v; faces %v: %v", row.ISO, row.OverISO, row.Faces.ISO, row.OverISOFaces)
	}
}

// A meter held upright measures what faces get: it is not taken for flat light
// where flat readings stand, and stands in for them, by the share, where none do.
func TestUprightReadingsAreForFaces(t *testing.T) {
	flatOnly := arena.Reading{At: geom.Vec2{X: 3}, Lux: 1000}
	upright := arena.Reading{Lux: 450, Facing: "box"}
	there := arena.Reading{Lux: 1000}
	row, said := faceReport(t, arena.Light{Readings: []arena.Reading{there, upright}}, unit.Maybe[unit.Illuminance]{})
	if row.Median != 1000 || math.Abs(row.FaceLux.Lux()-450) > 1e-9 || !strings.Contains(said, "of 1 readings taken upright, of 2") {
		t.Errorf("both in one place: flat %v, faces %v, said %q", row.Median, row.FaceLux, said)
	}
	row, _ = faceReport(t, arena.Light{Readings: []arena.Reading{upright}}, unit.Maybe[unit.Illuminance]{})
	if math.Abs(row.Median.Lux()-750) > 1e-9 || math.Abs(row.FaceLux.Lux()-450) > 1e-9 {
		t.Errorf("upright alone: flat %v, faces %v", row.Median, row.FaceLux)
	}
	got := surveyOf(arena.Light{Readings: []arena.Reading{flatOnly, upright}}, true)
	if len(got) != 2 || math.Abs(got[0].Lux.Lux()-600) > 1e-9 || got[1].Lux != 450 {
		t.Errorf("faces' readings %v", got)
	}
}

package light

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

func TestColourFollowsTheSurvey(t *testing.T) {
	at := func(x, kelvin float64) arena.Reading {
		r := arena.Reading{At: geom.Vec2{X: x}, Lux: 900}
		if kelvin > 0 {
			r.Colour = unit.Known(kelvin)
		}
		return r
	}
	for _, c := range []struct {
		name    string
		light   arena.Light
		x, want float64
		assumed bool
	}{
		{"nothing told", arena.Light{}, 5, 4000, true},
		{"readings without colour", arena.Light{Readings: []arena.Reading{at(0, 0)}}, 5, 4000, true},
		{"the hall's", arena.Light{Colour: unit.Known(5000.0)}, 5, 5000, false},
		{"at a reading", arena.Light{Readings: []arena.Reading{at(-10, 3000), at(10, 6000)}}, -10, 3000, false},
		{"half way in mired", arena.Light{Readings: []arena.Reading{at(-10, 3000), at(10, 6000)}}, 0, 4000, false},
		{"a reading that tells none is as the hall", arena.Light{Colour: unit.Known(6000.0), Readings: []arena.Reading{at(-10, 3000), at(10, 0)}}, 10, 6000, false},
	} {
		got := ColourOf(c.light)
		if k := got.At(geom.Vec2{X: c.x}); math.Abs(k-c.want) > 1e-6 || got.Assumed != c.assumed {
			t.Errorf("%s: %.1f K, assumed %v; want %.0f K, %v", c.name, k, got.Assumed, c.want, c.assumed)
		}
	}
}

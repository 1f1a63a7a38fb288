package book

import (
	"errors"
	"math"
	"slices"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// lightLines is how many lines of one value the map of the light has at least.
const lightLines = 4

// mapLight maps the light of the survey's readings over the ice; nil without any.
func (c *Content) mapLight() (*chart.Heat, error) {
	field, err := light.NewField(light.Survey(c.Arena.Light))
	if errors.Is(err, light.ErrNoReadings) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	grid, err := sight.NewGrid(c.Arena.Rink, heatStep)
	if err != nil {
		return nil, err
	}
	at := func(p geom.Vec2) (lux float64, guessed bool) {
		v, outside := field.At(p)
		return v.Lux(), outside
	}
	return c.valued(grid, "light on the ice, with lines between the readings", at, func(v float64) string { return unit.Illuminance(v).Format(c.Options.Units) }), nil
}

// valued maps a quantity over the ice with lines at round values between its
// least and its most, where it is no guess.
func (c *Content) valued(g *sight.Grid, title string, of func(geom.Vec2) (v float64, guessed bool), say func(float64) string) *chart.Heat {
	h := unknownOn(g, title)
	h.Guessed = make([]bool, len(h.Values))
	low, high := math.Inf(1), math.Inf(-1)
	for i := range h.Values {
		p := g.At(i%g.Columns, i/g.Columns)
		if !c.Arena.Rink.Contains(p) {
			continue
		}
		v, guessed := of(p)
		h.Values[i], h.Guessed[i] = v, guessed
		low, high = min(low, h.Values[i]), max(high, h.Values[i])
	}
	span := max(high-low, math.SmallestNonzeroFloat64)
	for i := range h.Values {
		h.Values[i] = (h.Values[i] - low) / span
	}
	h.Low, h.High = say(low), say(high)
	for _, v := range chart.RoundValues(low, high, lightLines) {
		h.Lines = append(h.Lines, chart.Contour{At: (v - low) / span, Label: say(v)})
	}
	return h
}

// unknownOn is a map over a grid of which no value is known.
func unknownOn(g *sight.Grid, title string) *chart.Heat {
	h := chart.HeatOn(g, title)
	h.Values = slices.Repeat([]float64{math.NaN()}, g.Columns*g.Rows)
	return h
}

// tallness maps how much of the frame's height a standing player fills, with
// lines at a quarter, a third, a half and the whole, where some lens can be
// aimed; elsewhere nothing. The player is so many metres tall. Share = height / (2 distance tan(half angle)).
func tallness(seen sight.Reach, player float64, lens string, c fit.Case) *chart.Heat {
	h := unknownOn(seen.Grid, "share of the frame's height that a player fills, "+lens)
	for i, part := range seen.Parts(0) {
		away := seen.Grid.At(i%seen.Grid.Columns, i/seen.Grid.Columns).Sub(seen.Eye.At).Len()
		if part > 0 && away > 0 {
			h.Values[i] = player / (2 * away * c.TanY)
		}
	}
	h.Low, h.High = "none", "all of it"
	for _, v := range []struct {
		at    float64
		label string
	}{{1.0 / 6, "1/6"}, {1.0 / 4, "1/4"}, {1.0 / 3, "1/3"}, {1.0 / 2, "1/2"}, {1, "all"}} {
		h.Lines = append(h.Lines, chart.Contour{At: v.at, Label: v.label})
	}
	return h
}

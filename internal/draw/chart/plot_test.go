package chart_test

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"pgregory.net/rapid"
)

func sampleFit(t testing.TB) chart.Fit {
	t.Helper()
	c, err := fit.Setup{
		Hole: unit.Size{W: 0.1397, H: 0.1143}, Corner: 0.0127, Thick: 0.0159, Nose: 0.09,
		Focal: 0.07, Stop: 2.8, Sensor: unit.Size{W: 0.036, H: 0.024},
	}.Case()
	if err != nil {
		t.Fatal(err)
	}
	return chart.Fit{Hole: "B1", Lens: "70-200 mm at 70 mm, f/2.8", Limits: c.Limits().Pan, Rows: c.Loss(5 * unit.Degree).Pan}
}

func TestFitChartsSayTheLimits(t *testing.T) {
	f := sampleFit(t)
	clear, ok := f.Limits.Clear.Get()
	if !ok {
		t.Fatal("no clear limit")
	}
	d := chart.FitChart(f, 130, 75)
	checkTexts(t, "fit chart", d, 12)
	found := false
	for _, b := range d.TextBoxes() {
		found = found || strings.HasPrefix(b.S, "clean ") && strings.Contains(b.S, "°")
	}
	if !found {
		t.Errorf("the fit chart does not say that pan is clean to %.1f°", clear.Degrees())
	}
}

// A lens that does not fit at all leaves a chart without lines or limits, and
// one that never fails has no limit to mark.
func TestFitChartWithoutAnswers(t *testing.T) {
	for name, f := range map[string]chart.Fit{
		"nothing": {Hole: "B1", Lens: "wide"},
		"dark":    {Hole: "B1", Lens: "dark", Rows: []fit.LossRow{{}, {Angle: unit.Degree}}},
		"endless": {Hole: "B1", Lens: "free", Limits: fit.AxisLimits{Body: unit.Known(89.9 * unit.Degree)}},
	} {
		checkTexts(t, name, chart.FitChart(f, 120, 70), 5)
	}
}

// Whatever is plotted, texts keep apart and the sheet keeps its size.
func TestPlotsHoldTogether(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p := chart.Plot{Name: "p", Title: "A plot", X: chart.Axis{Name: "x, no unit"}, Y: chart.Axis{Name: "y, no unit", FromZero: rapid.Bool().Draw(rt, "zero")}}
		value := rapid.OneOf(rapid.Float64Range(-100, 100), rapid.Float64Range(1e4, 1e5), rapid.Just(math.NaN()), rapid.Just(math.Inf(1)))
		for range rapid.IntRange(0, 6).Draw(rt, "series") {
			s := chart.Series{Name: "series", Steps: rapid.Bool().Draw(rt, "steps")}
			for i := range rapid.IntRange(0, 30).Draw(rt, "points") {
				s.Points = append(s.Points, chart.XY{X: float64(i), Y: value.Draw(rt, "y")})
			}
			p.Series = append(p.Series, s)
		}
		d := p.Draw(rapid.Float64Range(90, 200).Draw(rt, "width"), rapid.Float64Range(70, 120).Draw(rt, "height"))
		for _, c := range sheet.Collisions(d.TextBoxes(), 0.1) {
			rt.Fatalf("%q at %.1f meets %q at %.1f", c[0].S, c[0].Box, c[1].S, c[1].Box)
		}
		if svg := string(sheet.SVG(d)); strings.Contains(svg, "NaN") || strings.Contains(svg, "Inf") {
			rt.Fatal("a number in the file is not finite")
		}
	})
}

// TestIntervalsReachTheirLimits: a bar goes from its low to its high limit, or ends open
// at the axis' end where little was seen; no text stands on another.
func TestIntervalsReachTheirLimits(t *testing.T) {
	d := chart.Intervals{Name: "season", Title: "Incidents by hole", Axis: "incidents in 1000 hours open", Rows: []chart.Interval{
		{Name: "A1", Note: "12 in 55 h", At: 218, Low: 113, High: 381}, {Name: "B2", Note: "0 in 1 h", Low: 0, High: 3689},
	}}.Draw(180, 50)
	svg := string(sheet.SVG(d))
	for _, words := range []string{"A1", "12 in 55 h", "0 in 1 h", "incidents in 1000 hours open", "<title>Incidents by hole</title>"} {
		if !strings.Contains(svg, words) {
			t.Errorf("the chart lacks %q", words)
		}
	}
	if over := sheet.Collisions(d.TextBoxes(), 0); len(over) > 0 {
		t.Errorf("texts meet: %v", over)
	}
	if empty := (chart.Intervals{Name: "season", Rows: []chart.Interval{{Name: "A1"}}}).Draw(60, 40); len(sheet.SVG(empty)) == 0 {
		t.Error("nothing drawn of a row without incidents")
	}
}

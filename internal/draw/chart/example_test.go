package chart_test

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/arena"
)

func ExamplePlanMap() {
	doc, err := arena.Demo()
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := doc.Check()
	if err != nil {
		fmt.Println(err)
		return
	}
	d := chart.PlanMap(chart.Content{Arena: a, Status: map[string]rules.Status{"B1": rules.Pass}}, 277)
	fmt.Println(d.Title)
	fmt.Println(strings.Contains(string(sheet.InlineSVG(d)), `data-hole="B1"`))
	// Output:
	// Plan map of Tidewater Pavilion
	// true
}

func ExamplePlot() {
	p := chart.Plot{
		Name: "bound", Title: "Bound while searching",
		X: chart.Axis{Name: "nodes, thousands"}, Y: chart.Axis{Name: "value, no unit"},
		Series: []chart.Series{
			{Name: "best found", Steps: true, Points: []chart.XY{{X: 0, Y: 0.4}, {X: 3, Y: 0.7}}},
			{Name: "bound", Steps: true, Points: []chart.XY{{X: 0, Y: 1.2}, {X: 3, Y: 0.8}}},
		},
		Marks: []chart.RefLine{{Words: "optimal", At: 3, Strong: true}},
	}
	d := p.Draw(120, 70)
	fmt.Printf("%g x %g mm\n", d.W, d.H)
	// Output:
	// 120 x 70 mm
}

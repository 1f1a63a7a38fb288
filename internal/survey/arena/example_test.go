package arena_test

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

const pond = `rinkpane: arena 1
name: Pond
units: metric
rink: {standard: international}
boards: {height: 107 cm}
panes:
  - {id: P1, from: {corner: B-bench, landmark: goal-line, offset: 0 m}, width: 1.2 m, height: 2.4 m}
holes:
  - id: H1
    place: {corner: B-bench, landmark: goal-line, offset: -0.6 m}
    height: 147 cm   # measured twice
    size: 140 x 114 mm
`

func ExampleDocument_Check() {
	d, err := arena.Read("pond.yaml", strings.NewReader(pond))
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := d.Check()
	if err != nil {
		fmt.Println(err)
		return
	}
	h, _ := a.Hole("H1")
	fmt.Println(h.Pane, a.PlaceOf(h.Station).Say(unit.Metric))
	_, err = arena.Read("pond.yaml", strings.NewReader("name: Pond\n\tunits: metric\n"))
	fmt.Println(err)
	// Output:
	// P1 B-bench goal line, 600 mm back
	// pond.yaml:2:1: not valid YAML: found a tab character that violates indentation; indent with spaces, not with tabs
}

func ExampleDocument_Set() {
	d, err := arena.Read("pond.yaml", strings.NewReader(pond))
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err = d.Set("holes[H1].height", form.Text("1.5 m"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, line := range strings.Split(string(d.Bytes()), "\n") {
		if strings.Contains(line, "twice") {
			fmt.Println(line)
		}
	}
	// Output:
	//     height: 1.5 m   # measured twice
}

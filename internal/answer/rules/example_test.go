package rules_test

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
)

func Example() {
	set, err := rules.Read("house.yaml", strings.NewReader(`
rinkpane: rules 1
id: house
name: the rules of one house
status: an example
rules:
  - kind: most-in-all
    most: 6
  - kind: hole-size
    size: 5.5 in x 4.5 in
    tolerance: 1/8 in
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := rink.Standard("north-american")
	if err != nil {
		fmt.Println(err)
		return
	}
	a := arena.Arena{Rink: r, Units: unit.Imperial, Holes: []glass.Hole{
		{ID: "B1", Size: unit.Size{W: 6 * unit.Inch, H: 4.5 * unit.Inch}},
	}}
	sets, err := rules.InForce(set)
	if err != nil {
		fmt.Println(err)
		return
	}
	report := sets.Check(a)
	fmt.Println(report.Verdict)
	for _, f := range report.Findings {
		fmt.Println(f.Status, "-", f.Say(unit.Imperial))
	}
	// Output:
	// fail
	// pass - Nothing to do: the whole rink holds 1 of at most 6 (B1).
	// fail - Make hole B1 5 1/2 x 4 1/2 in wide and high, within 1/8 in: it is 6 x 4 1/2 in.
	// unknown - Survey the pane of hole B1: none is recorded there.
	// unknown - Find out what the pane of hole B1 is made of and record it: a hole is allowed in acrylic, polycarbonate, tempered or laminated.
}

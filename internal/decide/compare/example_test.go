package compare_test

import (
	"bytes"
	"context"
	"fmt"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/compare"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/words"
)

func text(s string) form.Entry { return form.Text(s) }

// Two plans of the demo arena: as it is, and with one hole a hand lower.
func Example() {
	k, err := kit.Default()
	if err != nil {
		panic(err)
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		panic(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		panic(err)
	}
	maker := plan.Maker{Kit: k, Rules: sets}
	demo, err := arena.Demo()
	if err != nil {
		panic(err)
	}
	lower, err := arena.Read("lower.yaml", bytes.NewReader(demo.Bytes()))
	if err != nil {
		panic(err)
	}
	if lower, err = lower.Set("holes[B2].height", text("54 in")); err != nil {
		panic(err)
	}
	before, err := maker.Make(context.Background(), demo)
	if err != nil {
		panic(err)
	}
	after, err := maker.Make(context.Background(), lower)
	if err != nil {
		panic(err)
	}
	c := compare.Plans(before, after)
	fmt.Println(words.Compared(c))
	for _, h := range c.Holes {
		for _, said := range words.Became(h, unit.Imperial) {
			fmt.Println(h.ID+":", said)
		}
	}
	// Output:
	// 1 hole moved.
	// B2: 4 in lower
}

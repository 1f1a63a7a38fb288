package say_test

import (
	"fmt"
	"testing"

	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

func ExampleMake() {
	s := say.Make("Move hole %s %s or more.", "B1", say.AtLeast(80*unit.Millimetre))
	fmt.Println(s.In(unit.Metric))
	fmt.Println(s.In(unit.Imperial))
	// Output:
	// Move hole B1 80 mm or more.
	// Move hole B1 3 3/16 in or more.
}

func TestAmountsAreSetInTheReadersUnits(t *testing.T) {
	half := unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}
	for _, c := range []struct {
		of               say.Sentence
		metric, imperial string
	}{
		{say.Make("%s wide", 101*unit.Millimetre), "101 mm wide", "4 in wide"},
		{say.Make("%s", half), "140 x 114 mm", "5 1/2 x 4 1/2 in"},
		{say.Make("%s", say.AtLeast(100.04*unit.Millimetre)), "101 mm", "4 in"},
		{say.Make("%s", say.AtMost(100.96*unit.Millimetre)), "100 mm", "3 15/16 in"},
		{say.Make("%s", say.Fine(114.3*unit.Millimetre)), "114.3 mm", "4 1/2 in"},
		{say.Make("%d of %s", 3, say.Make("%s", unit.Inch)), "3 of 25.4 mm", "3 of 1 in"},
		{say.Sentence{}, "", ""},
	} {
		if got := c.of.In(unit.Metric); got != c.metric {
			t.Errorf("metric: %q, want %q", got, c.metric)
		}
		if got := c.of.In(unit.Imperial); got != c.imperial {
			t.Errorf("imperial: %q, want %q", got, c.imperial)
		}
	}
	if (say.Sentence{}).IsZero() == say.Make("x").IsZero() {
		t.Error("a sentence with words is not zero")
	}
}

package unit_test

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
)

// A length as a rink worker writes it, and as each system prints it.
func ExampleParseLength() {
	l, err := unit.ParseLength("4½ in")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(l.Metres(), l.FormatFine(unit.Metric), l.FormatFine(unit.Imperial))
	_, err = unit.ParseLength("4.5")
	fmt.Println(err)
	// Output:
	// 0.1143 114.3 mm 4 1/2 in
	// length "4.5": a bare number; a length needs its unit, as in "4.5 in", "4.5 mm" or "4.5 m"
}

func ExampleParseShutter() {
	t, err := unit.ParseShutter("1/1000 s")
	fmt.Println(t.Seconds(), t.Format(), err)
	// Output: 0.001 1/1000 s <nil>
}

// A survey may lack a number; nobody mistakes that for zero.
func ExampleMaybe() {
	var thick unit.Maybe[unit.Length]
	_, known := thick.Get()
	fmt.Println(known, thick.Or(12*unit.Millimetre).Format(unit.Metric))
	// Output: false 12 mm
}

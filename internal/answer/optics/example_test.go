package optics_test

import (
	"fmt"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
)

// How deep is the sharp range of a 200 mm lens at f/2.8 on a skater 15 m away?
func ExampleDepthOfField() {
	d, err := optics.DepthOfField(200*unit.Millimetre, 2.8, 0.03*unit.Millimetre, 15)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f to %.2f m\n", d.Near.Metres(), d.Far.Metres())
	// Output: 14.55 to 15.48 m
}

// What does a half-inch acrylic pane do to a ray at 45 degrees?
func ExamplePlate_Pass() {
	p, err := optics.Plate{Index: 1.491, Thickness: unit.Inch / 2}.Pass(45 * unit.Degree)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("shift %s, %.1f %% through\n", p.Shift.Format(unit.Metric), 100*p.Transmission)
	// Output: shift 4.14 mm, 90.6 % through
}

// Which ISO does 1000 lx ask for at 1/1000 s and f/2.8?
func ExampleCalibration_ISO() {
	exact := optics.DefaultCalibration.ISO(1000, 0.001, 2.8)
	fmt.Printf("%.0f, set %s\n", float64(exact), optics.NearestISO(exact).Text)
	// Output: 1960, set 2000
}

package fit_test

import (
	"fmt"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/measure/unit"
)

func Example() {
	const mm = unit.Millimetre
	c, err := fit.Setup{
		Hole: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}, Corner: unit.Inch / 2, Thick: unit.Inch / 2,
		Nose: 89 * mm, Focal: 200 * mm, Stop: 2.8, Sensor: unit.Size{W: 36 * mm, H: 24 * mm},
	}.Case()
	if err != nil {
		fmt.Println(err)
		return
	}
	l := c.Limits()
	body, _ := l.Pan.Body.Get()
	usable, _ := l.Pan.Usable.Get()
	fmt.Printf("enters: %v, pans to %.1f deg until it touches, keeps half the light to %.1f deg\n", l.Fits, body.Degrees(), usable.Degrees())
	v := c.At(60*unit.Degree, 0)
	fmt.Printf("at 60 deg: %.0f %% at the centre, %.0f %% at the worst corner\n", 100*v.Centre, 100*v.WorstCorner())
	// Output:
	// enters: true, pans to 84.8 deg until it touches, keeps half the light to 72.9 deg
	// at 60 deg: 87 % at the centre, 76 % at the worst corner
}

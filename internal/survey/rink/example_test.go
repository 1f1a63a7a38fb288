package rink_test

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// Where do the boards stand five feet back of the goal line?
func ExampleRink_FromLandmark() {
	r, err := rink.Standard(rink.NorthAmerican)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := r.FromLandmark(rink.BBench, rink.GoalLine, -5*unit.Foot)
	if err != nil {
		fmt.Println(err)
		return
	}
	p := r.Point(s)
	fmt.Printf("station %s, at (%.2f, %.2f) m\n", s.Format(unit.Imperial), p.X, p.Y)
	// Output: station 95 ft 3 1/4 in, at (28.25, -10.17) m
}

// A rink of one's own is checked before it is used.
func ExampleNew() {
	_, err := rink.New(rink.Dimensions{Length: 56, Width: 26, CornerRadius: 14})
	fmt.Println(err)
	// Output: corner radius 14 m (45 ft 11 1/4 in): must lie between 0 and half the smaller side, 13 m (42 ft 7 3/4 in)
}

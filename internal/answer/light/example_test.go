package light_test

import (
	"fmt"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// Three readings tell the light between them, and say when they do not reach.
func ExampleField_At() {
	f, err := light.NewField([]light.Point{
		{At: geom.Vec2{X: -20, Y: -10}, Lux: 800}, {At: geom.Vec2{X: 20, Y: -10}, Lux: 1200}, {At: geom.Vec2{X: 0, Y: 10}, Lux: 1000},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, at := range []geom.Vec2{{}, {X: 30, Y: -10}} {
		lux, outside := f.At(at)
		fmt.Println(lux.Format(unit.Metric), outside)
	}
	// Output:
	// 1000 lx false
	// 1200 lx true
}

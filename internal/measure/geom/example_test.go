package geom_test

import (
	"fmt"

	"example.org/rinkpane/internal/measure/geom"
)

func ExampleRoundRect_Shared() {
	// A tunnel of 140 x 114 mm, seen so that its far end is moved by 30 mm, and a
	// disc of 120 mm before it.
	hole := geom.RoundRect{HalfW: 70, HalfH: 57, Radius: 12}
	open := hole.Shared(geom.Vec2{X: 30})
	disc := geom.Ellipse{Centre: geom.Vec2{X: 15}, A: geom.Vec2{X: 60}, B: geom.Vec2{Y: 60}}
	area, _ := open.Overlap(disc)
	fmt.Printf("open %.0f mm2; the disc keeps %.1f %%\n", open.Area(), 100*area/disc.Area())
	// Output:
	// open 12416 mm2; the disc keeps 95.8 %
}

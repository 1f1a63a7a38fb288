package frame

import (
	"testing"

	"example.org/rinkpane/internal/measure/geom"
)

// What a stage draws of a polygon does not hang on what it cut before: once, one that was cut
// at one side and lay wholly outside another left both rooms of the stage in one place, and the
// next polygon overwrote itself.
func TestPolygonsOfAStageAreCutApart(t *testing.T) {
	c := Camera{Eye: geom.Vec3{Z: 1}, Right: geom.Vec3{Y: -1}, Up: geom.Vec3{Z: 1}, Forward: geom.Vec3{X: 1}, TanX: 0.5, TanY: 0.5}
	at := func(x, y, z float64) geom.Vec3 { return geom.Vec3{X: x, Y: y, Z: z} }
	half := []geom.Vec3{at(-5, 40, 0), at(10, 40, 0), at(10, 50, 2), at(-5, 50, 2)} // behind the eye in part, far to the left
	wide := []geom.Vec3{at(10, 0, 0), at(10, 30, 0), at(12, 30, 4), at(12, -30, 4), at(10, -30, 0)}
	want := newStage(c, 200, 200).polygon(wide...)
	used := newStage(c, 200, 200)
	used.polygon(wide...)
	if got := used.polygon(half...); got != nil {
		t.Fatalf("drawn: %v", got)
	}
	got := used.polygon(wide...)
	if len(want) < 4 || len(got) != len(want) {
		t.Fatalf("%d corners after another polygon, %d without", len(got), len(want))
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("corner %d at %v, without another polygon before at %v", i, got[i], want[i])
		}
	}
}

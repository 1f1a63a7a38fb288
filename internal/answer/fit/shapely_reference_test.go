package fit

import (
	_ "embed"
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
)

// The transmissions that testdata/ref/transmission.py wrote with python3-shapely 1.8.5.
//
//go:embed testdata/transmission.csv
var shapelyTable string

// TestTransmissionByShapely: shapely clips polygons of 1024 chords a quarter
// turn on the pupil's plane; that is right to 1e-6.
func TestTransmissionByShapely(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(shapelyTable), "\n")[1:]
	partly, straddling := 0, 0
	for i, line := range lines {
		var v [15]float64
		for k, field := range strings.Split(line, ",") {
			x, err := strconv.ParseFloat(field, 64)
			if err != nil {
				t.Fatalf("line %d: %v", i+2, err)
			}
			v[k] = x
		}
		c := Case{Width: v[0], Height: v[1], Corner: v[2], Thick: v[3], Nose: v[4], Pupil: v[5], PupilDepth: v[6], TanX: 1, TanY: 1}
		p := Pose{Nose: geom.Vec3{X: v[7], Y: v[8], Z: v[9]}, Pan: v[10], Tilt: v[11]}
		a := aimAt(p.Pan, p.Tilt)
		got := c.Transmission(p, a.toward(v[12], v[13]))
		if math.Abs(got-v[14]) > 2e-6 {
			t.Errorf("line %d: T %.8f, shapely %.8f", i+2, got, v[14])
		}
		if v[14] > 0.001 && v[14] < 0.999 {
			partly++
		}
		half := c.Pupil / 2 * a.sin
		if z := p.pupil(&c, &a).Z; z+half > -c.Thick && z-half < -c.Thick {
			straddling++
		}
	}
	if partly < 150 || straddling < 20 {
		t.Errorf("%d cases partly shaded, %d with the pupil across the rear face: too few", partly, straddling)
	}
}

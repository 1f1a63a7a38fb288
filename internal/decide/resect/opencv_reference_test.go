package resect_test

import (
	"context"
	"encoding/json"
	"math"
	"os"
	"testing"

	"example.org/rinkpane/internal/decide/resect"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// TestCamerasAgainstOpenCV holds cameras against OpenCV's solvePnP (4.6.0 of Debian,
// method SQPNP, refined by Levenberg-Marquardt), whose answers testdata/ref/solvepnp.py
// wrote down from its own numbers of the rule book's rink. OpenCV does not know that
// the eye stands behind the boards: on exact marks both find one camera, on marks with
// 1 px of noise they differ by less than half the ellipse.
func TestCamerasAgainstOpenCV(t *testing.T) {
	data, err := os.ReadFile("testdata/ref/solvepnp.json")
	if err != nil {
		t.Fatal(err)
	}
	var ref struct {
		Pixels [2]int
		Sensor unit.Length `json:"sensor_mm"`
		Cases  []struct {
			Focal unit.Length `json:"focal_mm"`
			Noise float64     `json:"noise_px"`
			Marks []struct {
				Landmark string
				X        float64 `json:"x_px"`
				Y        float64 `json:"y_px"`
			}
			Eye     [3]float64 `json:"eye_m"`
			Forward [3]float64
			Right   [3]float64
		}
	}
	if err := json.Unmarshal(data, &ref); err != nil {
		t.Fatal(err)
	}
	a := demo(t)
	flush := a
	flush.Boards.Setback = unit.Known(unit.Length(0))
	if len(ref.Cases) < 15 {
		t.Fatalf("%d cases", len(ref.Cases))
	}
	for i, c := range ref.Cases {
		f := resect.Frame{Pixels: ref.Pixels, Sensor: ref.Sensor * unit.Millimetre, Focal: resect.FocalExactly(c.Focal * unit.Millimetre)}
		for _, m := range c.Marks {
			f.Marks = append(f.Marks, resect.Pin{Landmark: m.Landmark, X: m.X, Y: m.Y})
		}
		got, err := resect.Solve(context.Background(), flush, []resect.Frame{f})
		if err != nil {
			t.Errorf("case %d: %v", i, err)
			continue
		}
		v := got.Frames[0]
		p, n := a.Rink.Point(v.Camera.Station), a.Rink.Normal(v.Camera.Station)
		eye := geom.Vec3{X: p.X, Y: p.Y, Z: v.Camera.Height.Metres()}.Sub(geom.Vec3{X: n.X, Y: n.Y}.Scale(v.Behind.Metres()))
		away := eye.Sub(geom.Vec3{X: c.Eye[0], Y: c.Eye[1], Z: c.Eye[2]}).Len()
		most := 0.001
		if c.Noise > 0 {
			most = got.Ellipse.Major.Metres() / 2
		}
		if away > most {
			t.Errorf("case %d: eye %.2f mm from OpenCV's, at most %.2f mm (noise %g px, %d marks)", i, 1000*away, 1000*most, c.Noise, len(c.Marks))
		}
		// OpenCV's attitude by angles: pan from straight through the boards toward
		// rising station, tilt up, roll with the camera's right up.
		tan := a.Rink.Tangent(v.Camera.Station)
		pan := math.Atan2(c.Forward[0]*tan.X+c.Forward[1]*tan.Y, c.Forward[0]*n.X+c.Forward[1]*n.Y)
		tilt, roll := math.Asin(c.Forward[2]), math.Asin(c.Right[2]/math.Cos(math.Asin(c.Forward[2])))
		for name, d := range map[string]float64{"pan": v.Pan.Radians() - pan, "tilt": v.Tilt.Radians() - tilt, "roll": v.Roll.Radians() - roll} {
			if math.Abs(d) > 1e-4+2e-3*c.Noise {
				t.Errorf("case %d: %s off by %.5f rad", i, name, d)
			}
		}
	}
}

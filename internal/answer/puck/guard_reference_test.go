package puck

import (
	"math"
	"math/rand"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// TestShareAgainstSingleShots throws single shots one by one, with the
// independent time integration of flight_reference_test.go, at a pane 9 m off,
// and counts those that come through the hole as a cloud of points. The
// package's sum is a density times a window, good for holes that are small
// against the distance; the hole here is large, so that hits are many.
func TestShareAgainstSingleShots(t *testing.T) {
	const w, h, thick, high, away = 0.5, 0.4, 0.012, 1.5, 9.0
	s := Shot{
		From: geom.Vec2{X: 0, Y: 0}, Aim: geom.Vec2{X: 4, Y: 0.3}, Weight: 1, TumblingShare: 1,
		Speed: 24, SpeedSD: 2, Elevation: 13 * unit.Degree, ElevationSD: 3 * unit.Degree, SideSD: 5 * unit.Degree,
	}
	// The pane stands at x = 9, turned by 25 degrees, the hole's centre on the x axis.
	normal := geom.Vec2{X: -math.Cos(25 * math.Pi / 180), Y: -math.Sin(25 * math.Pi / 180)}
	tangent := geom.Vec2{X: normal.Y, Y: -normal.X}
	p := place{at: geom.Vec2{X: away}, normal: normal, tangent: tangent, height: high}
	o := opening(t, w*1000, h*1000, thick*1000)
	sum := newTally(o, NewOrientations(4096))
	sum.add([]Shot{s}, p, goalFrames{})

	rng, cloud := rand.New(rand.NewSource(11)), newDisc()
	const shots = 10000
	through := 0
	for range shots {
		v := float64(s.Speed) + float64(s.SpeedSD)*rng.NormFloat64()
		up := s.Elevation.Radians() + s.ElevationSD.Radians()*rng.NormFloat64()
		turn := math.Atan2(0.3, 4) + s.SideSD.Radians()*rng.NormFloat64()
		dir := geom.Vec2{X: math.Cos(turn), Y: math.Sin(turn)}
		reach := p.at.Dot(normal) / dir.Dot(normal)
		z, speed := overTime(TumblingBody(), v, up, reach, 1e-3)
		along := dir.Scale(reach).Sub(p.at).Dot(tangent)
		// The climb at the pane from two points of the flight.
		before, _ := overTime(TumblingBody(), v, up, reach-0.05, 1e-3)
		climb := (z - before) / 0.05
		out := -dir.Dot(normal)
		d := cloud.turned(math.Acos(2*rng.Float64()-1), 2*math.Pi*rng.Float64())
		if speed > 0 && d.passes(along, z-high, dir.Dot(tangent)/out, climb/out, w, h, thick) {
			through++
		}
	}
	want := float64(through) / shots
	sd := math.Sqrt(want * (1 - want) / shots)
	if through < 200 {
		t.Fatalf("only %d shots came through, share %g", through, sum.share)
	}
	// 4 deviations of the count, and 3 % for a window that is no longer small.
	if math.Abs(sum.share-want) > 4*sd+0.03*want {
		t.Errorf("share %.5f, single shots %.5f +- %.5f", sum.share, want, sd)
	}
}

// The bounds of a Gaussian integral: summed over a whole wall the shots all arrive.
func TestDensitySumsToOne(t *testing.T) {
	s := Shot{
		From: geom.Vec2{}, Aim: geom.Vec2{X: 1}, Weight: 1, TumblingShare: 0.5,
		Speed: 30, SpeedSD: 2, Elevation: 12 * unit.Degree, ElevationSD: 2 * unit.Degree, SideSD: 5 * unit.Degree,
	}
	sum, n := 0.0, 0
	const step = 0.1
	for y := -12.0; y < 12; y += step {
		for z := 0.05; z < 9; z += step {
			p := place{at: geom.Vec2{X: 10, Y: y}, normal: geom.Vec2{X: -1}, tangent: geom.Vec2{Y: 1}, height: unit.Length(z)}
			s.arrivals(p, goalFrames{}, func(v arrival) { sum += v.perM2 * step * step; n++ })
		}
	}
	if n < 10000 || math.Abs(sum-1) > 2e-3 {
		t.Errorf("%d arrivals sum to %.5f", n, sum)
	}
}

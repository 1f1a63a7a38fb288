package puck

import (
	"math"
	"math/rand"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// disc is the independent model: a puck as a cloud of rim points, turned by
// a random rotation (three Euler angles with the right weights), moved to a
// random place and followed through both faces' outlines point by point. It
// shares no formula with the package.
type disc [][3]float64

func newDisc() disc {
	const rim = 120
	var d disc
	for i := range rim {
		s, c := math.Sincos(2 * math.Pi * float64(i) / rim)
		for _, y := range []float64{-12.7e-3, 12.7e-3} {
			d = append(d, [3]float64{38.1e-3 * c, y, 38.1e-3 * s})
		}
	}
	return d
}

// turned tilts the disc's axis by tilt and swings it by swing.
func (d disc) turned(tilt, swing float64) disc {
	st, ct := math.Sincos(tilt)
	ss, cs := math.Sincos(swing)
	out := make(disc, len(d))
	for i, p := range d {
		x, y, z := p[0]*ct-p[1]*st, p[0]*st+p[1]*ct, p[2] // about z
		out[i] = [3]float64{x*cs + z*ss, y, -x*ss + z*cs} // about y
	}
	return out
}

// passes reports whether the disc with its centre aimed at (cx, cy) of the
// rink face goes through a w x h opening of the thickness along the slopes.
func (d disc) passes(cx, cy, kx, ky, w, h, thick float64) bool {
	for _, p := range d {
		for _, z := range []float64{0, thick} { // the way into the pane counts positive here
			x := cx + p[0] + kx*(z-p[2])
			y := cy + p[1] + ky*(z-p[2])
			if math.Abs(x) > w/2 || math.Abs(y) > h/2 {
				return false
			}
		}
	}
	return true
}

func TestTumblingAgainstPointCloud(t *testing.T) {
	axes := NewOrientations(40000)
	cloud := newDisc()
	rng := rand.New(rand.NewSource(7))
	for _, c := range []struct{ w, h, thick, along, up float64 }{
		{139.7, 114.3, 12.7, 0, 0},
		{139.7, 114.3, 12.7, 35, 0},
		{139.7, 114.3, 12.7, -50, 8},
		{120, 90, 20, 20, -15},
	} {
		o := opening(t, c.w, c.h, c.thick)
		got := o.Tumbling(Flight{Along: unit.Angle(c.along) * unit.Degree, Up: unit.Angle(c.up) * unit.Degree}, axes)
		kx := math.Tan(c.along * math.Pi / 180)
		ky := math.Tan(c.up*math.Pi/180) / math.Cos(c.along*math.Pi/180)
		const draws = 60000
		hits, w, h := 0, c.w/1000, c.h/1000
		spanX, spanY := w/2+0.02, h/2+0.02 // the aim is at the rink face; the overlap of both faces lies within
		for range draws {
			// The axis is up (y) tilted from 0 to 180 deg with weight sin(tilt).
			d := cloud.turned(math.Acos(2*rng.Float64()-1), 2*math.Pi*rng.Float64())
			cx, cy := (2*rng.Float64()-1)*spanX, (2*rng.Float64()-1)*spanY
			if d.passes(cx, cy, kx, ky, w, h, c.thick/1000) {
				hits++
			}
		}
		p := float64(hits) / draws
		box := 4 * spanX * spanY
		want, sd := p*box, box*math.Sqrt(p*(1-p)/draws)
		if hits < 100 {
			t.Fatalf("%+v: only %d hits, the check says nothing", c, hits)
		}
		if math.Abs(got.AreaM2-want) > 4*sd {
			t.Errorf("%+v: area %.1f mm2, point cloud %.1f +- %.1f", c, got.AreaM2*1e6, want*1e6, sd*1e6)
		}
	}
}

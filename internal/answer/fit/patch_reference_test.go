package fit

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
)

// vec is a vector of the tracer below, which shares no code with the package.
type vec [3]float64

func (a vec) plus(k float64, b vec) vec { return vec{a[0] + k*b[0], a[1] + k*b[1], a[2] + k*b[2]} }
func (a vec) dot(b vec) float64         { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a vec) unit() vec                 { return vec{}.plus(1/math.Sqrt(a.dot(a)), a) }

// snell bends a ray of unit length at a face whose normal n points along the way,
// from index 1 into index k, by the law's vector form:
// v = u/k + (sqrt(1 - (1 - (u.n)^2)/k^2) - (u.n)/k) n.
func snell(u, n vec, k float64) vec {
	c := u.dot(n)
	return vec{}.plus(1/k, u).plus(math.Sqrt(1-(1-c*c)/(k*k))-c/k, n)
}

// rays is a brute-force tracer: a camera turned and tilted by two rotations, rays
// from the pupil's rim over the whole frame, bent as vectors at both faces. It
// returns the farthest places on the film across and up, whether all rays that
// leave are parallel to those that came, and the foremost point of the nose.
type rays struct{ nose, pupil, depth, tanX, tanY, thick, index float64 }

func (r rays) swing(pan, tilt float64) func(v vec) vec {
	sp, cp := math.Sincos(pan)
	st, ct := math.Sincos(tilt)
	return func(v vec) vec { // about X by tilt, then about Y by pan
		y, z := v[1]*ct+v[2]*st, v[2]*ct-v[1]*st
		return vec{v[0]*cp + z*sp, y, z*cp - v[0]*sp}
	}
}

// trace puts the pupil's centre at a distance behind the rear face, z = 0 there.
func (r rays) trace(t *testing.T, pan, tilt, behind float64, visit func(x, y float64)) {
	turn := r.swing(pan, tilt)
	n := vec{0, 0, 1}
	for i := -12; i <= 12; i++ {
		for k := -12; k <= 12; k++ {
			if max(i, -i, k, -k) < 12 { // the frame's edge alone
				continue
			}
			u := turn(vec{float64(i) / 12 * r.tanX, float64(k) / 12 * r.tanY, 1}).unit()
			in := snell(u, n, r.index)
			if out := snell(in, n, 1/r.index); math.Abs(out.dot(u)-1) > 1e-12 {
				t.Fatalf("a ray leaves the panel along %v, it came along %v", out, u)
			}
			for rim := range 180 {
				s, c := math.Sincos(2 * math.Pi * float64(rim) / 180)
				p := turn(vec{r.pupil / 2 * c, r.pupil / 2 * s, 0}).plus(-behind, n)
				p = p.plus(-p[2]/u[2], u)            // to the rear face
				p = p.plus((r.thick-p[2])/in[2], in) // to the film
				visit(p[0], p[1])
			}
		}
	}
}

// behind hunts the pupil's distance at which the nose's rim comes as near as 5 mm.
func (r rays) behind(pan, tilt float64) float64 {
	turn := r.swing(pan, tilt)
	most := math.Inf(-1)
	for rim := range 3600 {
		s, c := math.Sincos(2 * math.Pi * float64(rim) / 3600)
		most = max(most, turn(vec{r.nose / 2 * c, r.nose / 2 * s, r.depth})[2])
	}
	return most + 0.005
}

// The issue's own case: 20 mm f/2.8, its pupil 40 mm behind 12 mm of acrylic (index
// 1.49), turned by 15 degrees. A frame wider by the turn needs 147 x 64.0 mm; the
// rays of the turned frame and pupil need 149.2 x 80.9 mm.
func TestTurnedRaysNeedMoreThanAWiderFrame(t *testing.T) {
	r := rays{pupil: 0.02 / 2.8, tanX: 0.9, tanY: 0.6, thick: 0.012, index: 1.49}
	var w, h float64
	r.trace(t, 15*math.Pi/180, 0, 0.04, func(x, y float64) { w, h = max(w, 2e3*x), max(h, 2e3*y) })
	if math.Abs(w-149.2) > 0.2 || math.Abs(h-80.9) > 0.2 {
		t.Errorf("%.2f x %.2f mm", w, h)
	}
}

// TestPatchAgainstRays: for lenses from ultra-wide to tele, straight ahead, turned,
// tilted and both, no ray of the frame at any aim, coarse and between the steps,
// crosses the film outside the patch with its rounded corners; and the patch is
// no larger than the rays at the outermost aims ask for.
func TestPatchAgainstRays(t *testing.T) {
	const deg = math.Pi / 180
	cases := 0
	for _, lens := range []rays{
		{nose: 0.098, depth: 0.032, pupil: 0.014 / 2.8, tanX: 18.0 / 14, tanY: 12.0 / 14},
		{nose: 0.08, depth: 0.035, pupil: 0.02 / 2.8, tanX: 0.9, tanY: 0.6},
		{nose: 0.068, depth: 0.012, pupil: 0.05 / 1.8, tanX: 0.36, tanY: 0.24},
		{nose: 0.088, depth: 0.02, pupil: 0.2 / 2.8, tanX: 0.09, tanY: 0.06},
	} {
		for _, aims := range []Aims{{}, {Pan: 15 * unit.Degree}, {Down: 5 * unit.Degree, Up: 17 * unit.Degree}, {Pan: 15 * unit.Degree, Down: 4 * unit.Degree, Up: 16 * unit.Degree}} {
			lens.thick, lens.index = 0.0095, 1.5848
			c := Case{Width: 1, Height: 1, Thick: 0.01, Nose: lens.nose, Pupil: lens.pupil, PupilDepth: lens.depth, TanX: lens.tanX, TanY: lens.tanY}
			p, ok := c.Patch(Panel{lens.thick, lens.index}, aims).Get()
			if !ok {
				if lens.tanX < 1 {
					t.Errorf("%+v %+v: no patch", lens, aims)
				}
				continue
			}
			cases++
			w, h, r := p.Size.W.Metres()/2, p.Size.H.Metres()/2, p.Corner.Metres()
			var mostX, mostY float64
			for _, pan := range []float64{0, 0.37, 1} {
				for _, tilt := range []float64{0, 0.43, 1} {
					q, z := pan*aims.Pan.Radians(), tilt*(aims.Up+aims.Down).Radians()-aims.Down.Radians()
					lens.trace(t, q, z, lens.behind(q, z), func(x, y float64) {
						x, y = math.Abs(x), math.Abs(y)
						mostX, mostY = max(mostX, x), max(mostY, y)
						if dx, dy := x-(w-r), y-(h-r); x > w+1e-6 || y > h+1e-6 || dx > 0 && dy > 0 && math.Hypot(dx, dy) > r+2e-5 {
							t.Fatalf("%+v %+v: at pan %.1f, tilt %.1f a ray crosses the film at %.4f, %.4f mm, the patch is %.4f x %.4f with corners %.4f",
								lens, aims, q/deg, z/deg, x*1e3, y*1e3, w*1e3, h*1e3, r*1e3)
						}
					})
				}
			}
			if w > mostX+5e-5 || h > mostY+5e-5 {
				t.Errorf("%+v %+v: patch %.3f x %.3f mm, rays %.3f x %.3f", lens, aims, 2e3*w, 2e3*h, 2e3*mostX, 2e3*mostY)
			}
		}
	}
	if cases < 12 {
		t.Errorf("%d cases", cases)
	}
}

// Index 1 bends nothing: panel and air are one.
func TestPatchOfAir(t *testing.T) {
	c := Case{Width: 1, Height: 1, Thick: 0.01, Nose: 0.02, Pupil: 0.01, PupilDepth: 0.025, TanX: 1, TanY: math.Tan(math.Pi / 6)}
	p, ok := c.Patch(Panel{0.01, 1}, Aims{}).Get()
	if !ok || math.Abs(p.Size.W.Millimetres()-90) > 1e-9 || math.Abs(p.Size.H.Millimetres()-(10+80*math.Tan(math.Pi/6))) > 1e-9 || math.Abs(p.Corner.Millimetres()-5) > 1e-9 {
		t.Errorf("patch %+v", p)
	}
	if p.Within(unit.Size{W: 0.089, H: 0.089}) || !p.Within(unit.Size{W: 0.091, H: 0.091}) {
		t.Errorf("within: %.12f mm", p.Size.W.Millimetres())
	}
	if p, _ := c.Patch(Panel{}, Aims{}).Get(); math.Abs(p.Size.W.Millimetres()-70) > 1e-9 {
		t.Errorf("opening: %+v", p)
	}
}

func TestPatchRefuses(t *testing.T) {
	c := Case{Width: 1, Height: 1, Thick: 0.01, Nose: 0.02, Pupil: 0.01, PupilDepth: 0.025, TanX: math.Tan(math.Pi / 3), TanY: 0.6}
	if p := c.Patch(Panel{0.01, 1.5}, Aims{Pan: 20 * unit.Degree}); !p.IsZero() {
		t.Errorf("an endless patch of %+v", p)
	}
	l := kit.Lens{FocalMin: 24 * mm, FocalMax: 24 * mm, Stop: 2.8, Nose: 87 * mm}
	body := kit.Body{Sensor: unit.Size{W: 36 * mm, H: 24 * mm}}
	_, err := WindowPatch(glass.Window{ID: "w", Material: glass.Acrylic, Size: body.Sensor}, l, body, Aims{})
	if err == nil || !strings.Contains(err.Error(), "thickness must be recorded") {
		t.Errorf("error %v", err)
	}
}

// A 70-200 mm f/2.8 looks through a pupil of 71.4 mm at its long end, wider than
// at its short end by more than its view narrows: the patch clears both ends. By
// hand, at 200 mm in an opening: 71.43 + 2 (d + 5) 18/200 wide, d the pupil's depth.
func TestPatchClearsAZoomAtBothEnds(t *testing.T) {
	body := kit.Body{Sensor: unit.Size{W: 36 * mm, H: 24 * mm}}
	l := kit.Lens{ID: "zoom", FocalMin: 70 * mm, FocalMax: 200 * mm, Stop: 2.8, StopLong: 2.8, Nose: 88 * mm, PupilDepth: unit.Known(20 * mm)}
	w := glass.Window{ID: "w", Open: true, Size: unit.Size{W: 300 * mm, H: 200 * mm}}
	got, err := WindowPatch(w, l, body, Aims{})
	if err != nil {
		t.Fatal(err)
	}
	size := got.Or(Patch{}).Size
	wide, high := 200/2.8+2*25*18.0/200, 200/2.8+2*25*12.0/200
	if math.Abs(size.W.Millimetres()-wide) > 1e-6 || math.Abs(size.H.Millimetres()-high) > 1e-6 {
		t.Errorf("patch %v, want %.3f x %.3f mm", size, wide, high)
	}
	for _, f := range []unit.Length{70, 85, 135, 200} {
		one := l
		one.FocalMin, one.FocalMax = f*mm, f*mm
		if p, err := WindowPatch(w, one, body, Aims{}); err != nil || p.Or(Patch{}).Size.W > size.W+1e-9 || p.Or(Patch{}).Size.H > size.H+1e-9 {
			t.Errorf("%v mm needs %v, the patch is %v, %v", f, p, size, err)
		}
	}
}

// By hand: 24 mm at f/2.8, nose 87 mm: pupil 8.5714 mm, half diagonal
// atan(43.2666/48) = 42.0298 deg, depth (78.3 - 8.5714)/(2 x 0.901388) = 38.679 mm,
// and 5 mm of gap: 8.5714 + 2 x 43.679 x 18/24 wide through an opening.
func TestPatchByHand(t *testing.T) {
	body := kit.Body{Sensor: unit.Size{W: 36 * mm, H: 24 * mm}}
	l := kit.Lens{FocalMin: 24 * mm, FocalMax: 24 * mm, Stop: 2.8, StopLong: 2.8, Nose: 87 * mm}
	got, err := WindowPatch(glass.Window{Open: true, Size: body.Sensor}, l, body, Aims{})
	if p := got.Or(Patch{}); err != nil || math.Abs(p.Size.W.Millimetres()-74.0899) > 2e-3 || math.Abs(p.Size.H.Millimetres()-52.2503) > 2e-3 {
		t.Errorf("%v %v", p.Size, err)
	}
}

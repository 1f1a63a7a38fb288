package frame

import (
	"image"
	"math"
	"slices"
	"testing"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

// bareIce is a picture of an empty rink without markings, lit as surveyed, through a hole that
// takes no light: everything below the boards is ice of one paint.
func bareIce(t *testing.T, change func(*arena.Arena, *Request)) *Shot {
	t.Helper()
	a := demo(t)
	d := a.Rink.Dimensions()
	d.Markings = rink.Markings{}
	bare, err := rink.New(d)
	if err != nil {
		t.Fatal(err)
	}
	a.Rink = bare
	q := request(t, a)
	q.Moment = nil
	q.Use = fit.Setting{Focal: 24 * unit.Millimetre, Stop: 22} // all is sharp
	q.Lens.FocalMin = 24 * unit.Millimetre
	q.Body.ISOMax = 0
	change(&a, &q)
	s, err := NewShot(a, q)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// lightAt is the green light of a picture about a pixel, a mean along the row: up and down a
// pixel may be metres of ice.
func lightAt(im *image.RGBA, p geom.Vec2, half int) (sum float64) {
	for x := int(p.X) - half; x <= int(p.X)+half; x++ {
		sum += lightOf(float64(im.RGBAAt(x, int(p.Y)).G) / 255)
	}
	return sum / float64(2*half+1)
}

// The picture's exposure by zone is that of the light answers: in the middle of each zone in
// sight, ice of one paint differs from the ice at the aim by as many stops as the survey's light.
func TestExposureByZoneAgreesWithTheLight(t *testing.T) {
	s := bareIce(t, func(a *arena.Arena, q *Request) {
		for i := range a.Light.Readings { // a hall that falls off to its end B by 1.5 stops
			r := &a.Light.Readings[i]
			r.Lux = unit.Illuminance(1000 * math.Exp2(-0.025*r.At.X))
		}
		q.Target = geom.Vec3{X: 10, Y: 2}
		q.Hole, q.ISO = "A1", unit.Known(unit.ISO(100_000)) // the bright end is not cut off
	})
	const w, h = 1200, 800
	im := s.Picture(w, h)
	field, err := light.NewField(light.Survey(s.Arena.Light))
	if err != nil {
		t.Fatal(err)
	}
	at := func(p geom.Vec2) (float64, float64, bool) {
		x, y, _, ok := s.Camera.Project(geom.Vec3{X: p.X, Y: p.Y})
		if !ok || max(math.Abs(x), math.Abs(y)) > 0.9 || s.LedgeFree(x, y) < 0.999 { // the ledge has a colour of its own
			return 0, 0, false
		}
		e, _ := field.At(p)
		return lightAt(im, screen{w, h}.place(x, y), 4), e.Lux() * s.Transmission(x, y), true
	}
	places := map[string]geom.Vec2{}
	for _, z := range light.Zones(s.Arena.Rink) {
		places[z.ID] = z.Centre()
	}
	aim, aimLux, ok := at(geom.Vec2{X: 9, Y: 3})
	if !ok {
		t.Fatal("the aim is not in the picture")
	}
	seen := 0
	for id, p := range places {
		got, lux, ok := at(p)
		if !ok {
			continue
		}
		seen++
		if stops, want := math.Log2(got/aim), math.Log2(lux/aimLux); math.Abs(stops-want) > 0.06 {
			t.Errorf("zone %s: %.2f stops beside the aim, the survey says %.2f", id, stops, want)
		}
	}
	if seen < 4 {
		t.Errorf("only %d zones in sight", seen)
	}
}

// A wall of warm lamps makes warm ice, and the camera is balanced to the aim.
func TestWarmAndCoolByTheSurvey(t *testing.T) {
	s := bareIce(t, func(a *arena.Arena, q *Request) {
		for i := range a.Light.Readings {
			r := &a.Light.Readings[i]
			r.Lux, r.Colour = 900, unit.Known(3000.0)
			if r.At.X > 0 {
				r.Colour = unit.Known(5600.0)
			}
		}
		q.Target, q.Hole = geom.Vec3{X: 20, Y: 2}, "A1"
	})
	warm, there := s.Lighting.onIce(geom.Vec2{X: -20}), s.Lighting.onIce(s.Target().XY())
	if !(warm[0] > 1.2 && warm[2] < 0.7) {
		t.Errorf("under warm lamps the gains are %.2f", warm)
	}
	for _, k := range there {
		if math.Abs(k-1) > 1e-9 {
			t.Errorf("at the aim the gains are %.3f, want none", there)
		}
	}
}

// White of the Planckian locus against CIE 1931 chromaticities of black bodies, as the CIE's
// tables have them (illuminant A, 2856 K: x 0.44757 y 0.40745; 6504 K near D65's line: x 0.3135
// y 0.3237; 4000 K: x 0.3805 y 0.3768; the last two from memory).
func TestWhiteAgainstTheLocus(t *testing.T) {
	for _, c := range []struct{ kelvin, x, y float64 }{{2856, 0.44757, 0.40745}, {4000, 0.3805, 0.3768}, {6504, 0.3135, 0.3237}} {
		w := white(c.kelvin)
		X := 0.4124564*w[0] + 0.3575761*w[1] + 0.1804375*w[2]
		Y := 0.2126729*w[0] + 0.7151522*w[1] + 0.0721750*w[2]
		Z := 0.0193339*w[0] + 0.1191920*w[1] + 0.9503041*w[2]
		if x, y := X/(X+Y+Z), Y/(X+Y+Z); math.Abs(x-c.x) > 1e-3 || math.Abs(y-c.y) > 1e-3 {
			t.Errorf("%.0f K: x %.4f y %.4f, want %.4f %.4f", c.kelvin, x, y, c.x, c.y)
		}
	}
}

// The transfer function has the standard's published corner values and turns back; a table of
// tones is right to one step.
func TestToneCurveIsTheStandards(t *testing.T) {
	for _, c := range []struct{ value, light float64 }{{0, 0}, {1, 1}, {0.04045, 0.0031308}, {0.5, 0.2140411}, {118.0 / 255, 0.1812}} {
		if got := lightOf(c.value); math.Abs(got-c.light) > 1e-4 {
			t.Errorf("light of %g: %.5f, want %.5f", c.value, got, c.light)
		}
		if back := valueOf(lightOf(c.value)); math.Abs(back-c.value) > 1e-5 {
			t.Errorf("%g comes back as %g", c.value, back)
		}
	}
	tones := newTones()
	for _, stops := range []float64{-3, -1, -0.3, 0, 0.7, 2} {
		k := math.Exp2(stops)
		for v := range 256 {
			want := 255 * valueOf(k*lightOf(float64(v)/255))
			if got := float64(tones.at(degree(k))[v]); math.Abs(got-want) > 1.3 {
				t.Errorf("%+.1f stops of %d: %g, want %.1f", stops, v, got, want)
			}
		}
	}
}

// The ISO is what faces at the aim ask for, as far as the body goes; beyond it the picture is
// under by what lacks.
func TestBodyLimitsTheExposure(t *testing.T) {
	open := bareIce(t, func(_ *arena.Arena, q *Request) { q.Shutter = 0.0005 })
	iso, ok := open.Lighting.ISO.Get()
	if !ok || open.Lighting.Used != iso || open.Lighting.Short != 0 {
		t.Fatalf("without a limit: %+v", open.Lighting)
	}
	held := bareIce(t, func(_ *arena.Arena, q *Request) { q.Shutter, q.Body.ISOMax = 0.0005, int(iso/4) })
	if math.Abs(held.Lighting.Short-2) > 1e-3 {
		t.Errorf("short by %.3f stops, want 2", held.Lighting.Short)
	}
	a, b := open.Picture(300, 200), held.Picture(300, 200)
	p := geom.Vec2{X: 150, Y: 185}
	if stops := math.Log2(lightAt(b, p, 9) / lightAt(a, p, 9)); math.Abs(stops+2) > 0.1 {
		t.Errorf("the picture is %.2f stops darker, want 2", -stops)
	}
}

// Noise has the deviation told, the mean of the picture without it, and follows from the seed.
func TestGrainIsToldByISO(t *testing.T) {
	flat := func(s *Shot, v uint8) []uint8 {
		im := image.NewRGBA(image.Rect(0, 0, 400, 200))
		for k := range im.Pix {
			im.Pix[k] = v
		}
		s.grain(400).drop(im)
		return im.Pix
	}
	spread := func(pix []uint8) (mean, dev float64) {
		n := 0.0
		for k := 0; k < len(pix); k += 4 {
			mean += float64(pix[k])
			dev += float64(pix[k]) * float64(pix[k])
			n++
		}
		mean /= n
		return mean, math.Sqrt(dev/n - mean*mean)
	}
	at := func(iso unit.ISO, seed uint64) *Shot {
		return shot(t, func(q *Request) { q.ISO, q.Seed, q.Body.PixelsW, q.Body.PixelsH = unit.Known(iso), seed, 400, 267 })
	}
	s := at(1600, 1)
	for _, v := range []uint8{40, 118, 200} {
		mean, dev := spread(flat(s, v))
		// The model's own words: 36 mm over 400 pixels are 90 micrometres.
		full := 1700 * 90 * 90 * 100 / 1600.0
		l := lightOf(float64(v) / 255)
		want := 255 * (valueOf(l*1.001) - valueOf(l*0.999)) / (0.002 * l) * math.Sqrt(l*full+2.5*2.5) / full
		if want = math.Hypot(want, 0); math.Abs(mean-float64(v)) > 0.05 || math.Abs(dev-want) > 0.3 {
			t.Errorf("value %d: mean %.2f, deviation %.2f, want %.2f", v, mean, dev, want)
		}
	}
	if !slices.Equal(flat(s, 118), flat(at(1600, 1), 118)) || slices.Equal(flat(at(51200, 1), 118), flat(at(51200, 2), 118)) {
		t.Error("noise does not follow from its seed")
	}
	_, low := spread(flat(at(6400, 1), 118))
	_, high := spread(flat(at(102400, 1), 118))
	if math.Abs(high/low-4) > 0.8 {
		t.Errorf("16 times the ISO makes %.2f times the noise, want 4", high/low)
	}
}

// Everybody moves at the moment's own pace, the subject fastest, goalkeepers not at all; a speed
// that is asked for is everybody's but theirs.
func TestPaceFollowsTheMoment(t *testing.T) {
	s := shot(t, func(q *Request) { q.Paced = true })
	m := s.Moment
	other := (m.Subject + 1) % play.AttackerGoalie
	if got := s.pace(m.Subject); got != m.Phase.Speed() {
		t.Errorf("the subject moves at %g m/s, the moment says %g", got, m.Phase.Speed())
	}
	if got := s.pace(other); !(got > 0 && got < m.Phase.Speed()) {
		t.Errorf("another skater moves at %g m/s", got)
	}
	if s.pace(play.AttackerGoalie) != 0 || !(s.pace(play.Officials) < s.pace(other)) {
		t.Error("goalkeepers stand, officials glide")
	}
	asked := shot(t, func(q *Request) { q.Speed = 8 })
	if asked.pace(other) != 8 || asked.pace(play.Officials) != 8 || asked.pace(play.DefenderGoalie) != 0 {
		t.Error("a speed that is asked for is everybody's but the goalkeepers'")
	}
}

// The ISO changes ice, people and stands alike: a stop less of it is a stop less of each.
func TestExposureIsTheSameForAll(t *testing.T) {
	at := func(iso unit.ISO) *image.RGBA {
		return shot(t, func(q *Request) { q.ISO = unit.Known(iso) }).Picture(300, 200)
	}
	iso := shot(t, nil).Lighting.Used
	full, half := at(iso), at(iso/2)
	off := 0 // where a light among the seats shines, white stays white
	for y := 10; y < 200; y += 20 {
		for x := 12; x < 300; x += 23 {
			p := geom.Vec2{X: float64(x), Y: float64(y)}
			a, b := lightAt(full, p, 3), lightAt(half, p, 3)
			if a < 0.02 || a > 0.9 {
				continue // too dark for eight bits to tell, or cut off
			}
			if stops := math.Log2(a / b); math.Abs(stops-1) > 0.2 {
				t.Logf("at %d, %d: %.2f stops, want 1", x, y, stops)
				off++
			}
		}
	}
	if off > 1 {
		t.Errorf("%d places are not a stop darker", off)
	}
}

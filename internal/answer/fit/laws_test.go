package fit

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
)

// genCase draws a case; its sizes are those of holes and lenses.
func genCase(t *rapid.T) Case {
	f := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	c := Case{Width: f("width", 0.08, 0.2), Height: f("height", 0.08, 0.2), Thick: f("thick", 0.004, 0.03)}
	c.Corner = min(c.Width, c.Height) / 2 * f("corner", 0, 1)
	c.Nose = f("nose", 0.03, 0.13)
	c.Pupil = c.Nose * f("pupil", 0.1, 1)
	c.PupilDepth = f("depth", 0, 0.12)
	c.TanX, c.TanY = f("tan x", 0.03, 0.8), f("tan y", 0.03, 0.8)
	return c
}

func genAim(t *rapid.T) (pan, tilt unit.Angle) {
	q := func(name string) unit.Angle { return unit.Angle(rapid.Float64Range(-1.2, 1.2).Draw(t, name)) }
	switch rapid.IntRange(0, 3).Draw(t, "axis") {
	case 0:
		return q("pan"), 0
	case 1:
		return 0, q("tilt")
	}
	return q("pan"), q("tilt")
}

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }

// TestMirrorLaw: turning the other way swaps left and right, or top and bottom.
func TestMirrorLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := genCase(t)
		pan, tilt := genAim(t)
		v, w, x := c.At(pan, tilt), c.At(-pan, tilt), c.At(pan, -tilt)
		swapX := [4]int{lowerRight, upperRight, lowerLeft, upperLeft}
		swapY := [4]int{upperLeft, lowerLeft, upperRight, lowerRight}
		for i, got := range v.Corners {
			if !near(w.Corners[swapX[i]], got, 1e-12) || !near(x.Corners[swapY[i]], got, 1e-12) || w.Centre != v.Centre {
				t.Fatalf("mirrored views differ: %+v %+v %+v", v, w, x)
			}
		}
		if w.Pose.Nose.X != -v.Pose.Nose.X || x.Pose.Nose.Y != -v.Pose.Nose.Y {
			t.Fatalf("mirrored poses differ: %+v %+v %+v", v.Pose, w.Pose, x.Pose)
		}
	})
}

// TestViewReadsItsPose: the transmissions told are those of the pose told.
func TestViewReadsItsPose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := genCase(t)
		pan, tilt := genAim(t)
		v := c.At(pan, tilt)
		a := aimAt(pan.Radians(), tilt.Radians())
		if got := c.Transmission(v.Pose, a.axis); !near(got, v.Centre, 1e-9) {
			t.Fatalf("centre %.12g, by its pose %.12g", v.Centre, got)
		}
		for i, sg := range cornerSigns {
			u := a.toward(sg[0]*c.TanX, sg[1]*c.TanY).Scale(3)
			got := c.Transmission(v.Pose, u)
			if !near(got, v.Corners[i], 1e-9) || got < 0 || got > 1 {
				t.Fatalf("corner %d: %.12g, by its pose %.12g", i, v.Corners[i], got)
			}
		}
	})
}

// TestScaleLaw: a scene ten times as large behaves the same.
func TestScaleLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := genCase(t)
		big := c
		for _, l := range []*float64{&big.Width, &big.Height, &big.Corner, &big.Thick, &big.Nose, &big.Pupil, &big.PupilDepth} {
			*l *= 8 // a power of two, so that only tolerances in metres make a difference
		}
		pan, tilt := genAim(t)
		v, w := c.At(pan, tilt), big.At(pan, tilt)
		if a, b := min(v.Centre, v.WorstCorner()), min(w.Centre, w.WorstCorner()); !near(a, b, 3*tie) {
			t.Fatalf("worst T %.9g, eight times as large %.9g", a, b)
		}
	})
}

// TestPortraitLaw: tilting is panning with hole and frame turned on their side.
func TestPortraitLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := genCase(t)
		pan, _ := genAim(t)
		turned := c.transposed()
		v, w := c.At(pan, 0), turned.At(0, pan)
		if !near(v.Centre, w.Centre, 1e-9) || !near(v.WorstCorner(), w.WorstCorner(), 1e-9) || !near(v.Pose.Nose.X, w.Pose.Nose.Y, 1e-7) {
			t.Fatalf("pan %+v, turned tilt %+v", v, w)
		}
	})
}

// TestLargerHoleLaw: a larger hole, a thinner pane, a slimmer nose and a
// narrower frame never see less. The corner radius stays.
func TestLargerHoleLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := genCase(t)
		better := c
		switch rapid.IntRange(0, 4).Draw(t, "what") {
		case 0:
			better.Width *= 1.1
		case 1:
			better.Height *= 1.1
		case 2:
			better.Thick *= 0.8
		case 3:
			better.Corner *= 0.7
		case 4:
			better.TanX *= 0.7
		}
		pan, tilt := genAim(t)
		v, w := c.At(pan, tilt), better.At(pan, tilt)
		if a, b := min(v.Centre, v.WorstCorner()), min(w.Centre, w.WorstCorner()); b < a-3*tie {
			t.Fatalf("worst T %.9g, with more room %.9g", a, b)
		}
	})
}

// TestLimitsLaw: a slimmer nose pans farther until it touches, a smaller pupil
// keeps half its light farther, a hand-held camera does no worse than a fixed one.
func TestLimitsLaw(t *testing.T) {
	// T is flat near the clear limit here: a tie moved it by more than 3e-5.
	flat := Case{Width: 0.2, Height: 0.11981201171875, Thick: 0.013671875, Nose: 0.12939453125, Pupil: 0.12939453125,
		Corner: 0.11981201171875 / 2, PupilDepth: 0.0009765625, TanX: 0.0625, TanY: 0.375}
	known := limitsLaw(t, flat)
	rapid.Check(t, func(t *rapid.T) { known += limitsLaw(t, genCase(t)) })
	if known < least(100) {
		t.Errorf("only %d limits compared", known)
	}
}

// limitsLaw compares the limits of a case with those of more freedom, and
// returns how many there were.
func limitsLaw(t interface{ Fatalf(string, ...any) }, c Case) (known int) {
	slim := c
	slim.Nose = max(0.95*c.Nose, c.Pupil)
	small := c
	small.Pupil *= 0.9
	fixed := c
	fixed.Pivot = Centre
	l, centre := c.panLimits(), fixed.panLimits()
	for _, pair := range []struct {
		less, more unit.Maybe[unit.Angle]
		margin     func(pan float64) float64 // of the one with more freedom
	}{
		{l.Body, unbroken(slim.bodyMargin), slim.bodyMargin},
		{l.Usable, small.panUsable(), small.usableMargin},
		{centre.Usable, l.Usable, c.usableMargin},
		{centre.Clear, l.Clear, c.clearMargin()},
		{centre.Body, l.Body, c.bodyMargin},
	} {
		less, ok := pair.less.Get()
		if !ok {
			continue
		}
		known++
		more := pair.more.Or(0)
		if more >= less-3e-5 {
			continue
		}
		// A tie in T moves a limit far where T is flat: what the greater freedom
		// lacks between both limits must be no more than a tie's worth.
		for k := range 5 {
			pan := more.Radians() + (less-more).Radians()*float64(k)/4
			if m := pair.margin(pan); m < -3*tie {
				t.Fatalf("limit %.6f deg, with more freedom %.6f: margin %g at %.6f", less.Degrees(), more.Degrees(), m, pan*180/math.Pi)
			}
		}
	}
	return known
}

// TestOutlineLaw: the traced outline is the usable limit in every direction.
func TestOutlineLaw(t *testing.T) {
	in, out := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		c := genCase(t)
		o := c.Trace()
		if pan, ok := c.panUsable().Get(); ok != o.Contains(0, 0) ||
			ok && (!o.Contains(pan-1e-4, 0) || pan.Radians() < rangeEnd && o.Contains(pan+1e-4, 0)) {
			t.Fatalf("pan limit %v %v is not on the outline", pan.Degrees(), ok)
		}
		pan, tilt := genAim(t)
		pan, tilt = pan*1.3, tilt*1.3 // up to 89.4 deg
		a := aimAt(pan.Radians(), tilt.Radians())
		got := o.Contains(pan, tilt)
		switch at := c.centre(&a); {
		case at > 0.5+2e-3 && !got, at < 0.5-2e-3 && got:
			t.Fatalf("pan %g tilt %g: T %g, outline says %v", pan.Degrees(), tilt.Degrees(), at, got)
		case at > 0.5:
			in++
		default:
			out++
		}
		if got != o.ContainsDirection(a.axis.Scale(7)) || o.ContainsDirection(geom.Vec3{X: 1, Z: -1}) {
			t.Fatalf("directions and angles disagree")
		}
	})
	if in < least(10) || out < least(5) {
		t.Errorf("%d aims inside, %d outside: too few", in, out)
	}
}

// least is how many cases a law must meet to be believed; short tests draw a
// fifth of the cases.
func least(n int) int {
	if testing.Short() {
		return n / 5
	}
	return n
}

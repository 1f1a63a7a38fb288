package plan

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
)

// TestFramingBand compares with the image's size by hand: a player of 1.8812 m
// (1.7562 m of stature, 0.125 m of skates and helmet) fills a sensor 24 mm high at
// f = 70 mm from 70/24 x 1.8812 = 5.4868 m, and a quarter of it at four times that.
func TestFramingBand(t *testing.T) {
	r := sight.Reach{Lenses: []sight.LensReach{{ID: "70", Focal: 70 * unit.Millimetre}}}
	k := kit.Kit{Bodies: []kit.Body{{Sensor: unit.Size{W: 36 * unit.Millimetre, H: 24 * unit.Millimetre}}}}
	got := framingOf(r, k)[0]
	if math.Abs(got.near-5.4868) > 1e-4 || math.Abs(got.far-21.9473) > 1e-4 {
		t.Errorf("band %.4f to %.4f m, by hand 5.4868 to 21.9473 m", got.near, got.far)
	}
}

// TestFixedCamerasCountEverywhere: what a lens frames, reaches and asks of the light is
// that of the body that it cannot be taken off, whichever body the kit names first.
func TestFixedCamerasCountEverywhere(t *testing.T) {
	m, doc := maker(t), document(t, examples.Demo)
	small := kit.Body{ID: "small", Name: "a small sealed camera", Sensor: unit.Size{W: 18 * unit.Millimetre, H: 12 * unit.Millimetre}, PixelsW: 3000, PixelsH: 2000, ISOMax: 800}
	planned := func(fixed string, bodies ...kit.Body) Plan {
		k := kit.Kit{Bodies: bodies, Lenses: slices.Clone(m.Kit.Lenses)}
		for i := range k.Lenses {
			k.Lenses[i].Body = fixed
		}
		p, err := Maker{Kit: k, Rules: m.Rules}.Make(t.Context(), doc)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	fixed, only := planned("small", m.Kit.Bodies[0], small), planned("", small)
	if len(fixed.Holes) < 8 {
		t.Fatalf("%d holes", len(fixed.Holes))
	}
	for i, h := range fixed.Holes {
		want := only.Holes[i]
		if h.Best != want.Best || !reflect.DeepEqual(h.Reach, want.Reach) || !reflect.DeepEqual(h.Light, want.Light) {
			t.Errorf("hole %s with fixed cameras: best %v, %+v; with the same body first: %v, %+v", h.ID, h.Best, h.Light, want.Best, want.Light)
		}
		for k := range h.Fits {
			if h.Fits[k].Framing != want.Fits[k].Framing || h.Fits[k].Limits != want.Fits[k].Limits {
				t.Errorf("hole %s, %s: %+v, with the same body first %+v", h.ID, h.Fits[k].Lens.ID, h.Fits[k].Framing, want.Fits[k].Framing)
			}
		}
	}
}

// TestFramingByBruteForce counts the framed ice of one hole again, asking the
// lens itself at each place of a coarse grid instead of the traced map. The lens
// answers for the pose that is best for corners and centre together, the map for
// the centre alone, so the map may say a little more and never less.
func TestFramingByBruteForce(t *testing.T) {
	m := maker(t)
	p := planOf(t, examples.Demo)
	of, _ := p.Hole("B2")
	lens, ok := m.Kit.Lens("85-1.8")
	if !ok {
		t.Fatal("the kit lacks the lens")
	}
	c, err := fit.FromKit(of.Opening, lens, m.Kit.Bodies[0], fit.Ends(lens)[0])
	if err != nil {
		t.Fatal(err)
	}
	eye := sight.EyeOf(p.Arena, of.Opening)
	d0 := lens.FocalMin.Metres() / m.Kit.Bodies[0].Sensor.H.Metres() * playerHeight()
	on, framed := 0, 0
	dim := p.Arena.Rink.Dimensions()
	const step = 1.37 // metres: no multiple of the map's cells
	for x := -dim.Length.Metres() / 2; x < dim.Length.Metres()/2; x += step {
		for y := -dim.Width.Metres() / 2; y < dim.Width.Metres()/2; y += step {
			at := geom.Vec2{X: x, Y: y}
			if !p.Arena.Rink.Contains(at) {
				continue
			}
			on++
			d := at.Sub(eye.At)
			ahead, right, up := d.Dot(eye.In), d.Dot(eye.Along), sight.FaceHeight.Metres()-eye.Z
			away := math.Sqrt(ahead*ahead + right*right + up*up)
			if away < d0 || away > 4*d0 || ahead <= 0 {
				continue
			}
			aim := c.At(unit.Angle(math.Atan2(right, ahead)), unit.Angle(math.Atan2(up, math.Hypot(ahead, right))))
			if aim.Centre >= 0.5 {
				framed++
			}
		}
	}
	if on < 500 {
		t.Fatalf("asked %d places", on)
	}
	want := float64(framed) / float64(on)
	for _, f := range of.Fits {
		if f.Lens.ID == lens.ID && (f.Framing < want-0.01 || f.Framing > want+0.05) {
			t.Errorf("the map says that %s frames %.3f of the ice, asking at %d places says %.3f", f.Lens.ID, f.Framing, on, want)
		}
	}
}

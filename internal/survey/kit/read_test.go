package kit_test

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
)

const own = `rinkpane: kit 1
name: Mine
note: measured
bodies:
  - {id: b, name: body, sensor: 36 x 24 mm, size: 140 x 100 mm, pixels: 6000 x 4000, iso-max: 6400}
lenses:
  - id: z
    name: zoom
    focal-min: 70 mm
    focal-max: 200 mm
    stop: f/2.8
    stop-long: f/4
    nose: 86 mm
    nose-hood: 100 mm
    hood-length: 60 mm
    front: 72 mm
    pupil-depth: 80 mm
    length: 210 mm
    min-focus: 1.1 m
  - {id: p, name: prime, focal: 85, stop: 1.8, nose: 3 in, min-focus: 0.8 m}
`

func TestKitIsRead(t *testing.T) {
	k, err := kit.Read("k.yaml", strings.NewReader(own))
	if err != nil {
		t.Fatal(err)
	}
	z, _ := k.Lens("z")
	const mm = unit.Millimetre
	want := kit.Lens{
		ID: "z", Name: "zoom", FocalMin: 70 * mm, FocalMax: 200 * mm, Stop: 2.8, StopLong: 4, Nose: z.Nose, NoseHood: z.NoseHood,
		HoodLength: 60 * mm, Front: unit.Known(z.Front.Or(0)), PupilDepth: unit.Known(z.PupilDepth.Or(0)), Length: unit.Known(z.Length.Or(0)), MinFocus: 1.1,
	}
	if z != want || z.Nose.Millimetres() != 86 || z.NoseHood.Millimetres() != 100 || z.Front.Or(0).Millimetres() != 72 || z.PupilDepth.Or(0).Millimetres() != 80 || z.Length.Or(0).Millimetres() != 210 {
		t.Errorf("got %+v", z)
	}
	p, _ := k.Lens("p")
	if p.FocalMin != p.FocalMax || p.StopLong != p.Stop || p.NoseHood != 0 {
		t.Errorf("got %+v", p)
	}
	if _, known := p.PupilDepth.Get(); known {
		t.Error("a pupil depth that nobody wrote")
	}
	if !p.Length.IsZero() {
		t.Error("a length that nobody wrote")
	}
	if b, ok := k.Body("b"); !ok || b.Front.Or(unit.Size{}).W.Millimetres() != 140 || b.PixelsW != 6000 || b.PixelsH != 4000 || b.ISOMax != 6400 {
		t.Errorf("got %+v", b)
	}
}

func TestKitProblems(t *testing.T) {
	cases := []struct{ old, new, field, words string }{
		{"kit 1", "arena 1", "rinkpane", "rinkpane: kit 1"},
		{"nose: 86 mm", "nose: 86", "lenses[z].nose", "bare number"},
		{"nose: 86 mm", "nose: 5 mm", "lenses[z].nose", "out of range"},
		{"nose: 86 mm", "nozzle: 86 mm", "lenses[z]", "unknown field"},
		{"nose: 86 mm", "noze: 86 mm", "lenses[z]", `did you mean "nose"?`},
		{"focal-min: 70 mm", "focal-min: 300 mm", "lenses[z].focal-max", "exchange the two"},
		{"focal-min: 70 mm", "focal: 70 mm", "lenses[z].focal-max", "stands beside focal"},
		{"stop: f/2.8", "stop: f/0.7", "lenses[z].stop", "wider than the nose"},
		{"stop-long: f/4", "stop-long: f/2", "lenses[z].stop-long", "wider than the nose"},
		{"front: 72 mm", "front: 90 mm", "lenses[z].front", "wider than the nose"},
		{"nose-hood: 100 mm", "nose-hood: 80 mm", "lenses[z].nose-hood", "narrower than the bare nose"},
		{"    nose-hood: 100 mm\n", "", "lenses[z].nose-hood", "missing"},
		{"id: p,", "id: z,", "lenses[z].id", "give each its own"},
		{"pixels: 6000 x 4000", "pixels: 24 MP", "bodies[b].pixels", "whole pixels"},
		{"sensor: 36 x 24 mm", "sensor: 36 x 24 m", "bodies[b].sensor", "no sensor"},
		{"size: 140 x 100 mm", "size: 140 x 1 mm", "bodies[b].size", "is no body; write width x height, as in 140 x 100 mm"},
		{"length: 210 mm", "length: 3 m", "lenses[z].length", "out of range"},
		{"iso-max: 6400", "iso-max: 3", "bodies[b].iso-max", "whole number"},
		{"min-focus: 1.1 m", "min-focus: -1 m", "lenses[z].min-focus", "out of range"},
	}
	for _, c := range cases {
		if !strings.Contains(own, c.old) {
			t.Fatalf("%q is not in the kit", c.old)
		}
		_, err := kit.Read("k.yaml", strings.NewReader(strings.Replace(own, c.old, c.new, 1)))
		var p *form.Problem
		if !errors.As(err, &p) || p.Field != c.field || p.Line == 0 || !strings.Contains(p.Text, c.words) {
			t.Errorf("%s: got %v, want field %s and %q", c.new, err, c.field, c.words)
		}
	}
	for _, text := range []string{"rinkpane: kit 1\nbodies: []\nlenses: []\n", "", "\x00"} {
		if _, err := kit.Read("k.yaml", strings.NewReader(text)); err == nil {
			t.Errorf("%q is read", text)
		}
	}
}

// FuzzRead reads any text as a kit: nothing panics, and what is read is
// consistent.
func FuzzRead(f *testing.F) {
	for _, s := range [][]byte{[]byte(own), kit.DefaultYAML(), []byte("rinkpane: kit 1\nlenses: [{focal: 1e9 m}]"), []byte("lenses: *x"), []byte("{")} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		k, err := kit.Read("k.yaml", bytes.NewReader(text))
		if err != nil {
			return
		}
		for _, l := range k.Lenses {
			if l.FocalMin <= 0 || l.FocalMax < l.FocalMin || l.FocalMin/unit.Length(l.Stop) > l.Nose || l.Front.Or(0) > l.Nose {
				t.Fatalf("%+v", l)
			}
		}
	})
}

func ExampleDefault() {
	k, err := kit.Default()
	if err != nil {
		fmt.Println(err)
		return
	}
	l, _ := k.Lens("70-200")
	fmt.Println(l.Name, "nose", l.Nose.Format(unit.Metric))
	// Output:
	// tele zoom 70-200 mm f/2.8 nose 86 mm
}

package kit_test

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/survey/kit"
)

const bag = `rinkpane: kit 1
bodies:
  - {id: b, name: body, sensor: 36 x 24 mm, pixels: 6000 x 4000, iso-max: 6400}
  - {id: phone, name: a phone, sensor: 9.8 x 7.3 mm, pixels: 4000 x 3000, iso-max: 1600}
lenses:
  - {id: long, name: long 300 mm f/2.8, focal: 300 mm, stop: f/2.8, nose: 120 mm, length: 250 mm, min-focus: 2 m, teleconverters: [tc14, tc20]}
  - {id: main, name: its own lens, body: phone, focal: 6.9 mm, stop: f/1.8, nose: 14 mm, min-focus: 0.2 m}
teleconverters:
  - {id: tc14, name: 1.4x, factor: 1.4, length: 20 mm}
  - {id: tc20, name: 2x, factor: 2}
`

// A converter multiplies focal length and f-number alike and takes 2 log2(factor)
// stops: one at the square root of two, two at 2. Nose and pupil stay.
func TestTeleconverters(t *testing.T) {
	k, err := kit.Read("bag.yaml", strings.NewReader(bag))
	if err != nil {
		t.Fatal(err)
	}
	long, _ := k.Lens("long")
	for _, c := range []struct {
		id            string
		factor, stops float64
		length        float64 // millimetres
	}{{"long-tc14", 1.4, 0.97085, 270}, {"long-tc20", 2, 2, 250}} {
		l, ok := k.Lens(c.id)
		if !ok {
			t.Fatalf("no %s among %v", c.id, k.LensIDs())
		}
		lost := 2 * math.Log2(float64(l.Stop/long.Stop))
		if math.Abs(float64(l.FocalMax/long.FocalMax)-c.factor) > 1e-12 || math.Abs(lost-c.stops) > 1e-5 || l.Nose != long.Nose || l.MinFocus != long.MinFocus {
			t.Errorf("%+v, %g stops lost", l, lost)
		}
		pupil, was := float64(l.FocalMax)/float64(l.Stop), float64(long.FocalMax)/float64(long.Stop)
		if math.Abs(pupil-was) > 1e-12 || math.Abs(l.Length.Or(0).Millimetres()-c.length) > 1e-9 {
			t.Errorf("%s: a pupil of %g, was %g; %s long", c.id, pupil, was, l.Name)
		}
	}
	main, _ := k.Lens("main")
	if k.BodyOf(main).ID != "phone" || k.BodyOf(long).ID != "b" {
		t.Errorf("the phone's lens stands on %s, the long one on %s", k.BodyOf(main).ID, k.BodyOf(long).ID)
	}
	for _, c := range []struct{ old, new, says string }{
		{"[tc14, tc20]", "[tc15]", "is no teleconverter of this kit"},
		{"factor: 1.4", "factor: 14", "lenses"}, {"body: phone", "body: tablet", "which the kit lacks"},
		{"id: main", "id: long-tc14", "give"},
	} {
		_, err := kit.Read("bag.yaml", strings.NewReader(strings.Replace(bag, c.old, c.new, 1)))
		if err == nil || c.says != "lenses" && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.new, err)
		}
	}
}

// The examples at the end of the built-in kit are a kit's lists when the # signs go.
func TestExamplesOfTheKitAreRead(t *testing.T) {
	_, examples, found := strings.Cut(string(kit.DefaultYAML()), "#bodies:")
	if !found {
		t.Fatal("no examples")
	}
	text := "rinkpane: kit 1\nbodies:" + strings.ReplaceAll(examples, "\n#", "\n")
	k, err := kit.Read("examples", strings.NewReader(text))
	if err != nil || len(k.Bodies) != 2 || len(k.Lenses) != 2 || k.BodyOf(k.Lenses[1]).ID != "low-camera" {
		t.Errorf("%v, %d bodies, %d lenses", err, len(k.Bodies), len(k.Lenses))
	}
}

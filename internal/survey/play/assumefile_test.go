package play

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

func TestReadAssumptions(t *testing.T) {
	a, err := ReadAssumptions("a.yaml", strings.NewReader(`
# more face-offs
shares: {face-off: 50}
weights:
  celebration: 6
home_share: 0.25
stature: {mean: 1628.5 mm, deviation: 64.2 mm}
`))
	if err != nil {
		t.Fatal(err)
	}
	def := DefaultAssumptions()
	if a.Share[FaceOff] != 50 || a.Share[Rush] != def.Share[Rush] || a.Weight[Celebration] != 6 || a.HomeShare != 0.25 || math.Abs(a.Stature.SD-StatureWomen.SD) > 1e-12 || a.Stature.Mean != StatureWomen.Mean {
		t.Errorf("%+v", a)
	}
}

func TestReadAssumptionsRefuses(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "a.yaml"},
		{"list", "- 1\n", "a.yaml:1"},
		{"unknown", "shares:\n  rush: 1\n  tango: 2\n", "a.yaml:3:3: shares: unknown field"},
		{"word", "home_share: much\n", `a.yaml:1:13: home_share: "much"`},
		{"negative", "shares: {rush: -1}\n", "shares.rush"},
		{"zero weight", "weights: {rush: 0}\n", "weights.rush"},
		{"not a number", "weights: {rush: .nan}\n", "weights.rush"},
		{"infinite", "weights: {rush: .inf}\n", "weights.rush"},
		{"share of two", "home_share: 2\n", `home_share: "2"`},
		{"twice", "home_share: 0.1\nhome_share: 0.2\n", "home_share"},
		{"giant", "stature: {mean: 3 m}\n", "stature"},
		{"all zero", "shares: {rush: 0, zone-play: 0, net-front: 0, face-off: 0, celebration: 0, bench: 0}\n", "all are 0"},
		{"syntax", "shares: {rush\n", "a.yaml"},
		{"bare length", "stature: {mean: 1.7}\n", "stature.mean"},
		{"binary", "\x00\x01\xff", "a.yaml"},
	} {
		_, err := ReadAssumptions("a.yaml", strings.NewReader(c.text))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want %q", c.name, err, c.want)
		}
	}
}

func FuzzReadAssumptions(f *testing.F) {
	f.Add("shares: {rush: 1}\n")
	f.Add("stature: {mean: 1.7 m}\nequipment: 10 cm\n")
	f.Add("a: &a [*a]\n")
	f.Fuzz(func(t *testing.T, text string) {
		a, err := ReadAssumptions("f", strings.NewReader(text))
		if err == nil && a.Check() != nil {
			t.Fatal("read without error what Check refuses")
		}
	})
}

func Example() {
	a, err := ReadAssumptions("mine.yaml", strings.NewReader("shares: {celebration: 100}\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Share[Celebration], a.Share[Rush])
	// Output: 100 22
}

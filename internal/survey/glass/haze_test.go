package glass

import (
	"math"
	"testing"
)

// A word stands for its material's figure, or an invented one; a percentage for
// itself. Nothing else is read.
func TestHaze(t *testing.T) {
	m, err := Acrylic.Properties()
	if err != nil {
		t.Fatal(err)
	}
	for text, want := range map[string]float64{"clean": m.HazeNew, "scuffed": m.HazeWorn, "dirty": 0.2, "fogged": 0.6, "4 %": 0.04, "0.5%": 0.005} {
		h, err := ParseHaze(text)
		if err != nil || math.Abs(h.Of(m)-want) > 1e-12 {
			t.Errorf("%s: %g, want %g (%v)", text, h.Of(m), want, err)
		}
	}
	for _, bad := range []string{"", "4", "0.04", "100 %", "-1 %", "misty", "NaN %"} {
		if _, err := ParseHaze(bad); err == nil {
			t.Errorf("%q is no haze", bad)
		}
	}
}

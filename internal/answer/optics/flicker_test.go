package optics

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// Lamps flicker at twice the mains, 100 or 120 Hz (camera makers' support
// pages): the shortest safe times are 1/100 and 1/120 s.
func TestFlickerSafe(t *testing.T) {
	for mains, first := range map[float64]unit.Shutter{50: 1.0 / 100, 60: 1.0 / 120} {
		safe, err := FlickerSafe(mains)
		if err != nil || len(safe) != safeCycles {
			t.Fatal(safe, err)
		}
		if safe[0] != first {
			t.Errorf("%v Hz: shortest %v, want %v", mains, safe[0], first)
		}
		for _, s := range safe {
			cycles := float64(s) * 2 * mains // of the lamp: whole, so that every frame gathers the same light
			near(t, "cycles of a safe time", cycles, math.Round(cycles), 1e-12)
		}
	}
	if _, err := FlickerSafe(55); err == nil {
		t.Error("55 Hz taken")
	}
}

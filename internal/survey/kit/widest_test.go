package kit

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

func TestWidestStopRunsEvenlyInStops(t *testing.T) {
	zoom := Lens{FocalMin: 100 * unit.Millimetre, FocalMax: 400 * unit.Millimetre, Stop: 4, StopLong: 5.6}
	for _, c := range []struct{ mm, want float64 }{{100, 4}, {200, math.Sqrt(4 * 5.6)}, {400, 5.6}} {
		if got := float64(zoom.WidestAt(unit.Length(c.mm) * unit.Millimetre)); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("at %g mm f/%g, want f/%g", c.mm, got, c.want)
		}
	}
	fixed := Lens{FocalMin: 0.085, FocalMax: 0.085, Stop: 1.8, StopLong: 1.8}
	if got := fixed.WidestAt(0.085); got != 1.8 {
		t.Errorf("a lens of one focal length opens to f/%g, want f/1.8", float64(got))
	}
}

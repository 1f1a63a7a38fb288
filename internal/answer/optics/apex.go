package optics

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// The additive system of photographic exposure (APEX), as in CIPA DC-008-2016,
// Annex C: each value is a count of stops, and the exposure value is Av + Tv.

// Av returns the aperture value 2 log2 N, in stops from f/1.
func Av(n unit.Stop) float64 { return 2 * math.Log2(float64(n)) }

// Tv returns the time value -log2 t in stops from 1 s, t in seconds.
func Tv(t unit.Shutter) float64 { return -math.Log2(float64(t)) }

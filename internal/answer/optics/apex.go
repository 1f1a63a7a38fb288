package optics

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// The additive system of photographic exposure (APEX), as in CIPA DC-008-2016,
// Annex C: each value is a count of stops, and Ev = Av + Tv = Bv + Sv.

// apexISO is the ISO number whose speed value is 0: 100/2^5.
const apexISO = 3.125

// Av returns the aperture value 2 log2 N, in stops from f/1.
func Av(n unit.Stop) float64 { return 2 * math.Log2(float64(n)) }

// Tv returns the time value -log2 t in stops from 1 s, t in seconds.
func Tv(t unit.Shutter) float64 { return -math.Log2(float64(t)) }

// Sv returns the speed value log2(S/3.125), in stops from ISO 3.125.
func Sv(s unit.ISO) float64 { return math.Log2(float64(s) / apexISO) }

// Ev returns the exposure value of a setting, Av + Tv.
func Ev(n unit.Stop, t unit.Shutter) float64 { return Av(n) + Tv(t) }

// StopOfAv is the inverse of Av: 2^(Av/2).
func StopOfAv(av float64) unit.Stop { return unit.Stop(math.Exp2(av / 2)) }

// ShutterOfTv is the inverse of Tv: 2^-Tv seconds.
func ShutterOfTv(tv float64) unit.Shutter { return unit.Shutter(math.Exp2(-tv)) }

// ISOOfSv is the inverse of Sv: 3.125 x 2^Sv.
func ISOOfSv(sv float64) unit.ISO { return unit.ISO(apexISO * math.Exp2(sv)) }

package unit

import "strings"

// Illuminance limits: starlight to ten times full sun, in lux.
const (
	MinIlluminance Illuminance = 1e-6
	MaxIlluminance Illuminance = 1e6
)

// A foot-candle is one lumen per square foot: 1/0.3048^2 = 1/0.09290304 lx.
var illuminances = scalar{
	what: "illuminance",
	units: map[string]ratio{
		"": {1, 1}, "lx": {1, 1}, "lux": {1, 1}, "klx": {1000, 1}, "klux": {1000, 1}, "kilolux": {1000, 1},
		"fc": {1, 0.09290304}, "ftc": {1, 0.09290304}, "foot-candle": {1, 0.09290304}, "foot-candles": {1, 0.09290304},
		"footcandle": {1, 0.09290304}, "footcandles": {1, 0.09290304}, "foot candles": {1, 0.09290304},
	},
	min: float64(MinIlluminance), max: float64(MaxIlluminance), limits: "0.000001 to 1000000 lx",
	cure: `write lux, as in "1200", "1200 lx", "1.2 klx" or "110 fc"`,
}

// ParseIlluminance reads light: "1200 lx", "1.2 klx", "110 fc", "110
// foot-candles"; a bare number is lux. The result is in lux, from
// [MinIlluminance] to [MaxIlluminance]: zero light has no exposure.
func ParseIlluminance(s string) (Illuminance, error) {
	v, err := illuminances.parse(s)
	if err != nil {
		return 0, err
	}
	if cure := pointAsked(strings.ToLower(strings.TrimSpace(s))); cure != "" {
		return 0, &Error{What: "illuminance", Seen: s, Why: "a point that may part thousands", Cure: cure}
	}
	return Illuminance(v), nil
}

// Lux returns e as a plain number of lux.
func (e Illuminance) Lux() float64 { return float64(e) }

// FootCandles returns e as a plain number of foot-candles (lumens per square foot).
func (e Illuminance) FootCandles() float64 { return float64(e) * 0.09290304 }

// Format prints the light in lux, or foot-candles, to three figures: "1200 lx", "112 fc".
func (e Illuminance) Format(sys System) string {
	if sys == Imperial {
		return figures(e.FootCandles()) + " fc"
	}
	return figures(e.Lux()) + " lx"
}

// figures prints v with three figures at least: 0.512, 5.12, 51.2, 512, 5123.
func figures(v float64) string {
	switch a := max(v, -v); {
	case a >= 99.95:
		return trimmed(v, 0)
	case a >= 9.995:
		return trimmed(v, 1)
	case a >= 0.9995:
		return trimmed(v, 2)
	default:
		return trimmed(v, 3)
	}
}

package unit

import "strconv"

// pi as a constant, so that pi/180 below is rounded once.
const pi = 3.14159265358979323846264338327950288

var angles = scalar{
	what: "angle",
	units: map[string]ratio{
		"": {pi, 180}, "deg": {pi, 180}, "degree": {pi, 180}, "degrees": {pi, 180}, "°": {pi, 180},
		"rad": {1, 1}, "radian": {1, 1}, "radians": {1, 1},
	},
	signed: true, min: -2 * pi, max: 2 * pi, limits: "-360 to 360 deg",
	cure: `write degrees, as in "36.5" or "36.5 deg"`,
}

// ParseAngle reads an angle from -360 to 360 degrees: "36.5", "36.5 deg",
// "36.5°", "0.64 rad"; a bare number is degrees. The result is in radians.
func ParseAngle(s string) (Angle, error) {
	v, err := angles.parse(s)
	return Angle(v), err
}

// Format prints the angle in degrees with at most two decimals: "36.5 deg".
func (a Angle) Format() string { return trimmed(a.Degrees(), 2) + " deg" }

// trimmed prints v with at most so many decimals, closing zeros dropped.
func trimmed(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if decimals > 0 {
		for s[len(s)-1] == '0' {
			s = s[:len(s)-1]
		}
		if s[len(s)-1] == '.' {
			s = s[:len(s)-1]
		}
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// Package unit holds the quantities that rink people and photographers write
// down: lengths, angles, light, shutter times, stops and speeds.
//
// Inside the program everything is SI (metres, radians, lux, seconds); a
// quantity has its own type, so that a wrong unit does not compile. Inner
// loops take plain float64 in SI.
package unit

// Length is a length in metres.
type Length float64

// The units of length that the program reads and prints, in metres.
// The inch is 25.4 mm exactly (international yard and pound agreement, 1959).
const (
	Metre      Length = 1
	Centimetre Length = 0.01
	Millimetre Length = 0.001
	Inch       Length = 0.0254
	Foot       Length = 12 * Inch
)

// Metres returns l as a plain number of metres.
func (l Length) Metres() float64 { return float64(l) }

// Millimetres returns l as a plain number of millimetres.
func (l Length) Millimetres() float64 { return float64(l) * 1e3 }

// Inches returns l as a plain number of inches.
func (l Length) Inches() float64 { return float64(l / Inch) }

// Feet returns l as a plain number of feet.
func (l Length) Feet() float64 { return float64(l / Foot) }

// Angle is an angle in radians.
type Angle float64

// Degree is one degree, in radians.
const Degree Angle = 0.017453292519943295

// Radians returns a as a plain number of radians.
func (a Angle) Radians() float64 { return float64(a) }

// Degrees returns a as a plain number of degrees.
func (a Angle) Degrees() float64 { return float64(a / Degree) }

// Illuminance is light on a surface, in lux.
type Illuminance float64

// Shutter is an exposure time in seconds.
type Shutter float64

// Stop is a lens opening as an f-number: 2.8 for f/2.8.
type Stop float64

// Speed is a speed in metres per second.
type Speed float64

// Size is a width by a height.
type Size struct{ W, H Length }

// System is a way to print quantities: metric or imperial.
type System int

// The two systems. Metric is the zero value.
const (
	Metric System = iota
	Imperial
)

// String returns the system's name as it stands in files and flags.
func (s System) String() string {
	if s == Imperial {
		return "imperial"
	}
	return "metric"
}

// ParseSystem reads "metric" or "imperial".
func ParseSystem(s string) (System, error) {
	switch s {
	case "metric":
		return Metric, nil
	case "imperial":
		return Imperial, nil
	}
	return Metric, &Error{What: "units", Seen: s, Why: "unknown", Cure: "write metric or imperial"}
}

package unit

import (
	"encoding"
	"strconv"
)

// A quantity as text carries its unit and full precision, so that it reads
// back unchanged: "0.1143 m", "0.001 s", "f/2.8", "1200 lx". JSON numbers belong
// in fields whose name carries the unit (_m, _lx, _s); there use Metres, Lux, Seconds.

// plainDown is the size from which numbers are written without an exponent.
const plainDown = 1e-9

// full prints v so that it reads back to the last bit.
func full(v float64) string {
	if v != 0 && v > -plainDown && v < plainDown {
		return strconv.FormatFloat(v, 'e', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// MarshalText writes metres in full: "0.1143 m".
func (l Length) MarshalText() ([]byte, error) { return []byte(full(float64(l)) + " m"), nil }

// UnmarshalText reads what [ParseLength] reads.
func (l *Length) UnmarshalText(b []byte) error { return read(l, b, ParseLength) }

// Offset is a length with a sign, for places measured from a mark.
type Offset Length

// Length returns the offset as a length in metres, sign kept.
func (o Offset) Length() Length { return Length(o) }

// MarshalText writes metres in full: "-1.524 m".
func (o Offset) MarshalText() ([]byte, error) { return Length(o).MarshalText() }

// UnmarshalText reads what [ParseOffset] reads.
func (o *Offset) UnmarshalText(b []byte) error { return read((*Length)(o), b, ParseOffset) }

// MarshalText writes both sides in metres in full: "0.1397 m x 0.1143 m".
func (s Size) MarshalText() ([]byte, error) {
	return []byte(full(float64(s.W)) + " m x " + full(float64(s.H)) + " m"), nil
}

// UnmarshalText reads what [ParseSize] reads.
func (s *Size) UnmarshalText(b []byte) error { return read(s, b, ParseSize) }

// MarshalText writes radians in full: "0.5 rad".
func (a Angle) MarshalText() ([]byte, error) { return []byte(full(float64(a)) + " rad"), nil }

// UnmarshalText reads what [ParseAngle] reads.
func (a *Angle) UnmarshalText(b []byte) error { return read(a, b, ParseAngle) }

// MarshalText writes lux in full: "1200 lx".
func (e Illuminance) MarshalText() ([]byte, error) {
	text := full(float64(e))
	if pointAsked(text) != "" {
		text += "0" // "1.1250" has one reading
	}
	return []byte(text + " lx"), nil
}

// UnmarshalText reads what [ParseIlluminance] reads.
func (e *Illuminance) UnmarshalText(b []byte) error { return read(e, b, ParseIlluminance) }

// MarshalText writes seconds in full: "0.001 s".
func (t Shutter) MarshalText() ([]byte, error) { return []byte(full(float64(t)) + " s"), nil }

// UnmarshalText reads what [ParseShutter] reads.
func (t *Shutter) UnmarshalText(b []byte) error { return read(t, b, ParseShutter) }

// MarshalText writes the f-number in full: "f/2.8".
func (n Stop) MarshalText() ([]byte, error) { return []byte("f/" + full(float64(n))), nil }

// UnmarshalText reads what [ParseStop] reads.
func (n *Stop) UnmarshalText(b []byte) error { return read(n, b, ParseStop) }

// MarshalText writes the number in full: "ISO 3200".
func (i ISO) MarshalText() ([]byte, error) { return []byte("ISO " + full(float64(i))), nil }

// UnmarshalText reads what [ParseISO] reads.
func (i *ISO) UnmarshalText(b []byte) error { return read(i, b, ParseISO) }

// MarshalText writes metres per second in full: "8.2 m/s".
func (v Speed) MarshalText() ([]byte, error) { return []byte(full(float64(v)) + " m/s"), nil }

// UnmarshalText reads what [ParseSpeed] reads.
func (v *Speed) UnmarshalText(b []byte) error { return read(v, b, ParseSpeed) }

// MarshalText writes "metric" or "imperial".
func (s System) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads "metric" or "imperial".
func (s *System) UnmarshalText(b []byte) error { return read(s, b, ParseSystem) }

// read parses b into *v and leaves *v alone on an error.
func read[T any](v *T, b []byte, parse func(string) (T, error)) error {
	got, err := parse(string(b))
	if err == nil {
		*v = got
	}
	return err
}

var (
	_ encoding.TextUnmarshaler = (*Length)(nil)
	_ encoding.TextMarshaler   = Length(0)
)

package unit

import (
	"math"
	"strings"
)

// Limits of what is read; between them lies every camera made.
const (
	MinShutter Shutter = 1e-7  // seconds: ten million to the second
	MaxShutter Shutter = 86400 // seconds: one day
	MinStop    Stop    = 0.1
	MaxStop    Stop    = 1000
	MinISO     ISO     = 0.01
	MaxISO     ISO     = 1e9
)

// ISO is a sensitivity as the arithmetic ISO number: 800 for ISO 800.
type ISO float64

var shutters = scalar{
	what: "shutter",
	units: map[string]ratio{
		"": {1, 1}, "s": {1, 1}, "sec": {1, 1}, "second": {1, 1}, "seconds": {1, 1}, `"`: {1, 1},
		"ms": {1, 1000}, "millisecond": {1, 1000}, "milliseconds": {1, 1000},
	},
	min: float64(MinShutter), max: float64(MaxShutter), limits: "1/10000000 s to one day",
	cure: `write seconds, as in "1/1000 s", "1/1000" or "0.5"`,
}

// ParseShutter reads an exposure time: "1/1000 s", "1/1000", "0.5", "20 ms"; a
// bare number is seconds, and is asked about above 30. The result is in seconds, from [MinShutter] to
// [MaxShutter]; "1/1000" is exactly the float 0.001.
func ParseShutter(s string) (Shutter, error) {
	v, err := shutters.parse(s)
	if err != nil {
		return 0, err
	}
	if cure := bareAsked(strings.TrimSpace(s), Shutter(v)); cure != "" {
		return 0, &Error{What: "shutter", Seen: s, Why: "a very long time", Cure: cure}
	}
	return Shutter(v), nil
}

// Seconds returns t as a plain number of seconds.
func (t Shutter) Seconds() float64 { return float64(t) }

// Format prints the time as photographers write it: "1/1000 s", "1/812.7 s", "0.5 s", "2 s".
func (t Shutter) Format() string {
	if t >= 0.3 {
		return trimmed(float64(t), 2) + " s"
	}
	n := 1 / float64(t)
	if w := math.Round(n); math.Abs(n-w) < 1e-6*n {
		return fractionOfSecond(w, 0)
	}
	return fractionOfSecond(n, 1)
}

func fractionOfSecond(n float64, decimals int) string { return "1/" + trimmed(n, decimals) + " s" }

var stops = scalar{
	what: "stop", units: map[string]ratio{"": {1, 1}},
	min: float64(MinStop), max: float64(MaxStop), limits: "f/0.1 to f/1000",
	cure: `write an f-number, as in "f/2.8" or "2.8"`,
}

// ParseStop reads an f-number: "f/2.8", "F2.8", "ƒ/2.8" or "2.8", from
// [MinStop] to [MaxStop]. "f/2.8" is exactly the float 2.8.
func ParseStop(s string) (Stop, error) {
	text := strings.TrimSpace(s)
	for _, mark := range []string{"f/", "F/", "ƒ/", "f", "F", "ƒ"} {
		if rest, ok := strings.CutPrefix(text, mark); ok {
			text = rest
			break
		}
	}
	v, err := stops.parse(text)
	if err != nil {
		return 0, seenAs(err, s)
	}
	return Stop(v), nil
}

// Format prints the stop: "f/2.8".
func (n Stop) Format() string { return "f/" + figures(float64(n)) }

var isos = scalar{
	what: "ISO", units: map[string]ratio{"": {1, 1}},
	min: float64(MinISO), max: float64(MaxISO), limits: "0.01 to 1000000000",
	cure: `write the ISO number, as in "3200" or "ISO 3200"`,
}

// ParseISO reads a sensitivity: "3200" or "ISO 3200", from [MinISO] to [MaxISO].
func ParseISO(s string) (ISO, error) {
	text := strings.TrimSpace(s)
	if len(text) > 3 && strings.EqualFold(text[:3], "iso") {
		text = text[3:]
	}
	v, err := isos.parse(text)
	if err != nil {
		return 0, seenAs(err, s)
	}
	return ISO(v), nil
}

// seenAs puts the text as the user wrote it into an error about a part of it.
func seenAs(err error, s string) error {
	if e, ok := err.(*Error); ok {
		e.Seen = s
	}
	return err
}

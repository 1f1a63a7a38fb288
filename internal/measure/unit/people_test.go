package unit

import (
	"encoding/json"
	"strings"
	"testing"
)

// errorOf returns the error of a reading.
func errorOf[T any](_ T, err error) error { return err }

func TestErrorsNameTheTextSeen(t *testing.T) {
	cases := []struct {
		err  error
		says string
	}{
		{errorOf(ParseSize("5.5 x 4.5")), `size "5.5 x 4.5"`},
		{errorOf(ParseLength("42")), `length "42": a bare number`},
		{errorOf(ParseStop("wide")), `stop "wide"`},
		{errorOf(ParseISO("ISO none")), `ISO "ISO none"`},
		{errorOf(ParseLength("5")), `length "5"`},
		{errorOf(ParseSystem("furlongs")), `units "furlongs"`},
	}
	for _, c := range cases {
		if c.err == nil || !strings.Contains(c.err.Error(), c.says) {
			t.Errorf("%v, want %q", c.err, c.says)
		}
	}
}

// reads checks that what people write is read as a value, to the last bit.
func reads[T comparable](t *testing.T, text string, parse func(string) (T, error), want T) {
	t.Helper()
	if got, err := parse(text); err != nil || got != want {
		t.Errorf("%q read as %v, want %v: %v", text, got, want, err)
	}
}

func TestWhatPeopleWrite(t *testing.T) {
	reads(t, "4½ in", ParseLength, 0.1143)
	reads(t, "1/2 in", ParseLength, 0.0127)
	reads(t, "-5 ft", ParseOffset, -1.524)
	reads(t, "5.5 in x 4.5 in", ParseSize, Size{W: 5.5 * Inch, H: 4.5 * Inch})
	reads(t, "-36.5", ParseAngle, -36.5*Degree)
	reads(t, "1.2 klx", ParseIlluminance, 1200)
	reads(t, "1/1000", ParseShutter, 0.001)
	reads(t, "f/2.8", ParseStop, 2.8)
	reads(t, "3200", ParseISO, 3200)
	reads(t, "18 mph", ParseSpeed, 18*1609.344/3600)
	reads(t, "imperial", ParseSystem, Imperial)
}

// A quantity is a plain number in JSON, and null when it is unknown.
func TestMaybeInJSON(t *testing.T) {
	got, err := json.Marshal([]Maybe[Length]{Known(12 * Millimetre), {}})
	if err != nil || string(got) != "[0.012,null]" {
		t.Errorf("%s %v", got, err)
	}
}

// An error cuts a long text short and escapes what would drive a terminal.
func TestErrorsAreShort(t *testing.T) {
	v, err := ParseLength(strings.Repeat("\x1b[31m long ", 2000))
	if err == nil || len(err.Error()) > 400 || strings.ContainsRune(err.Error(), '\x1b') || v != 0 {
		t.Errorf("%v %v", v, err)
	}
}

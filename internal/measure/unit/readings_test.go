package unit

import (
	"strings"
	"testing"
)

// What people write in two ways is refused with both readings; what has one
// reading is read.
func TestTwoReadingsAreAskedAbout(t *testing.T) {
	light := func(s string) error { _, err := ParseIlluminance(s); return err }
	shutter := func(s string) error { _, err := ParseShutter(s); return err }
	length := func(s string) error { _, err := ParseLength(s); return err }
	for _, c := range []struct {
		parse func(string) error
		text  string
		asks  string // "" where it is read
	}{
		{light, "1.450", `is it 1.45 lx or 1450 lx? write "1.45" or "1450"`},
		{light, "1.455 lx", `is it 1.4550 lx or 1455 lx? write "1.4550" or "1455"`},
		{light, "1,450 lx", `is it 1.45 or 1450? write "1.45" or "1450"`},
		{light, "1.4550 lx", ""},
		{light, "1.45", ""},
		{light, "1.450 klx", ""},
		{light, "0.125 lx", ""},
		{shutter, "1000", `1000 s is 17 minutes; is it 1/1000? write "1/1000" or "1000 s"`},
		{shutter, "60", `60 s is 60 seconds; is it 1/60? write "1/60" or "60 s"`},
		{shutter, "8000", `8000 s is 2 hours; is it 1/8000?`},
		{shutter, "1000 s", ""},
		{shutter, "30", ""},
		{shutter, "2.5", ""},
		{length, "5,5 in", `is it 5.5? write "5.5", with a decimal point; or "55"`},
		{length, "1,450 m", `is it 1.45 or 1450?`},
		{length, "1.450 m", ""},
		{length, ",5 m", "no number"},
	} {
		err := c.parse(c.text)
		switch {
		case c.asks == "" && err != nil:
			t.Errorf("%s: %v, want it read", c.text, err)
		case c.asks != "" && (err == nil || !strings.Contains(err.Error(), c.asks)):
			t.Errorf("%s: %v, want it asked: %s", c.text, err, c.asks)
		}
	}
}

func TestParseFocal(t *testing.T) {
	for text, want := range map[string]Length{"200": 200 * Millimetre, "200 mm": 200 * Millimetre, "50.5": 50.5 * Millimetre, "2 in": 2 * Inch} {
		if got, err := ParseFocal(text); err != nil || got != want {
			t.Errorf("%s reads as %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"-50", "x", "", "50 furlongs", "1e9", "85,5"} {
		if got, err := ParseFocal(text); err == nil {
			t.Errorf("%q reads as %v", text, got)
		}
	}
}

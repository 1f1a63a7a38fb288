package unit

import (
	"math"
	"testing"
)

// seeds are texts from which every fuzz target starts; testdata/fuzz holds more
// when one was found to matter.
var seeds = []string{
	"", " ", "5", "4 1/2 in", "4½ in", "5' 6\"", "5 ft 6 in", "114 mm", "8.5 m", "-5 ft", "1e3 mm", "1e999 m", "NaN m", "Inf", "0x10 mm",
	"1/0 in", "1/1000 s", "1/1000", "f/2.8", "ƒ/2.8", "f/", "ISO 3200", "1.2 klx", "110 fc", "36 x 24 mm", "5.5 in x 4.5 in", "x", "6000 x 4000",
	"45 deg", "45°", "0.5 rad", "8 m/s", "60 mph", "5 ft 14 in", "4,5 in", "\xff\xfe", "9999999999999999999999999 m", "’’”", "-", "+", "--5 in", "5'-6\"", ".", "e", "1e", "1e-", "½", "1/½ in",
}

// fuzzScalar feeds one parser: whatever it takes must be finite and within
// limits, and whatever it refuses must say so in a short message.
func fuzzScalar[T ~float64](f *testing.F, parse func(string) (T, error), lo, hi float64) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		v, err := parse(s)
		if err != nil {
			if v != 0 || len(err.Error()) > 1000 {
				t.Errorf("%q: value %v with error %v", s, float64(v), err)
			}
			return
		}
		if x := float64(v); math.IsNaN(x) || x < lo || x > hi {
			t.Errorf("%q read as %v", s, x)
		}
	})
}

func FuzzParseLength(f *testing.F) { fuzzScalar(f, ParseLength, 0, float64(MaxLength)) }

func FuzzParseOffset(f *testing.F) {
	fuzzScalar(f, ParseOffset, -float64(MaxLength), float64(MaxLength))
}

func FuzzParseAngle(f *testing.F) { fuzzScalar(f, ParseAngle, -2*math.Pi, 2*math.Pi) }

func FuzzParseIlluminance(f *testing.F) {
	fuzzScalar(f, ParseIlluminance, float64(MinIlluminance), float64(MaxIlluminance))
}

func FuzzParseShutter(f *testing.F) {
	fuzzScalar(f, ParseShutter, float64(MinShutter), float64(MaxShutter))
}

func FuzzParseStop(f *testing.F) { fuzzScalar(f, ParseStop, float64(MinStop), float64(MaxStop)) }

func FuzzParseISO(f *testing.F) { fuzzScalar(f, ParseISO, float64(MinISO), float64(MaxISO)) }

func FuzzParseSpeed(f *testing.F) { fuzzScalar(f, ParseSpeed, 0, float64(MaxSpeed)) }

func FuzzParseSize(f *testing.F) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		v, err := ParseSize(s)
		if err == nil && !(v.W > 0 && v.H > 0 && v.W <= MaxLength && v.H <= MaxLength) {
			t.Errorf("%q read as %v", s, v)
		}
		if w, h, err := ParsePixels(s); err == nil && (w < 1 || h < 1 || w > MaxPixels || h > MaxPixels) {
			t.Errorf("%q read as %d x %d pixels", s, w, h)
		}
		SystemOf(s)
	})
}

package main

import "testing"

// FuzzParseAim: whatever is read is an aim that the fit takes.
func FuzzParseAim(f *testing.F) {
	for _, s := range []string{"40,5", "-56,0", " 1 deg , 2 ", "89.9,-89.9", "90,0", "1,2,3", "", ",", "1e400,0", "NaN,0", "0x1p4,0", "4°,5°"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		at, err := parseAim(s)
		if err != nil {
			return
		}
		for _, v := range at {
			if !(v >= -fitEnd && v <= fitEnd) {
				t.Errorf("%q reads as %v", s, at)
			}
		}
	})
}

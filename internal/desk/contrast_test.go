package desk

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"testing"
)

// Contrast that WCAG 2.2 asks for at level AA: success criteria 1.4.3 (text)
// and 1.4.11 (parts of controls and graphics).
const (
	textContrast    = 4.5
	graphicContrast = 3.0
)

// TestColoursKeepContrast reads both themes from theme.css and computes the
// contrast of every pair that is used together.
func TestColoursKeepContrast(t *testing.T) {
	css, err := assetFiles.ReadFile("assets/theme.css")
	if err != nil {
		t.Fatal(err)
	}
	colours := map[string][2]string{}
	for _, m := range regexp.MustCompile(`--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)`).FindAllStringSubmatch(string(css), -1) {
		colours[m[1]] = [2]string{m[2], m[3]}
	}
	if len(colours) < 10 {
		t.Fatalf("read %d colours", len(colours))
	}
	words := []string{"ink", "ink-soft", "red-line", "blue-line", "green-light", "amber"}
	for _, ground := range []string{"stands", "ice", "picked"} {
		for _, word := range words {
			checkContrast(t, colours, word, ground, textContrast)
		}
	}
	checkContrast(t, colours, "kick-ink", "kick", textContrast)
	for _, ground := range []string{"stands", "ice"} {
		checkContrast(t, colours, "focus", ground, graphicContrast)
	}
}

func checkContrast(t *testing.T, colours map[string][2]string, a, b string, least float64) {
	t.Helper()
	for i, theme := range []string{"light", "dim"} {
		ca, cb := colours[a][i], colours[b][i]
		if ca == "" || cb == "" {
			t.Fatalf("theme.css lacks --%s or --%s", a, b)
		}
		if got := contrast(ca, cb); got < least {
			t.Errorf("%s theme: %s %s on %s %s has contrast %.2f, at least %g", theme, a, ca, b, cb, got, least)
		}
	}
}

// contrast returns the contrast ratio of WCAG 2.2, 1 to 21.
func contrast(a, b string) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

// luminance returns the relative luminance of WCAG 2.2, 0 to 1.
func luminance(hex string) float64 {
	part := func(from int) float64 {
		v, err := strconv.ParseUint(hex[from:from+2], 16, 8)
		if err != nil {
			panic(fmt.Sprintf("colour %s: %v", hex, err))
		}
		c := float64(v) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*part(1) + 0.7152*part(3) + 0.0722*part(5)
}

// TestContrastOfKnownPairs checks the formula at its ends: black on white is 21 to 1.
func TestContrastOfKnownPairs(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{{"#000000", "#ffffff", 21}, {"#777777", "#ffffff", 4.478}, {"#123456", "#123456", 1}} {
		if got := contrast(c.a, c.b); math.Abs(got-c.want) > 0.001 {
			t.Errorf("contrast of %s on %s is %.3f, expected %.3f", c.a, c.b, got, c.want)
		}
	}
}

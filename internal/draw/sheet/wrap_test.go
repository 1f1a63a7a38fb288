package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"pgregory.net/rapid"
)

func TestWrapFitsAndLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(rapid.StringMatching(`[a-zA-Z½×0-9-]{1,14}`), 1, 12).Draw(t, "words")
		face := rapid.SampledFrom([]sheet.Face{sheet.Regular, sheet.Bold, sheet.Italic, sheet.Mono}).Draw(t, "face")
		width := rapid.Float64Range(8, 80).Draw(t, "width")
		lines := face.Wrap(strings.Join(words, " "), 3, width)
		for _, l := range lines {
			if face.Width(l, 3) > width+1e-9 {
				t.Fatalf("line %q is %g mm wide, more than %g", l, face.Width(l, 3), width)
			}
		}
		letters := func(s string) string { return strings.ReplaceAll(s, " ", "") }
		if got, want := letters(strings.Join(lines, "")), letters(strings.Join(words, "")); got != want {
			t.Fatalf("wrapped %q, want %q", got, want)
		}
	})
}

func TestWrapKeepsLineBreaks(t *testing.T) {
	if got, want := sheet.Regular.Wrap("one\n\ntwo three", 3, 100), []string{"one", "", "two three"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// A width too small for any letter still ends, one letter a line.
func TestWrapOfNoWidth(t *testing.T) {
	if got, want := sheet.Regular.Wrap("½ab", 3, 0), []string{"½", "a", "b"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestShorten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "s")
		width := rapid.Float64Range(3, 60).Draw(t, "width")
		got := sheet.Regular.Shorten(s, 3, width)
		if got != s && (!strings.HasSuffix(got, "…") || sheet.Regular.Width(got, 3) > width+1e-9) {
			t.Fatalf("%q became %q, %g mm of %g", s, got, sheet.Regular.Width(got, 3), width)
		}
		if got == s && sheet.Regular.Width(s, 3) > width && s != "…" {
			t.Fatalf("%q kept at %g mm of %g", s, sheet.Regular.Width(s, 3), width)
		}
	})
}

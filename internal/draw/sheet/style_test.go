package sheet_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
)

func TestLaterRuleWins(t *testing.T) {
	red, blue := sheet.RGB(255, 0, 0), sheet.RGB(0, 0, 255)
	s := sheet.Stylesheet{
		{"a", sheet.Style{Stroke: red, Width: 1, Dash: []float64{2, 1}}},
		{"b", sheet.Style{Stroke: blue, Dash: sheet.Solid}},
	}
	// The order of names in the class list does not matter, as in CSS.
	for _, class := range []string{"a b", "b a", "x b  a"} {
		got := s.Resolve(class, sheet.Style{Size: 3})
		if got.Stroke != blue || got.Width != 1 || len(got.Dash) != 0 || got.Size != 3 {
			t.Errorf("Resolve(%q) = %+v", class, got)
		}
	}
	if got := s.Resolve("ab", sheet.Style{}); got.Stroke != (sheet.Colour{}) {
		t.Errorf(`class "ab" took a rule: %+v`, got)
	}
}

func TestMergeKeepsTheFirst(t *testing.T) {
	a := sheet.Stylesheet{{"x", sheet.Style{Width: 1}}}
	b := sheet.Stylesheet{{"x", sheet.Style{Width: 2}}, {"y", sheet.Style{Width: 3}}}
	got := a.Merge(b)
	if len(got) != 2 || got[0].Style.Width != 1 || got[1].Class != "y" {
		t.Errorf("Merge = %+v", got)
	}
}

func TestCSS(t *testing.T) {
	s := sheet.Stylesheet{
		{"line", sheet.Style{Stroke: sheet.RGB(1, 2, 255).Named("ink").Alpha(0.5), Width: 0.35, Dash: []float64{2, 0.5}, Fill: sheet.None}},
		{"words", sheet.Style{Face: sheet.Bold, Size: 2.9, Cap: sheet.Round, Dash: sheet.Solid}},
		{"hit", sheet.Style{}},
	}
	want := `.map .line{stroke:var(--sheet-ink,#0102ff);stroke-opacity:0.502;fill:none;stroke-width:0.35;stroke-dasharray:2 0.5}
.map .words{stroke-dasharray:none;stroke-linecap:round;font-family:Go,"Helvetica Neue",Arial,sans-serif;font-weight:700;font-style:normal;font-size:2.9px}
`
	if got := s.CSS(".map"); got != want {
		t.Errorf("CSS:\n%s\nwant:\n%s", got, want)
	}
	if strings.Contains(s.CSS(""), ".hit") {
		t.Error("a class that says nothing has a rule")
	}
}

// The palette must read in grey: text on paper has at least 4.5 to 1, the
// contrast that WCAG 2.1, success criterion 1.4.3, asks of text.
func TestTextColoursAreDarkEnough(t *testing.T) {
	for _, c := range []sheet.Colour{sheet.Ink, sheet.Slate, sheet.Deep, sheet.Good, sheet.Bad} {
		if got := contrast(c, sheet.White); got < 4.5 {
			t.Errorf("%s on paper: contrast %.2f", c.Name, got)
		}
	}
	if got := contrast(sheet.Doubt, sheet.White); got < 3 { // a graphic, never text
		t.Errorf("doubt on paper: contrast %.2f", got)
	}
}

package sheet_test

import (
	"bytes"
	"testing"

	"example.org/rinkpane/sheet"
)

func TestSVGEscapesAndRounds(t *testing.T) {
	d := sheet.New("t", 100, 50, sheet.Stylesheet{
		{"cut", sheet.Style{Stroke: sheet.RGB(0, 0, 0), Width: sheet.W50}},
		{"note", sheet.Style{Fill: sheet.RGB(0, 0, 0).Named("ink"), Size: 4, Face: sheet.Bold}},
	})
	d.Add("CUT", "cut", sheet.Line{A: sheet.Pt(1.23456, -0.001), B: sheet.Pt(10, 20)}).With("hole", `a"<b>`)
	d.Add("TEXT", "note", sheet.Text{At: sheet.Pt(50, 25), S: "4½ × <5> & Ø", Anchor: sheet.Middle})
	got := sheet.SVG(d)
	for _, want := range []string{
		`width="100mm" height="50mm" viewBox="0 0 100 50"`,
		`<path d="M1.23 0L10 20" class="cut" data-hole="a&quot;&lt;b&gt;"/>`,
		`4½ × &lt;5&gt; &amp; Ø</text>`,
		".note{fill:#000000;",
	} {
		if !bytes.Contains(got, []byte(want)) {
			t.Errorf("SVG lacks %s:\n%s", want, got)
		}
	}
	inline := sheet.InlineSVG(d)
	if bytes.Contains(inline, []byte("style")) {
		t.Errorf("inline SVG carries a style:\n%s", inline)
	}
	if !bytes.Equal(sheet.SVG(d), got) {
		t.Error("a second writing differs")
	}
}

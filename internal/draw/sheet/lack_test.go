package sheet_test

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
)

// foreign are names in writings that the Go fonts do not hold, and how many
// letters each lacks.
var foreign = []struct {
	writing, name string
	letters       int
}{
	{"Devanagari", "रिंक", 4},
	{"Arabic", "حلبة الجليد", 8},
	{"Hebrew", "החלקה", 4},
	{"Thai", "ลานสเก็ต", 8},
	{"Chinese", "冰场", 2},
}

func named(name string) *sheet.Drawing {
	d := sheet.New("lack", 210, 60, sheet.Base())
	g, _ := d.Group(sheet.LayerText, "")
	g.Add("title", sheet.Text{At: sheet.Pt(20, 30), S: name})
	return d
}

func TestLackNamesWordsAndLetters(t *testing.T) {
	for _, c := range foreign {
		l := named(c.name).Lacking()
		if len(l.Letters) != c.letters || strings.Join(l.Words, " ") != c.name {
			t.Errorf("%s: %d letters of %q, want %d of %q", c.writing, len(l.Letters), l.Words, c.letters, c.name)
		}
		if said := l.String(); !strings.Contains(said, c.name) || !strings.Contains(said, "boxes") {
			t.Errorf("%s: %q", c.writing, said)
		}
	}
	if l := named("Řež, Ωμέγα, Лёд, ½ × Ø").Lacking(); l.String() != "" {
		t.Errorf("the fonts hold these: %v", l)
	}
	both := sheet.Lacking("Rink 冰场").And(sheet.Lacking("冰场", "冰"))
	if len(both.Letters) != 2 || len(both.Words) != 2 {
		t.Errorf("two lacks as one: %v", both)
	}
}

// A page cannot show what it lacks, so it gives the letters' numbers; it says so
// within its own size, and a page that lacks nothing says nothing.
func TestPageSaysWhatItLacks(t *testing.T) {
	for _, c := range foreign {
		text := tool(t, "poppler-utils", "l.pdf", pdfOf(t, named(c.name)), "pdftotext", "-layout", "FILE", "-")
		if strings.ContainsRune(text, []rune(c.name)[0]) {
			t.Errorf("%s: a box is read as the letter that it stands for the first time: %q", c.writing, text)
		}
		if !strings.Contains(text, "The fonts of this drawing lack ") || !strings.Contains(text, "drawn as boxes: U+") {
			t.Errorf("%s: the page says %q", c.writing, text)
		}
	}
	if text := tool(t, "poppler-utils", "l.pdf", pdfOf(t, named("Лёд")), "pdftotext", "FILE", "-"); strings.Contains(text, "lack") {
		t.Errorf("nothing is missing, yet: %q", text)
	}
}

func TestPicturesSayWhatTheyLack(t *testing.T) {
	plain, err1 := sheet.PNG(named("Rink"), 50)
	boxes, err2 := sheet.PNG(named("冰场"), 50)
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	if a, b := pngHeight(t, plain), pngHeight(t, boxes); b <= a {
		t.Errorf("the picture is %d pixels high with the line, %d without", b, a)
	}
	svg := string(sheet.SVG(named("冰场")))
	if !strings.Contains(svg, "The fonts in this drawing lack 2 letters of: 冰场.") {
		t.Errorf("the SVG does not say it: %.300s", svg[strings.Index(svg, "</style>"):])
	}
}

func pdfOf(t *testing.T, d *sheet.Drawing) []byte {
	t.Helper()
	data, err := sheet.PDF(t.Context(), sheet.Info{}, sheet.Page{Drawing: d})
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func pngHeight(t *testing.T, data []byte) int {
	t.Helper()
	c, err := png.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return c.Height
}

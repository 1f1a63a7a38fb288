package sheet_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"pgregory.net/rapid"
)

var update = flag.Bool("update", false, "write the golden drawings anew")

// golden compares a drawing with the file of its name in testdata.
func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs from the golden drawing; look at both, then run go test ./internal/draw/sheet -update", name)
	}
}

func TestGoldenSample(t *testing.T) { golden(t, "sample.svg", sheet.InlineSVG(sample())) }

func TestGoldenParts(t *testing.T) { golden(t, "parts.svg", sheet.InlineSVG(parts())) }

// wellFormed reads a whole document with the standard library's reader and
// returns its elements.
func wellFormed(data []byte) ([]xml.StartElement, error) {
	var out []xml.StartElement
	dec := xml.NewDecoder(bytes.NewReader(data))
	for {
		tok, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return out, nil
		}
		if err != nil {
			return nil, err
		}
		if e, ok := tok.(xml.StartElement); ok {
			out = append(out, e.Copy())
		}
	}
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

func TestSVGFile(t *testing.T) {
	got := sheet.SVG(sample())
	elements, err := wellFormed(got)
	if err != nil {
		t.Fatal(err)
	}
	root := elements[0]
	if attr(root, "width") != "200mm" || attr(root, "height") != "120mm" || attr(root, "viewBox") != "0 0 200 120" {
		t.Errorf("root: %v", root.Attr)
	}
	for _, want := range []string{
		// 5 1/2 in by 3 in with corners of 1/2 in, clockwise from the top edge.
		`<path d="M32.7 15L147 15A12.7 12.7 0 0 1 159.7 27.7L159.7 78.5A12.7 12.7 0 0 1 147 91.2L32.7 91.2A12.7 12.7 0 0 1 20 78.5L20 27.7A12.7 12.7 0 0 1 32.7 15Z"`,
		`data-hole="B-goal" role="button" tabindex="0" aria-label="Hole outline"><title>Hole outline</title>`,
		`<circle cx="50" cy="50" r="10"`,
		`4½ in × 5½ in, Ø 12.7 ±0.2</text>`,
		`<a href="https://example.org/">`,
		`@font-face{font-family:Go;`,
	} {
		if !bytes.Contains(got, []byte(want)) {
			t.Errorf("lacks %s", want)
		}
	}
	if !bytes.Equal(sheet.SVG(sample()), got) {
		t.Error("a second writing differs")
	}
}

func TestInlineSVGNeedsNoStyleOfItsOwn(t *testing.T) {
	got := string(sheet.InlineSVG(sample()))
	for _, no := range []string{"<style", "style=", "<?xml", "textLength", "mm\""} {
		if strings.Contains(got, no) {
			t.Errorf("inline SVG holds %s", no)
		}
	}
}

// Any text, title, class, key or link leaves a well-formed document, and no link to a script.
func TestAnyTextIsEscaped(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.String().Draw(t, "s")
		d := sheet.New(s, 10, 10, sheet.Base())
		d.Title, d.Desc = s, s
		d.Add(s, "text", sheet.Text{S: s}).Titled(s).With(s, s).As(s).To(s)
		d.Add("", s, sheet.Line{}).Titled(s)
		for _, data := range [][]byte{sheet.SVG(d), sheet.InlineSVG(d)} {
			elements, err := wellFormed(data)
			if err != nil {
				t.Fatalf("%v in\n%s", err, data)
			}
			for _, e := range elements {
				if e.Name.Local == "script" || strings.HasPrefix(attr(e, "href"), "javascript") {
					t.Fatalf("%v", e)
				}
			}
		}
	})
}

func FuzzSVG(f *testing.F) {
	for _, s := range []string{"", "a<b>&\"'", "½ × Ø", "\x00\x1f\ufffe", "javascript:alert(1)", "]]>", "\xff\xfe"} {
		f.Add(s, 1.5)
	}
	f.Fuzz(func(t *testing.T, s string, v float64) {
		d := sheet.New("f", 10, v, sheet.Base())
		d.Add(s, "text", sheet.Text{At: sheet.Pt(v, -v), S: s, Size: v, Rotate: v}).Titled(s).To(s)
		d.Add("", "edge", sheet.Arc{R: v, From: v, Sweep: math.Mod(v, 7)})
		if _, err := wellFormed(sheet.SVG(d)); err != nil {
			t.Fatalf("%v", err)
		}
	})
}

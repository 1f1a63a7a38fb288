package sheet_test

import (
	"bytes"
	"context"
	"encoding/xml"
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/cores"
)

// The readers are poppler's pdfinfo, pdffonts and pdftotext (package
// poppler-utils) and MuPDF's mutool (mupdf-tools), both independent of ours.

const ptPerMM = 72 / 25.4

func samplePDF(t *testing.T) []byte {
	t.Helper()
	info := sheet.Info{
		Title: "Sample ½ (two)", Author: "Rinkpane", Subject: "check", Keywords: "holes, glass", Creator: "rinkpane test",
		Date: time.Date(2026, 1, 5, 8, 30, 0, 0, time.UTC),
	}
	second := sample()
	second.Add(sheet.LayerText, "note", sheet.Text{At: sheet.Pt(10, 10), S: "back to page 1"}).To("#page=1")
	got, err := sheet.PDF(t.Context(), info,
		sheet.Page{Drawing: sample(), Bookmarks: []sheet.Bookmark{{Title: "Holes × 2"}, {Title: "B-goal", Level: 1, Y: 30}, {Title: "A-goal", Level: 1, Y: 60}}},
		sheet.Page{Drawing: second, Bookmarks: []sheet.Bookmark{{Title: "Sign-off"}}})
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func TestPDFIsTheSameEveryTime(t *testing.T) {
	if !bytes.Equal(samplePDF(t), samplePDF(t)) {
		t.Error("two writings differ")
	}
}

func TestPDFNeedsAPage(t *testing.T) {
	if _, err := sheet.PDF(t.Context(), sheet.Info{}); err == nil {
		t.Error("no error without pages")
	}
}

func TestPopplerReadsPDF(t *testing.T) {
	pdf := samplePDF(t)
	info := tool(t, "poppler-utils", "s.pdf", pdf, "pdfinfo", "-isodates", "FILE")
	for _, want := range []string{
		"Title:           Sample ½ (two)", "Author:          Rinkpane", "Keywords:        holes, glass", "Pages:           2",
		"CreationDate:    2026-01-05T08:30:00Z", "Page size:       566.929 x 340.15", // 200 x 120 mm
	} {
		if !strings.Contains(info, want) {
			t.Errorf("pdfinfo lacks %q:\n%s", want, info)
		}
	}
	fonts := strings.Split(strings.TrimSpace(tool(t, "poppler-utils", "s.pdf", pdf, "pdffonts", "FILE")), "\n")[2:]
	if len(fonts) != 4 {
		t.Errorf("%d fonts, want 4", len(fonts))
	}
	for _, f := range fonts {
		// Embedded, subset, with a map to Unicode.
		if !regexp.MustCompile(`^[A-Z]{6}\+Go\S+ +CID TrueType +Identity-H +yes yes yes`).MatchString(f) {
			t.Errorf("font %s", f)
		}
	}
}

// word is a word of pdftotext -bbox, in points from the page's top left corner.
type word struct {
	XMin float64 `xml:"xMin,attr"`
	XMax float64 `xml:"xMax,attr"`
	S    string  `xml:",chardata"`
}

func TestPopplerFindsText(t *testing.T) {
	out := tool(t, "poppler-utils", "s.pdf", samplePDF(t), "pdftotext", "-f", "1", "-l", "1", "-bbox", "FILE", "-")
	var doc struct {
		Words []word `xml:"body>doc>page>word"`
	}
	if err := xml.Unmarshal([]byte(out), &doc); err != nil {
		t.Fatal(err)
	}
	places := map[string]word{}
	for _, w := range doc.Words {
		places[w.S] = w
	}
	const s = `4½ in × 5½ in, Ø 12.7 ±0.2`
	width := sheet.Regular.Width(s, 4)
	for _, c := range []struct {
		s  string
		mm float64
		of func(word) float64
	}{
		{"4½", 100 - width/2, func(w word) float64 { return w.XMin }},
		{"±0.2", 100 + width/2, func(w word) float64 { return w.XMax }},
		{"end", 190, func(w word) float64 { return w.XMax }},
		{"top", 30, func(w word) float64 { return w.XMin }},
	} {
		w, ok := places[c.s]
		if !ok {
			t.Errorf("no word %q among %v", c.s, doc.Words)
			continue
		}
		// Advances in the file are whole thousandths of an em: 0.5e-3 x 4 mm a letter.
		if got := c.of(w) / ptPerMM; math.Abs(got-c.mm) > 0.03 {
			t.Errorf("%q stands at %.3f mm, want %.3f", c.s, got, c.mm)
		}
	}
}

// traced is an element of mutool's trace.
type traced struct {
	XMLName   xml.Name
	Transform string   `xml:"transform,attr"`
	LineWidth string   `xml:"linewidth,attr"`
	Rect      string   `xml:"rect,attr"`
	X         string   `xml:"x,attr"`
	Y         string   `xml:"y,attr"`
	X3        string   `xml:"x3,attr"`
	Y3        string   `xml:"y3,attr"`
	Children  []traced `xml:",any"`
}

// corners returns the end points of a traced path on the page, in millimetres
// from the top left corner.
func (e traced) corners(t *testing.T) [][2]float64 {
	t.Helper()
	m := numbers(t, e.Transform)
	var out [][2]float64
	for _, c := range e.Children {
		xs, ys := c.X, c.Y
		if c.X3 != "" {
			xs, ys = c.X3, c.Y3
		}
		if xs == "" {
			continue
		}
		x, y := numbers(t, xs)[0], numbers(t, ys)[0]
		out = append(out, [2]float64{(m[0]*x + m[2]*y + m[4]) / ptPerMM, (m[1]*x + m[3]*y + m[5]) / ptPerMM})
	}
	return out
}

func numbers(t *testing.T, s string) []float64 {
	t.Helper()
	var out []float64
	for _, f := range strings.Fields(s) {
		v, err := strconv.ParseFloat(f, 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, v)
	}
	return out
}

// The hole's outline must stand on the page where it was drawn, to 0.01 mm.
func TestMuPDFMeasuresTheOutline(t *testing.T) {
	out := tool(t, "mupdf-tools", "s.pdf", samplePDF(t), "mutool", "trace", "FILE", "1")
	var doc struct {
		Paths []traced `xml:"page>stroke_path"`
	}
	if err := xml.Unmarshal([]byte(out), &doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.Paths) < 5 {
		t.Fatalf("%d stroked paths", len(doc.Paths))
	}
	const x0, y0, x1, y1, r = 20, 15, 159.7, 91.2, 12.7
	got := doc.Paths[0].corners(t)
	for _, want := range [][2]float64{{x0 + r, y0}, {x1 - r, y0}, {x1, y0 + r}, {x1, y1 - r}, {x1 - r, y1}, {x0 + r, y1}, {x0, y1 - r}, {x0, y0 + r},
		{x1 - r + r*math.Sqrt2/2, y0 + r - r*math.Sqrt2/2}} { // the middle of a corner's arc
		if !near(got, want, 0.01) {
			t.Errorf("no corner within 0.01 mm of %v among %v", want, got)
		}
	}
	if w := numbers(t, doc.Paths[0].LineWidth)[0]; math.Abs(w-sheet.W50) > 1e-4 {
		t.Errorf("line width %g mm in the page's own unit", w)
	}
}

func near(pts [][2]float64, want [2]float64, tol float64) bool {
	for _, p := range pts {
		if math.Abs(p[0]-want[0]) <= tol && math.Abs(p[1]-want[1]) <= tol {
			return true
		}
	}
	return false
}

func TestMuPDFReadsOutlineAndLinks(t *testing.T) {
	pdf := samplePDF(t)
	out := tool(t, "mupdf-tools", "s.pdf", pdf, "mutool", "show", "FILE", "outline")
	var titles []string
	for line := range strings.Lines(out) {
		titles = append(titles, strings.Trim(regexp.MustCompile(`#.*`).ReplaceAllString(line, ""), " \t\n"))
	}
	want := []string{"+\t\"Holes × 2\"", "|\t\t\"B-goal\"", "|\t\t\"A-goal\"", "|\t\"Sign-off\""}
	if strings.Join(titles, "\n") != strings.Join(want, "\n") {
		t.Errorf("outline:\n%s", out)
	}
	catalog := tool(t, "mupdf-tools", "s.pdf", pdf, "mutool", "show", "FILE", "trailer/Root")
	for _, key := range []string{"/PrintScaling /None", "/PageMode /UseOutlines", "/Lang (en)"} {
		if !strings.Contains(catalog, key) {
			t.Errorf("catalog lacks %s:\n%s", key, catalog)
		}
	}
	if strings.Contains(string(pdf), "UserUnit") {
		t.Error("a page has a UserUnit")
	}
	links := tool(t, "mupdf-tools", "s.pdf", pdf, "mutool", "show", "FILE", "pages/2/Annots/2")
	if !strings.Contains(links, "/Dest") {
		t.Errorf("the second link on page 2 leads nowhere: %s", links)
	}
}

// TestPDFEndsWithItsContext: a long book is left at the next page, and says how far it is.
func TestPDFEndsWithItsContext(t *testing.T) {
	pages := make([]sheet.Page, 200)
	for i := range pages {
		pages[i] = sheet.Page{Drawing: &sheet.Drawing{W: 100, H: 100}}
	}
	ctx, stop := context.WithCancel(t.Context())
	told := 0
	ctx = cores.Told(ctx, func(string, float64) {
		if told++; told == 3 {
			stop()
		}
	})
	if _, err := sheet.PDF(ctx, sheet.Info{}, pages...); !errors.Is(err, context.Canceled) || told != 3 {
		t.Errorf("%v, told %d times", err, told)
	}
}

package sheet_test

import (
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
)

func BenchmarkDrawParts(b *testing.B) {
	for b.Loop() {
		parts()
	}
}

func BenchmarkSVG(b *testing.B) {
	d := parts()
	for b.Loop() {
		sheet.SVG(d)
	}
}

func BenchmarkInlineSVG(b *testing.B) {
	d := parts()
	for b.Loop() {
		sheet.InlineSVG(d)
	}
}

func BenchmarkPDF(b *testing.B) {
	d := parts()
	for b.Loop() {
		if _, err := sheet.PDF(b.Context(), sheet.Info{Title: "bench"}, sheet.Page{Drawing: d}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPDFBook40Pages(b *testing.B) {
	d := parts()
	pages := make([]sheet.Page, 40)
	for i := range pages {
		pages[i] = sheet.Page{Drawing: d, Bookmarks: []sheet.Bookmark{{Title: "page"}}}
	}
	for b.Loop() {
		if _, err := sheet.PDF(b.Context(), sheet.Info{Title: "bench"}, pages...); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkDXF(b *testing.B) {
	d := parts()
	for b.Loop() {
		sheet.DXF(d)
	}
}

func BenchmarkPNG150(b *testing.B) {
	d := parts()
	for b.Loop() {
		if _, err := sheet.PNG(d, 150); err != nil {
			b.Fatal(err)
		}
	}
}

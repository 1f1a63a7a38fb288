package chart_test

import (
	"testing"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
)

func BenchmarkPlanMapSVG(b *testing.B) {
	p := planOf(b, demo(b))
	for b.Loop() {
		sheet.InlineSVG(chart.PlanMap(p, 277))
	}
}

func BenchmarkPlanMapPDF(b *testing.B) {
	p := planOf(b, demo(b))
	for b.Loop() {
		if _, err := sheet.PDF(b.Context(), sheet.Info{}, sheet.Page{Drawing: chart.PlanMap(p, 277)}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBoardsStripSVG(b *testing.B) {
	p := planOf(b, demo(b))
	for b.Loop() {
		sheet.InlineSVG(chart.BoardsStrip(p, 400, 4))
	}
}

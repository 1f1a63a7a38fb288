package chart

import (
	"slices"

	"example.org/rinkpane/internal/draw/sheet"
)

// Colours of the arena's parts beside the palette of package sheet.
var (
	iceTint  = sheet.RGB(0xf3, 0xf8, 0xfb).Named("ice-field")
	redPaint = sheet.RGB(0xd8, 0xa3, 0x9c).Named("paint-red")
	bluPaint = sheet.RGB(0x9b, 0xbd, 0xd8).Named("paint-blue")
	crease   = sheet.RGB(0xd6, 0xe8, 0xf3).Named("crease")
	wall     = sheet.RGB(0xd9, 0xe0, 0xe5).Named("boards")
	glassy   = sheet.RGB(0x8f, 0xb9, 0xcf).Named("glass")
	glassIn  = sheet.RGB(0xe4, 0xf0, 0xf6).Named("glass-field")
)

// Styles returns the classes of all charts, those of package sheet included.
func Styles() sheet.Stylesheet {
	return slices.Concat(sheet.Base(), arenaStyles(), materialStyles(), plotStyles())
}

func arenaStyles() sheet.Stylesheet {
	return sheet.Stylesheet{
		{Class: "ice", Style: sheet.Style{Fill: iceTint}},
		{Class: "paint-red", Style: sheet.Style{Fill: redPaint}},
		{Class: "paint-blue", Style: sheet.Style{Fill: bluPaint}},
		{Class: "paint-line", Style: sheet.Style{Stroke: redPaint, Width: sheet.W18}},
		{Class: "crease", Style: sheet.Style{Fill: crease, Stroke: redPaint, Width: sheet.W18}},
		{Class: "goal", Style: sheet.Style{Fill: sheet.White, Stroke: sheet.Slate, Width: sheet.W25}},
		{Class: "boards", Style: sheet.Style{Fill: wall}},
		{Class: "boards-face", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W35}},
		{Class: "pane", Style: sheet.Style{Stroke: glassy, Width: sheet.W100}},
		{Class: "pane-unsaid", Style: sheet.Style{Stroke: sheet.Mist, Width: sheet.W50, Dash: []float64{0.8, 0.6}}},
		{Class: "pane-gate", Style: sheet.Style{Width: sheet.W50}},
		{Class: "stanchion", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W25}},
		{Class: "zone", Style: sheet.Style{Fill: sheet.Slate.Alpha(0.14), Stroke: sheet.Slate, Width: sheet.W13}},
		{Class: "zone-keep-out", Style: sheet.Style{Stroke: sheet.Bad, Width: sheet.W35}},
		{Class: "zone-broadcast", Style: sheet.Style{Dash: []float64{2, 0.7}, Width: sheet.W25}},
		{Class: "zone-hatch", Style: sheet.Style{Stroke: sheet.Bad, Width: sheet.W18}},
		{Class: "zone-text", Style: sheet.Style{Fill: sheet.Ink, Size: sizeTiny, Face: sheet.Regular}},
		{Class: "stretch", Style: sheet.Style{Stroke: sheet.Good, Width: sheet.W100}},
		{Class: "stretch-as-good", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W140}},
		{Class: "stretch-open", Style: sheet.Style{Stroke: sheet.Doubt, Width: sheet.W70, Dash: []float64{1, 0.8}}},
		{Class: "stretch-end", Style: sheet.Style{Stroke: sheet.Good, Width: sheet.W35}},
		{Class: "reach", Style: sheet.Style{Fill: sheet.Deep.Alpha(0.05), Stroke: sheet.Deep.Alpha(0.6), Width: sheet.W13}},
		{Class: "reach-quiet", Style: sheet.Style{Fill: sheet.None, Dash: []float64{1.2, 0.8}}},
		{Class: "reach-picked", Style: sheet.Style{Fill: sheet.None, Stroke: sheet.Deep, Width: sheet.W35}},
		{Class: "contour", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W25}},
		{Class: "contour-text", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Regular, Size: sheet.SizeSmall}},
		{Class: "unseen", Style: sheet.Style{Fill: sheet.Slate.Alpha(0.2)}},
		{Class: "plate", Style: sheet.Style{Fill: sheet.White.Alpha(0.72)}},
		{Class: "hole", Style: sheet.Style{Fill: sheet.White, Stroke: sheet.Deep, Width: sheet.W50}},
		{Class: "hole-pass", Style: sheet.Style{Fill: sheet.Good, Stroke: sheet.White, Width: sheet.W18}},
		{Class: "hole-fail", Style: sheet.Style{Fill: sheet.Bad, Stroke: sheet.White, Width: sheet.W18}},
		{Class: "hole-unknown", Style: sheet.Style{Fill: sheet.Doubt, Stroke: sheet.White, Width: sheet.W18}},
		{Class: "hole-off", Style: sheet.Style{Fill: sheet.White, Stroke: sheet.Slate, Width: sheet.W25, Dash: []float64{0.6, 0.5}}},
		{Class: "hole-sign", Style: sheet.Style{Stroke: sheet.White, Width: sheet.W35, Fill: sheet.None, Dash: sheet.Solid}},
		{Class: "hole-stays", Style: sheet.Style{Fill: sheet.Deep, Stroke: sheet.White, Width: sheet.W18}},
		{Class: "fate-sign", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W35, Fill: sheet.None, Dash: sheet.Solid}},
		{Class: "hole-cut", Style: sheet.Style{Fill: sheet.White, Stroke: sheet.Ink, Width: sheet.W25}},
		{Class: "hole-label", Style: sheet.Style{Fill: sheet.Ink, Face: sheet.Bold, Size: sheet.SizeText}},
		{Class: "hole-note", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Regular, Size: sizeTiny}},
		{Class: "picked", Style: sheet.Style{Stroke: sheet.Deep, Width: sheet.W70}},
		{Class: "hit", Style: sheet.Style{}},
		{Class: "hit-tag", Style: sheet.Style{}},
		{Class: "guide", Style: sheet.Style{Stroke: sheet.Deep, Width: sheet.W35, Dash: []float64{1.6, 0.8}}},
		{Class: "other", Style: sheet.Style{Fill: sheet.White, Stroke: sheet.Deep, Width: sheet.W35, Dash: []float64{0.7, 0.5}}},
		{Class: "station", Style: sheet.Style{Stroke: sheet.Slate, Width: sheet.W18}},
		{Class: "station-text", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Regular, Size: sizeTiny}},
		{Class: "side-text", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Italic, Size: sheet.SizeSmall}},
		{Class: "landmark", Style: sheet.Style{Stroke: sheet.Slate, Width: sheet.W18, Dash: []float64{1.4, 0.7, 0.3, 0.7}}},
		{Class: "glass", Style: sheet.Style{Fill: glassIn, Stroke: sheet.Slate, Width: sheet.W18}},
		{Class: "glass-unsaid", Style: sheet.Style{Fill: sheet.White, Dash: []float64{1, 0.7}}},
		{Class: "pane-text", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Regular, Size: sizeTiny}},
		{Class: "glass-text", Style: sheet.Style{Fill: sheet.Slate, Face: sheet.Regular, Size: sizeTiny}},
		{Class: "gate", Style: sheet.Style{Stroke: sheet.Ink, Width: sheet.W35}},
		{Class: "window", Style: sheet.Style{Fill: sheet.White, Stroke: sheet.Deep, Width: sheet.W35}},
		{Class: "window-printed", Style: sheet.Style{Dash: []float64{1, 0.6}}},
		{Class: "ice-line", Style: sheet.Style{Stroke: sheet.Deep, Width: sheet.W50}},
		{Class: "curve", Style: sheet.Style{Fill: sheet.Frost}},
	}
}

// sizeTiny is the smallest type, for what is looked up rather than read, in mm:
// capitals 1.4 mm high.
const sizeTiny = 2.0

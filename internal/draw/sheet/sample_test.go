package sheet_test

import (
	"image"
	"image/color"
	"math"

	"example.org/rinkpane/internal/draw/sheet"
)

// sample is a drawing with every kind of shape at known places.
func sample() *sheet.Drawing {
	black := sheet.RGB(0, 0, 0)
	d := sheet.New("sample", 200, 120, sheet.Stylesheet{
		{"cut", sheet.Style{Stroke: black, Width: sheet.W50}},
		{"thin", sheet.Style{Stroke: sheet.RGB(0x20, 0x60, 0x90), Width: sheet.W18, Dash: []float64{3, 1, 0.5, 1}}},
		{"tint", sheet.Style{Fill: sheet.RGB(0x80, 0xb0, 0xd0).Alpha(0.4)}},
		{"note", sheet.Style{Fill: black, Size: 4, Face: sheet.Regular}},
		{"strong", sheet.Style{Face: sheet.Bold}},
		{"slanted", sheet.Style{Face: sheet.Italic}},
		{"code", sheet.Style{Face: sheet.Mono}},
	})
	d.Title, d.Desc = "Sample", "Every kind of shape at known places."
	d.Add(sheet.LayerCut, "cut", sheet.RoundRect(sheet.Rect{X: 20, Y: 15, W: 139.7, H: 76.2}, 12.7)).
		Titled("Hole outline").With("hole", "B-goal").As("button")
	d.Add(sheet.LayerCut, "cut", sheet.Circle{C: sheet.Pt(50, 50), R: 10})
	d.Add(sheet.LayerDatum, "thin", sheet.Line{A: sheet.Pt(10, 53.1), B: sheet.Pt(190, 53.1)})
	d.Add(sheet.LayerEngrave, "cut", sheet.Arc{C: sheet.Pt(100, 50), R: 20, From: math.Pi / 6, Sweep: 2 * math.Pi / 3})
	d.Add(sheet.LayerEngrave, "cut", sheet.Circle{C: sheet.Pt(150, 50), R: 5})
	ring := sheet.Path{}
	ring.Add(sheet.RoundRect(sheet.Rect{X: 120, Y: 70, W: 20, H: 15}, 3))
	ring.Add(sheet.RoundRect(sheet.Rect{X: 124, Y: 74, W: 12, H: 7}, 0))
	d.Add("tint", "tint cut", ring)
	wave := sheet.Path{}
	wave.MoveTo(sheet.Pt(30, 80))
	wave.CubicTo(sheet.Pt(40, 60), sheet.Pt(50, 100), sheet.Pt(60, 80))
	d.Add(sheet.LayerEngrave, "thin", wave)
	d.Add(sheet.LayerText, "note", sheet.Text{At: sheet.Pt(100, 100), S: `4½ in × 5½ in, Ø 12.7 ±0.2`, Anchor: sheet.Middle})
	d.Add(sheet.LayerText, "note strong", sheet.Text{At: sheet.Pt(10, 115), S: "Turned up", Rotate: math.Pi / 2})
	d.Add(sheet.LayerText, "note slanted", sheet.Text{At: sheet.Pt(190, 100), S: "right end", Anchor: sheet.End, VAlign: sheet.Centre, Size: 6})
	d.Add(sheet.LayerText, "note code", sheet.Text{At: sheet.Pt(30, 110), S: "top 0123", VAlign: sheet.Top}).To("https://example.org/")
	img := image.NewNRGBA(image.Rect(0, 0, 2, 2))
	img.Set(0, 0, color.NRGBA{255, 0, 0, 255})
	img.Set(1, 1, color.NRGBA{0, 0, 255, 128})
	d.Add("picture", "", sheet.Image{Rect: sheet.Rect{X: 170, Y: 60, W: 20, H: 20}, Img: img})
	g, _ := d.Group("inset", "note")
	g.Offset, g.Scale, g.Clip = sheet.Pt(165, 5), 0.5, &sheet.Rect{W: 50, H: 40}
	g.Add("", sheet.Text{At: sheet.Pt(2, 10), S: "In a group, cut off at right"})
	g.Add("cut", sheet.Circle{C: sheet.Pt(25, 40), R: 20})
	return d
}

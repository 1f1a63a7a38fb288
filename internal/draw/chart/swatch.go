package chart

import (
	"image"

	"example.org/rinkpane/internal/draw/sheet"
)

// swatch returns a rectangle filled with the heat map's colour of a share.
func swatch(r sheet.Rect, v float64) sheet.Image {
	img := image.NewNRGBA(image.Rect(0, 0, 1, 1))
	img.SetNRGBA(0, 0, heatColour(v))
	return sheet.Image{Rect: r, Img: img}
}

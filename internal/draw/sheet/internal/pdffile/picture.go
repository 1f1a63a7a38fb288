package pdffile

import (
	"fmt"
	"image"
	"image/color"
)

// Picture embeds an image with 8 bits a channel, and its transparency when it has any.
func Picture(f *File, img image.Image) Ref {
	r := img.Bounds()
	rgb := make([]byte, 0, 3*r.Dx()*r.Dy())
	alpha := make([]byte, 0, r.Dx()*r.Dy())
	opaque := true
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			c := color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA)
			rgb = append(rgb, c.R, c.G, c.B)
			alpha = append(alpha, c.A)
			opaque = opaque && c.A == 255
		}
	}
	dict := fmt.Sprintf("/Type /XObject /Subtype /Image /Width %d /Height %d /BitsPerComponent 8", r.Dx(), r.Dy())
	if opaque {
		return f.Stream(dict+" /ColorSpace /DeviceRGB", rgb)
	}
	mask := f.Stream(dict+" /ColorSpace /DeviceGray", alpha)
	return f.Stream(fmt.Sprintf("%s /ColorSpace /DeviceRGB /SMask %v", dict, mask), rgb)
}

// Photo embeds a picture packed as JPEG, three channels of 8 bits.
func Photo(f *File, jpeg []byte, size image.Point) Ref {
	return f.raw(fmt.Sprintf("/Type /XObject /Subtype /Image /Width %d /Height %d /BitsPerComponent 8 /ColorSpace /DeviceRGB /Filter /DCTDecode", size.X, size.Y), jpeg)
}

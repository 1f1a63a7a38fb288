package sheet

import "image"

// Image is a picture, such as a heat map, stretched over a rectangle. Its first
// pixel row is at the top. Pixels stay sharp: nothing is smoothed between them.
// DXF leaves it out.
type Image struct {
	Rect
	Img image.Image
	// Address is where a web page finds the picture, on its own site; "" puts the
	// picture itself into the page. Files of their own hold the picture always.
	Address string
	// JPEG is the same picture packed with loss (ITU-T T.81), for photographs, as a PDF
	// is to hold it; nil packs Img without loss.
	JPEG []byte
}

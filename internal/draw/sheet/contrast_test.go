package sheet_test

import (
	"math"

	"example.org/rinkpane/internal/draw/sheet"
)

// contrast is the contrast ratio of two colours, WCAG 2.1, "contrast ratio" and
// "relative luminance".
func contrast(a, b sheet.Colour) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

func luminance(c sheet.Colour) float64 {
	lin := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.03928 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*lin(c.R) + 0.7152*lin(c.G) + 0.0722*lin(c.B)
}

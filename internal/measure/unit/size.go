package unit

import (
	"errors"
	"strings"
)

const sizeCure = `write width x height, as in "5.5 in x 4.5 in" or "36 x 24 mm"`

var errSides = errors.New("not two sides")

// ParseSize reads a width by a height: "5.5 in x 4.5 in", "36 x 24 mm",
// `5 1/2" × 4 1/2"`, "200 ft by 85 ft". One closing unit serves both sides. Both sides must be
// above 0 and at most [MaxLength]; anything else gives an [*Error].
func ParseSize(s string) (Size, error) {
	text, err := normal(s)
	if err != nil {
		return Size{}, fault("size", s, err, sizeCure)
	}
	text = strings.ReplaceAll(text, " by ", " x ")
	parts := strings.FieldsFunc(text, func(r rune) bool { return r == 'x' || r == 'X' })
	if len(parts) != 2 || strings.Count(strings.ToLower(text), "x") != 1 {
		return Size{}, fault("size", s, errSides, sizeCure)
	}
	h, unit, err := side(parts[1], nil)
	if err != nil {
		return Size{}, fault("size", s, err, sizeCure)
	}
	w, _, err := side(parts[0], unit)
	if err != nil {
		return Size{}, fault("size", s, err, sizeCure)
	}
	if w <= 0 || h <= 0 || w > MaxLength || h > MaxLength {
		return Size{}, &Error{What: "size", Seen: s, Why: "a side of zero, below zero or above 10 km", Cure: sizeCure}
	}
	return Size{W: w, H: h}, nil
}

// side reads one side; a bare number takes the unit closing. It returns the
// unit of a single term, nil after a compound such as 5' 6".
func side(s string, closing *lengthUnit) (Length, *lengthUnit, error) {
	c := scanner{s: strings.TrimSpace(s)}
	sign := Length(c.sign())
	from := c
	v, u, _, err := c.term()
	c.spaces()
	switch {
	case err == nil && c.done():
		return sign * u.of(v), &u, nil
	case errors.Is(err, errBare) && closing != nil:
		v, _, err := from.number()
		return sign * closing.of(v), closing, err
	}
	l, err := from.length()
	return sign * l, nil, err
}

// MaxPixels is the most pixels along one side that are read.
const MaxPixels = 1_000_000

const pixelCure = `write width x height in whole pixels, as in "6000 x 4000"`

// ParsePixels reads a count of pixels across and down: "6000 x 4000", each
// from 1 to [MaxPixels].
func ParsePixels(s string) (w, h int, err error) {
	text, err := normal(s)
	if err != nil {
		return 0, 0, fault("pixels", s, err, pixelCure)
	}
	text = strings.ToLower(text)
	text = strings.TrimSpace(strings.TrimSuffix(text, "px"))
	c := scanner{s: text}
	w, okW := c.count()
	c.spaces()
	cross := c.take('x')
	h, okH := c.count()
	if !okW || !okH || !cross || !c.done() {
		return 0, 0, fault("pixels", s, errSides, pixelCure)
	}
	return w, h, nil
}

// count reads a whole number from 1 to MaxPixels.
func (c *scanner) count() (int, bool) {
	c.spaces()
	n := 0
	for _, d := range c.digits() {
		if n = 10*n + int(d-'0'); n > MaxPixels {
			return 0, false
		}
	}
	return n, n > 0
}

package rink

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Filling is how the markings of a rink are filled in that nobody measured.
type Filling string

// The fillings.
const (
	ByBook       Filling = "book"       // the standard's figures, as its rule book gives them
	InProportion Filling = "proportion" // the standard's figures, scaled to the rink's size
	Unpainted    Filling = "none"       // none: the ice stays bare
)

// bookWithin is how far a rink's length may differ from the standard's for the
// book's figures to be taken unscaled when nobody says how: 2 % (own choice; the
// older rinks of 61 m are marked as those of 60 m).
const bookWithin = 0.02

// Fill returns the rink of a length and a width (metres) with what else it needs taken
// from a standard: markings as how says, "" for the book where the length is the
// book's within 2 %, else in proportion; and the corners, when d has none.
//
// In proportion distances along the rink go with its length and the spots' distance
// from the axis with its width; circles and corners go with the smaller of both;
// goals, creases and lines stay as the book has them (own choice). They are rounded to
// a centimetre or an inch, corners to 10 cm or 6 in. It returns how it filled them in.
func Fill(d Dimensions, standard string, how Filling) (Rink, Filling, error) {
	of, err := Standard(standard)
	if err != nil {
		return Rink{}, how, err
	}
	book := of.Dimensions()
	along, across := float64(d.Length/book.Length), float64(d.Width/book.Width)
	fine, coarse := unit.Centimetre, 10*unit.Centimetre
	if standard == NorthAmerican {
		fine, coarse = unit.Inch, 6*unit.Inch
	}
	if d.CornerRadius == 0 {
		d.CornerRadius = nearest(book.CornerRadius, min(along, across, 1), coarse)
	}
	if how == "" {
		how = InProportion
		if math.Abs(along-1) <= bookWithin {
			how = ByBook
		}
	}
	switch how {
	case ByBook:
		d.Markings = book.Markings
	case InProportion:
		m := book.Markings
		for _, l := range []*unit.Length{&m.GoalLine, &m.BlueLine, &m.SpotFromGoal, &m.NeutralSpot} {
			*l = nearest(*l, along, fine)
		}
		m.SpotFromAxis = nearest(m.SpotFromAxis, across, fine)
		m.CircleRadius = nearest(m.CircleRadius, min(along, across), fine)
		d.Markings = m
	case Unpainted:
		d.Markings = Markings{}
	default:
		return Rink{}, how, fmt.Errorf("markings %q: write %s, %s or %s", string(how), ByBook, InProportion, Unpainted)
	}
	r, err := New(d)
	return r, how, err
}

// nearest returns a share of a length, to the nearest mark.
func nearest(l unit.Length, share float64, mark unit.Length) unit.Length {
	return unit.Length(math.Round(float64(l)*share/float64(mark))) * mark
}

// Book names the rule book that a standard follows, for those who are to check it.
func Book(standard string) string {
	if standard == NorthAmerican {
		return "the North American professional rule book, 2023-24, section 1 (the numbers of its parts from memory)"
	}
	return "the international federation's rule books: 2023/24, 1.2; 2022/23, 1.9 and 2.1; 2014-18, 17"
}

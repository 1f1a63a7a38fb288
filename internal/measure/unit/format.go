package unit

import (
	"math"
	"strconv"
)

// Steps of an inch to which imperial lengths are printed for reading.
const (
	readTiny  = Inch / 4 // below: sixty-fourths
	readSmall = 4 * Inch // below: sixteenths
	readInch  = 4 * Foot // below: inches in eighths; from there feet, and inches in quarters
	drawInch  = 8 * Foot // drawings: below, inches only
	drawParts = 32       // drawings: thirty-seconds of an inch, so that a sixty-fourth is lost at most
	leastPart = Inch / 64
)

// Format prints l in the system's units for reading: "12.7 mm", "114 mm",
// "8.53 m"; "1/2 in", "4 1/2 in", "36 ft 9 in". It rounds: metric to three
// figures below 1 m and to centimetres above, imperial to sixty-fourths of an
// inch below 1/4 in, sixteenths below 4 in, eighths below 4 ft, quarters above.
func (l Length) Format(sys System) string {
	if sys == Metric {
		return readMetric(l)
	}
	a := max(l, -l)
	switch {
	case a > 0 && a < leastPart:
		return trimmed(l.Inches(), 3) + " in"
	case a < readTiny:
		return inches(l, 64) + " in"
	case a < readSmall:
		return inches(l, 16) + " in"
	case a < readInch:
		return inches(l, 8) + " in"
	}
	return feetInches(l, 4)
}

// FormatFine prints l for a drawing: millimetres to a tenth ("114.3 mm") or
// inches to the nearest thirty-second ("4 1/2 in"), with feet from 8 ft up.
func (l Length) FormatFine(sys System) string {
	if sys == Metric {
		return trimmed(l.Millimetres(), 1) + " mm"
	}
	if max(l, -l) < drawInch {
		return inches(l, drawParts) + " in"
	}
	return feetInches(l, drawParts)
}

// FormatCut prints l as glass is ordered: as [Length.FormatFine] does, in inches alone
// however many.
func (l Length) FormatCut(sys System) string {
	if sys == Metric {
		return l.FormatFine(sys)
	}
	return inches(l, drawParts) + " in"
}

// Measured returns the nearest length that people measure in a system, a whole
// millimetre or sixteenth of an inch, as its text reads back.
func (l Length) Measured(sys System) Length {
	text := inches(l, 16) + " in"
	if sys == Metric {
		text = Length(math.Round(l.Millimetres()) / 1e3).FormatFine(Metric)
	}
	near, err := ParseOffset(text)
	if err != nil { // no length that people write
		return l
	}
	return near
}

// Tape prints l as people read it off a tape: a whole number of millimetres ("900
// mm", "35.353 m") or feet and inches to the sixteenth ("115 ft 11 7/8 in").
func (l Length) Tape(sys System) string {
	if sys == Imperial {
		return feetInches(l, 16)
	}
	if l = Length(math.Round(l.Millimetres()) / 1e3); max(l, -l) < 1 {
		return trimmed(l.Millimetres(), 0) + " mm"
	}
	return trimmed(l.Metres(), 3) + " m"
}

// Exact prints l so that it parses back to the same length: a clean number of
// inches or millimetres in the system's units where there is one, else metres in full.
func (l Length) Exact(sys System) string {
	try := []string{trimmed(l.Millimetres(), 3) + " mm", trimmed(l.Metres(), 6) + " m"}
	if max(l, -l) >= 1 {
		try[0], try[1] = try[1], try[0]
	}
	if sys == Imperial {
		try = append([]string{l.FormatFine(Imperial), inches(l, 64) + " in"}, try...)
	}
	for _, text := range try {
		if v, err := ParseOffset(text); err == nil && v == l {
			return text
		}
	}
	return full(float64(l)) + " m"
}

// plainDown is the size from which numbers are written without an exponent.
const plainDown = 1e-9

// full prints v so that it reads back to the last bit.
func full(v float64) string {
	if v != 0 && v > -plainDown && v < plainDown {
		return strconv.FormatFloat(v, 'e', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

func readMetric(l Length) string {
	switch a := max(l, -l).Millimetres(); {
	case a >= 999.5:
		return trimmed(l.Metres(), 2) + " m"
	case a >= 99.95:
		return trimmed(l.Millimetres(), 0) + " mm"
	case a >= 9.995:
		return trimmed(l.Millimetres(), 1) + " mm"
	default:
		return trimmed(l.Millimetres(), 2) + " mm"
	}
}

// inches prints l as whole inches and a fraction in lowest terms of 1/parts,
// without the unit: "4 1/2", "3/8", "-2".
func inches(l Length, parts int64) string {
	n := int64(math.Round(math.Abs(l.Inches()) * float64(parts)))
	return minus(l, n) + mixed(n, parts)
}

// feetInches prints l as "36 ft 9 in", "8 ft", "5 ft 6 1/4 in".
func feetInches(l Length, parts int64) string {
	n := int64(math.Round(math.Abs(l.Inches()) * float64(parts)))
	ft, rest := n/(12*parts), n%(12*parts)
	text := minus(l, n)
	switch {
	case ft == 0:
		return text + mixed(rest, parts) + " in"
	case rest == 0:
		return text + strconv.FormatInt(ft, 10) + " ft"
	}
	return text + strconv.FormatInt(ft, 10) + " ft " + mixed(rest, parts) + " in"
}

// mixed prints n/parts as a mixed number in lowest terms; parts is a power of two.
func mixed(n, parts int64) string {
	whole, rest := n/parts, n%parts
	if rest == 0 {
		return strconv.FormatInt(whole, 10)
	}
	for rest%2 == 0 {
		rest, parts = rest/2, parts/2
	}
	fraction := strconv.FormatInt(rest, 10) + "/" + strconv.FormatInt(parts, 10)
	if whole == 0 {
		return fraction
	}
	return strconv.FormatInt(whole, 10) + " " + fraction
}

func minus(l Length, n int64) string {
	if l < 0 && n != 0 {
		return "-"
	}
	return ""
}

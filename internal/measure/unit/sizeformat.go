package unit

import "math"

// readFeet is the size from which nobody reads inches alone: of a rink, not of a pane.
const readFeet = 20 * Foot

// Format prints the size for reading with one closing unit: "140 x 114 mm",
// "60 x 30 m", "5 1/2 x 4 1/2 in", "200 x 85 ft"; a rink's in broken feet has a
// unit to each side, "184 ft x 79 ft 6 in". It rounds as [Length.Format].
func (s Size) Format(sys System) string {
	small := min(s.W, s.H)
	if sys == Metric {
		if small >= 1 {
			return trimmed(s.W.Metres(), 2) + " x " + trimmed(s.H.Metres(), 2) + " m"
		}
		return readSide(s.W) + " x " + readSide(s.H) + " mm"
	}
	if small >= readInch && wholeFeet(s.W) && wholeFeet(s.H) {
		return trimmed(s.W.Feet(), 0) + " x " + trimmed(s.H.Feet(), 0) + " ft"
	}
	if small >= readFeet {
		return s.W.Format(sys) + " x " + s.H.Format(sys)
	}
	parts := int64(8)
	if small < readSmall {
		parts = 16
	}
	return inches(s.W, parts) + " x " + inches(s.H, parts) + " in"
}

// FormatFine prints the size for a drawing: "139.7 x 114.3 mm", "5 1/2 x 4 1/2 in".
func (s Size) FormatFine(sys System) string {
	if sys == Metric {
		return trimmed(s.W.Millimetres(), 1) + " x " + trimmed(s.H.Millimetres(), 1) + " mm"
	}
	return inches(s.W, drawParts) + " x " + inches(s.H, drawParts) + " in"
}

// Exact prints the size so that it parses back to the same one.
func (s Size) Exact(sys System) string { return s.W.Exact(sys) + " x " + s.H.Exact(sys) }

func readSide(l Length) string {
	if l.Millimetres() >= 99.95 {
		return trimmed(l.Millimetres(), 0)
	}
	return trimmed(l.Millimetres(), 1)
}

// wholeFeet reports whether l is a whole number of feet to a 1/8 in.
func wholeFeet(l Length) bool {
	return math.Abs(l.Feet()-math.Round(l.Feet())) < 1.0/96/2
}

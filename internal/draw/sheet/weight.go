package sheet

// Line widths in millimetres from the series of ISO 128-20:1996, clause 5.1:
// each is the one before times the square root of two, rounded. (The series is
// from memory; the ratio is tested.)
const (
	W13  = 0.13
	W18  = 0.18
	W25  = 0.25
	W35  = 0.35
	W50  = 0.5
	W70  = 0.7
	W100 = 1.0
	W140 = 1.4
	W200 = 2.0
)

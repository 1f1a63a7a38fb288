package custody

import "example.org/rinkpane/internal/measure/unit"

// Quantity is something of a hole or its cover that is measured.
type Quantity string

// The quantities.
const (
	Width        Quantity = "width"
	Height       Quantity = "height"
	CornerRadius Quantity = "corner-radius"
	RoundingRink Quantity = "rounding-rink-face"
	RoundingBack Quantity = "rounding-shooting-face"
	FromLeft     Quantity = "from-left"    // the pane's left edge to the hole's centre, seen from the shooting side
	AboveBoards  Quantity = "above-boards" // the boards' top to the hole's centre
	Thickness    Quantity = "thickness"    // of the pane
	CoverWidth   Quantity = "cover-width"  // of the plug
	CoverHeight  Quantity = "cover-height"
	CoverRadius  Quantity = "cover-corner-radius"
)

// Quantities lists the quantities.
func Quantities() []Quantity {
	return []Quantity{Width, Height, CornerRadius, RoundingRink, RoundingBack, FromLeft, AboveBoards, Thickness, CoverWidth, CoverHeight, CoverRadius}
}

// Sight is something that is looked at or tried, and is right or not.
type Sight string

// What is looked at.
const (
	NoCracks Sight = "no-cracks" // neither cracks nor crazing around the hole
	Snug     Sight = "snug"      // the cover sits fast and does not come off by a pull
	Tethered Sight = "tethered"
)

// Sights lists what is looked at.
func Sights() []Sight { return []Sight{NoCracks, Snug, Tethered} }

// Instrument is what a quantity can be measured with.
type Instrument struct {
	Name string
	U    unit.Length // expanded uncertainty, two standard deviations, as used at the glass
	For  []Quantity
}

// Instruments lists the usual instruments, the coarsest first. Their uncertainties
// are common practice with no published source, for a careful reading at the glass;
// whoever has a calibration certificate writes its own.
func Instruments() []Instrument {
	sizes := []Quantity{Width, Height, CoverWidth, CoverHeight}
	radii := []Quantity{CornerRadius, RoundingRink, RoundingBack, CoverRadius}
	const mm = unit.Millimetre
	return []Instrument{
		{"tape measure", 1 * mm, []Quantity{FromLeft, AboveBoards}},
		{"steel rule", 0.5 * mm, append([]Quantity{FromLeft, AboveBoards}, sizes...)},
		{"radius gauges in steps of 0.5 mm", 0.3 * mm, radii},
		{"ultrasonic thickness gauge", 0.1 * mm, []Quantity{Thickness}},
		{"radius gauges in steps of 0.1 mm", 0.1 * mm, radii},
		{"caliper", 0.05 * mm, append([]Quantity{Thickness}, sizes...)},
	}
}

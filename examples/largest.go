package examples

import (
	"fmt"
	"math"
	"strings"
)

// Sizes of the largest arena. Its readings and holes are as many as a document
// may have; 260 panes of 24 in are what stands round a large rink.
const (
	LargestPanes    = 260
	LargestHoles    = 200
	LargestReadings = 5000
)

// Largest returns the text of an invented arena as large as a document may be,
// of some 315 kB, for tests and benchmarks of what long work costs. Its holes
// have so many shapes, from 1 to LargestHoles; those after the first working
// ones are turned off. The same arguments give the same text.
func Largest(shapes, working int) string {
	var b strings.Builder
	b.WriteString("rinkpane: arena 1\nname: The largest arena\nunits: imperial\nrink: {standard: north-american}\n" +
		"boards: {height: 42 in, ledge: 9 in, setback: 1.5 in}\nglass: {height: 8 ft, thickness: 5/8 in, material: acrylic}\npanes:\n")
	for i := range LargestPanes {
		fmt.Fprintf(&b, "  - {id: P%03d, from: %.1f in, width: 23.9 in}\n", i+1, 24*float64(i))
	}
	b.WriteString("holes:\n")
	for i := range LargestHoles {
		state := "planned"
		if i >= working {
			state = "off"
		}
		fmt.Fprintf(&b, "  - {id: H%03d, station: %.1f in, height: 58 in, size: %.2f in x 4.5 in, corner-radius: 1/2 in, "+
			"rounding: 1/8 in, cover: {material: acrylic, tether: yes}, state: %s}\n",
			i+1, 24*float64((i*17)%LargestPanes)+12, 5.5+0.01*float64(i%shapes), state)
	}
	b.WriteString("zones: []\nlight:\n  mains: 60 Hz\n  readings:\n")
	for i := range LargestReadings {
		// A spiral whose turns lie evenly: no two places alike, none in one line.
		r, a := math.Sqrt(float64(i)/LargestReadings), float64(i)*math.Pi*(3-math.Sqrt(5))
		x, y := 95*r*math.Cos(a), 40*r*math.Sin(a)
		fmt.Fprintf(&b, "  - {x: %.2f ft, y: %.2f ft, light: %.0f lx}\n", x, y, 1100+100*math.Cos(x/20))
	}
	return b.String()
}

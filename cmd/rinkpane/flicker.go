package main

import (
	"fmt"
	"io"
	"strings"

	"example.org/rinkpane/internal/measure/unit"
)

// writeFlicker prints the flicker-safe times, and says whether the shutter is one.
func writeFlicker(w io.Writer, mains float64, safe []float64, shutter unit.Shutter) {
	times := make([]string, len(safe))
	whole := false
	for i, s := range safe {
		times[i] = unit.Shutter(s).Format()
		whole = whole || unit.Shutter(s) == shutter
	}
	fmt.Fprintf(w, "\nflicker  safe on %v Hz mains: %s\n", mains, strings.Join(times, ", "))
	if !whole {
		fmt.Fprintln(w, "         at other times lamps that flicker light each frame differently: use the")
		fmt.Fprintln(w, "         camera's flicker timing, or ask whether the lamps are flicker-free")
	}
}

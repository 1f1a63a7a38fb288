package main

import (
	"fmt"
	"io"
	"slices"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/words"
)

// writeFlicker prints the flicker-safe times, and says whether the shutter is one.
func writeFlicker(w io.Writer, mains float64, safe []unit.Shutter, shutter unit.Shutter) {
	fmt.Fprintf(w, "\nflicker  %s\n", words.FlickerSafe(mains, safe))
	if !slices.Contains(safe, shutter) {
		fmt.Fprintln(w, "         at other times lamps that flicker light each frame differently: use the")
		fmt.Fprintln(w, "         camera's flicker timing, or ask whether the lamps are flicker-free")
	}
}

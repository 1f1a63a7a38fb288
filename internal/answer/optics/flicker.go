package optics

import (
	"fmt"

	"example.org/rinkpane/internal/measure/unit"
)

// The mains of the world, in hertz. Lamps on them flicker at twice that.
const (
	Mains50 = 50.0 // Hz
	Mains60 = 60.0 // Hz
)

func checkMains(hz float64) error {
	if hz != Mains50 && hz != Mains60 {
		return fmt.Errorf("mains %v Hz: write 50 or 60", hz)
	}
	return nil
}

// safeCycles is the longest flicker-safe time worth naming, in cycles of the
// lamp: beyond 1/12 s no skater is sharp.
const safeCycles = 8

// FlickerSafe returns the exposure times in seconds, shortest first, that hold
// whole cycles of the lamps' flicker, k/(2 mains) for k = 1 to 8: every frame
// gets the same light whatever the moment. Shorter times depend on the moment
// they fall on; there a camera's own flicker timing or flicker-free lamps must help.
// mains is 50 or 60 Hz.
func FlickerSafe(mains float64) ([]unit.Shutter, error) {
	if err := checkMains(mains); err != nil {
		return nil, err
	}
	safe := make([]unit.Shutter, 0, safeCycles)
	for k := 1; k <= safeCycles; k++ {
		safe = append(safe, unit.Shutter(float64(k)/(2*mains)))
	}
	return safe, nil
}

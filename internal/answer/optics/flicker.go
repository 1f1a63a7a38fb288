package optics

import (
	"fmt"
	"math"

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
// ([Ripple]); there a camera's own flicker timing or flicker-free lamps must help.
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

// Ripple returns the greatest difference between two frames in stops, when the
// lamps' light swings as 1 + depth cos(2 pi 2 mains t):
//
//	a = depth |sin(x)/x|, x = pi 2 mains t;  stops = log2((1+a)/(1-a))
//
// depth is from 0 (steady) to 1 (dark between the peaks), where very short times give +Inf.
func Ripple(t unit.Shutter, mains, depth float64) (float64, error) {
	if err := checkMains(mains); err != nil {
		return 0, err
	}
	if !(depth >= 0 && depth <= 1) {
		return 0, fmt.Errorf("flicker depth %v: must lie between 0 and 1", depth)
	}
	if !(t > 0) || math.IsInf(float64(t), 0) {
		return 0, fmt.Errorf("shutter %v s: must be above 0", float64(t))
	}
	x := math.Pi * 2 * mains * float64(t)
	a := depth * math.Abs(math.Sin(x)/x)
	return math.Log2((1 + a) / (1 - a)), nil
}

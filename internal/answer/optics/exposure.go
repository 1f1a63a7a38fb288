package optics

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// Calibration is the constant C of ISO 2720 for incident light, in lux
// seconds: N^2/t = E S / C.
type Calibration float64

// The flat receptor's range in ISO 2720:1974, and the value in common use.
const (
	MinCalibration     Calibration = 240
	DefaultCalibration Calibration = 250
	MaxCalibration     Calibration = 400
)

// Check refuses a constant outside the standard's range for a flat receptor.
func (c Calibration) Check() error {
	if !(c >= MinCalibration && c <= MaxCalibration) {
		return fmt.Errorf("calibration %v: must lie between %v and %v (ISO 2720, flat receptor); %v is common",
			float64(c), float64(MinCalibration), float64(MaxCalibration), float64(DefaultCalibration))
	}
	return nil
}

// EV100 returns the exposure value at ISO 100 of light E, log2(100 E / C).
func (c Calibration) EV100(e unit.Illuminance) float64 {
	return math.Log2(100 * float64(e) / float64(c))
}

// ISO returns the sensitivity that light E, shutter t and stop N ask for, N^2 C/(E t).
func (c Calibration) ISO(e unit.Illuminance, t unit.Shutter, n unit.Stop) unit.ISO {
	return unit.ISO(float64(n) * float64(n) * float64(c) / (float64(e) * float64(t)))
}

// Shutter returns the exposure time in seconds for light E, stop N and ISO S, N^2 C/(E S).
func (c Calibration) Shutter(e unit.Illuminance, n unit.Stop, s unit.ISO) unit.Shutter {
	return unit.Shutter(float64(n) * float64(n) * float64(c) / (float64(e) * float64(s)))
}

// Stop returns the f-number for light E, shutter t and ISO S, sqrt(E S t / C).
func (c Calibration) Stop(e unit.Illuminance, t unit.Shutter, s unit.ISO) unit.Stop {
	return unit.Stop(math.Sqrt(float64(e) * float64(s) * float64(t) / float64(c)))
}

// Lux returns the light in lux that a right exposure of shutter t, stop N and
// ISO S was made in, N^2 C/(t S).
func (c Calibration) Lux(t unit.Shutter, n unit.Stop, s unit.ISO) unit.Illuminance {
	return unit.Illuminance(float64(n) * float64(n) * float64(c) / (float64(t) * float64(s)))
}

// Wanted is what a photographer sets: two of the three, the third is solved.
type Wanted struct {
	Shutter unit.Maybe[unit.Shutter]
	Stop    unit.Maybe[unit.Stop]
	ISO     unit.Maybe[unit.ISO]
}

// Exposure is a whole setting for one light, exact, with the nearest marks.
type Exposure struct {
	EV100   float64 // exposure value at ISO 100, in stops
	Shutter unit.Shutter
	Stop    unit.Stop
	ISO     unit.ISO
	Solved  string // "shutter", "stop" or "iso": which of the three was solved
}

// Marks returns the third-stop marks nearest to the exact setting.
func (x Exposure) Marks() (shutter, stop, iso Mark) {
	return NearestShutter(x.Shutter), NearestStop(x.Stop), NearestISO(x.ISO)
}

// ISOMark returns the ISO as a camera is set: the third-stop mark nearest to it.
func (x Exposure) ISOMark() float64 { return NearestISO(x.ISO).Nominal }

// Solve returns the exposure for light E: the one of shutter, stop and ISO that
// is not given is solved. Fewer or more than two given is an error.
func (c Calibration) Solve(e unit.Illuminance, w Wanted) (Exposure, error) {
	if err := c.Check(); err != nil {
		return Exposure{}, err
	}
	if !(e > 0) || math.IsInf(float64(e), 0) {
		return Exposure{}, fmt.Errorf("light %v lx: must be above 0", float64(e))
	}
	t, okT := w.Shutter.Get()
	n, okN := w.Stop.Get()
	s, okS := w.ISO.Get()
	x := Exposure{EV100: c.EV100(e), Shutter: t, Stop: n, ISO: s}
	switch {
	case okT && okN && okS:
		return Exposure{}, fmt.Errorf("shutter, stop and ISO all given: give two, the third is solved")
	case okT && okN:
		x.ISO, x.Solved = c.ISO(e, t, n), "iso"
	case okT && okS:
		x.Stop, x.Solved = c.Stop(e, t, s), "stop"
	case okN && okS:
		x.Shutter, x.Solved = c.Shutter(e, n, s), "shutter"
	default:
		return Exposure{}, fmt.Errorf("fewer than two of shutter, stop and ISO given: give two, the third is solved")
	}
	return x, x.sound()
}

// sound refuses settings that no arithmetic can mean.
func (x Exposure) sound() error {
	for _, v := range []float64{float64(x.Shutter), float64(x.Stop), float64(x.ISO)} {
		if !(v > 0) || math.IsInf(v, 0) {
			return fmt.Errorf("shutter %v s, stop f/%v, ISO %v: each must be finite and above 0",
				float64(x.Shutter), float64(x.Stop), float64(x.ISO))
		}
	}
	return nil
}

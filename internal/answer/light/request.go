package light

import (
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
)

// Request is what a photographer asks of the light.
type Request struct {
	Wanted      optics.Wanted
	Calibration optics.Calibration           // 0 means [optics.DefaultCalibration]
	Uniform     unit.Maybe[unit.Illuminance] // this light everywhere, instead of the survey
	Mains       unit.Maybe[float64]          // Hz, 50 or 60, instead of the survey's
	Body        kit.Body                     // its sensor and ISO limit; the zero value: 36 x 24 mm, no limit
	Lens        unit.Maybe[kit.Lens]         // for depth of field and widest stop
	Holes       []string                     // ids; empty means every hole not turned off
}

// The usual setting of a game, when nothing is asked for: 1/1000 s stops most
// players, f/2.8 is the widest stop of the usual zooms.
const (
	UsualShutter unit.Shutter = 0.001
	UsualStop    unit.Stop    = 2.8
)

// Usual returns the usual setting: shutter and stop given, the ISO solved.
func Usual() optics.Wanted {
	return optics.Wanted{Shutter: unit.Known(UsualShutter), Stop: unit.Known(UsualStop)}
}

// calibration returns the constant to use.
func (q Request) calibration() optics.Calibration {
	if q.Calibration == 0 {
		return optics.DefaultCalibration
	}
	return q.Calibration
}

// sensor returns the sensor to frame with.
func (q Request) sensor() unit.Size {
	if q.Body.Sensor.W > 0 && q.Body.Sensor.H > 0 {
		return q.Body.Sensor
	}
	return optics.FullFrame
}

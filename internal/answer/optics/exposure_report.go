package optics

// ExposureReport is a whole setting for one light, exact values beside the
// nearest third-stop marks; contract field names.
type ExposureReport struct {
	EV100 float64 `json:"ev100"`
	// ISO is the exact ISO number.
	ISO float64 `json:"iso"`
	// ISONominal is the third-stop mark nearest to it, as engraved.
	ISONominal float64 `json:"iso_nominal"`
	ShutterS   float64 `json:"shutter_s"`
	// Stop is the f-number, without unit.
	Stop           float64 `json:"stop"`
	ShutterNominal string  `json:"shutter_nominal"` // as engraved: "1/1000"
	StopNominal    string  `json:"stop_nominal"`    // as engraved: "f/2.8"
	Solved         string  `json:"solved"`          // "iso", "shutter" or "stop"
}

// Report puts the nearest marks beside the exact setting.
func (x Exposure) Report() ExposureReport {
	return ExposureReport{
		EV100: x.EV100,
		ISO:   float64(x.ISO), ISONominal: NearestISO(x.ISO).Nominal,
		ShutterS: float64(x.Shutter), ShutterNominal: NearestShutter(x.Shutter).Text,
		Stop: float64(x.Stop), StopNominal: NearestStop(x.Stop).Text,
		Solved: x.Solved,
	}
}

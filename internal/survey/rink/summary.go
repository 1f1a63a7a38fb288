package rink

import "example.org/rinkpane/internal/measure/unit"

// Summary is a rink in numbers; the JSON of command rink.
type Summary struct {
	LengthM       float64       `json:"length_m"`
	WidthM        float64       `json:"width_m"`
	CornerRadiusM float64       `json:"corner_radius_m"`
	PerimeterM    float64       `json:"perimeter_m"`
	IceAreaM2     float64       `json:"ice_area_m2"`
	Landmarks     []LandmarkRow `json:"landmarks"` // empty, not null, without markings
}

// LandmarkRow is one landmark's place on the boards' rink face.
type LandmarkRow struct {
	Corner   string   `json:"corner"`
	Landmark Landmark `json:"landmark"`
	StationM float64  `json:"station_m"`
	XM       float64  `json:"x_m"`
	YM       float64  `json:"y_m"`
}

// Summary returns the rink's numbers, landmarks by corner in station order and
// in each corner from the end boards toward centre ice.
func (r Rink) Summary() Summary {
	s := Summary{
		LengthM: r.dim.Length.Metres(), WidthM: r.dim.Width.Metres(), CornerRadiusM: r.dim.CornerRadius.Metres(),
		PerimeterM: r.Perimeter().Metres(), IceAreaM2: r.Area(),
		Landmarks: []LandmarkRow{},
	}
	for _, c := range Corners() {
		for _, l := range Landmarks() {
			if at, ok := r.Landmark(c, l); ok {
				s.Landmarks = append(s.Landmarks, r.landmarkRow(c, l, at))
			}
		}
	}
	return s
}

func (r Rink) landmarkRow(c Corner, l Landmark, at unit.Length) LandmarkRow {
	p, _ := r.LandmarkPoint(c, l)
	return LandmarkRow{Corner: c.String(), Landmark: l, StationM: at.Metres(), XM: p.X, YM: p.Y}
}

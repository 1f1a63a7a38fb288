package arena

import "example.org/rinkpane/internal/measure/unit"

// Name is the place in few words, as a shop writes it: "B-bench goal-line
// -33 in", "station 37 ft 2 in".
func (p Place) Name(sys unit.System) string {
	if s, ok := p.Station.Get(); ok {
		return "station " + s.Format(sys)
	}
	name := p.Corner.String() + " " + string(p.Landmark)
	if p.Offset == 0 {
		return name
	}
	return name + " " + p.Offset.Format(sys)
}

// Measured returns the nearest place that can be measured and written down.
func (p Place) Measured(sys unit.System) Place {
	if s, ok := p.Station.Get(); ok {
		return AtStation(s.Measured(sys))
	}
	p.Offset = p.Offset.Measured(sys)
	return p
}

// StationOf returns the station of one of the arena's places, as it is read
// from a document.
func (a Arena) StationOf(p Place) unit.Length {
	if s, ok := p.Station.Get(); ok {
		return a.Rink.Wrap(s)
	}
	s, err := a.Rink.FromLandmark(p.Corner, p.Landmark, p.Offset)
	if err != nil { // only a place of another rink
		return 0
	}
	return s
}

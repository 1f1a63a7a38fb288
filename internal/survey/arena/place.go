package arena

import (
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// Place is where something stands along the boards: a station, or an offset
// from a corner's landmark. Make one with AtStation, FromLandmark or
// [Arena.PlaceOf].
type Place struct {
	Station  unit.Maybe[unit.Length] // known: the place is a plain station
	Corner   rink.Corner
	Landmark rink.Landmark
	Offset   unit.Length // positive along the boards toward centre ice, negative back
}

// AtStation returns the place at a station.
func AtStation(s unit.Length) Place { return Place{Station: unit.Known(s)} }

// FromLandmark returns the place at an offset from a corner's landmark.
func FromLandmark(c rink.Corner, l rink.Landmark, offset unit.Length) Place {
	return Place{Corner: c, Landmark: l, Offset: offset}
}

// PlaceOf tells a station as people do: by the nearest landmark of its corner;
// between the blue lines, and on a rink without markings, as a station.
func (a Arena) PlaceOf(s unit.Length) Place {
	if c, l, offset, ok := a.Rink.NearestLandmark(s); ok {
		return FromLandmark(c, l, offset)
	}
	return AtStation(a.Rink.Wrap(s))
}

// atLandmark is how near a place counts as at its landmark: less than people
// measure along boards.
const atLandmark = 5 * unit.Millimetre

// Say tells the place in one line as people speak: "B-bench goal line, 42 in
// back", or "... past" toward centre ice.
func (p Place) Say(sys unit.System) string {
	if s, ok := p.Station.Get(); ok {
		return "station " + s.Format(sys)
	}
	text := p.Corner.String() + " " + p.Landmark.Words()
	switch {
	case p.Offset > atLandmark:
		text += ", " + p.Offset.Format(sys) + " past"
	case p.Offset < -atLandmark:
		text += ", " + (-p.Offset).Format(sys) + " back"
	}
	return text
}

// Entry writes the place as an arena file has it.
func (p Place) Entry(sys unit.System) form.Entry {
	if s, ok := p.Station.Get(); ok {
		return form.Text(s.Exact(sys))
	}
	return form.Fields(
		form.Field{Name: "corner", Value: form.Text(p.Corner.String())},
		form.Field{Name: "landmark", Value: form.Text(string(p.Landmark))},
		form.Field{Name: "offset", Value: form.Text(p.Offset.Exact(sys))},
	)
}

// station reads a place on the boards: a station ("36 ft"), or
// {corner, landmark, offset}.
func (rd *reader) station(n form.Node) unit.Length {
	if !n.IsMap() {
		s := form.Parse(n, unit.ParseLength)
		if per := rd.a.Rink.Perimeter(); n.OK() && s >= per {
			n.Failf("station %s lies past the boards' end; they are %s round, and stations start again at 0",
				form.Quote(n.Value()), per.Format(rd.a.Units))
		}
		return s
	}
	m := n.Map(placeFields...)
	corner := form.Parse(m.At("corner"), rink.ParseCorner)
	known := rink.Landmarks()
	landmark := form.Parse(m.At("landmark"), form.Words(known[:]...))
	offset := form.Optional(m.At("offset"), unit.ParseOffset)
	if !n.OK() {
		return 0
	}
	s, err := rd.a.Rink.FromLandmark(corner, landmark, offset)
	if err != nil {
		n.Failf("%v", err)
	}
	return s
}

// placed reads the place of a hole or window: its field place, or station.
func (rd *reader) placed(m form.Map) unit.Length {
	place, station := m.At("place"), m.At("station")
	switch {
	case place.Present() && station.Present():
		station.Failf("both place and station are given; keep one of them")
	case place.Present():
		return rd.station(place)
	case station.Present():
		return rd.station(station)
	default:
		place.Failf("is missing; write place: {corner: A-bench, landmark: goal-line, offset: -3 ft}, or station: and a length")
	}
	return 0
}

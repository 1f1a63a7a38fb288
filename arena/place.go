package arena

import (
	"example.org/rinkpane/form"
	"example.org/rinkpane/rink"
	"example.org/rinkpane/unit"
)

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

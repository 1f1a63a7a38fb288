package words

import (
	"strconv"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/tell/table"
)

// Rink tells a rink's measures and the places of its landmarks.
func Rink(r rink.Rink, sys unit.System) string {
	d, p := r.Dimensions(), page{sys: sys}
	p.say("rink       %s, corners of radius %s\n", unit.Size{W: d.Length, H: d.Width}, d.CornerRadius)
	p.say("boards     %s round\nice        %s\n\n", r.Perimeter(), floor(r.Area(), sys))
	places := r.LandmarkPlaces()
	if len(places) == 0 {
		p.say("no markings given, so no landmarks\n")
		return p.String()
	}
	p.WriteString(landmarks.Of("", places, sys).Text())
	return p.String()
}

var landmarks = table.Fields[rink.LandmarkPlace]{
	left("corner", "corner", func(l rink.LandmarkPlace) string { return l.Corner.String() }),
	left("landmark", "landmark", func(l rink.LandmarkPlace) string { return string(l.Landmark) }),
	length("station", "station_m", func(l rink.LandmarkPlace) unit.Length { return l.Station }),
	length("x", "x_m", func(l rink.LandmarkPlace) unit.Length { return unit.Length(l.At.X) }),
	length("y", "y_m", func(l rink.LandmarkPlace) unit.Length { return unit.Length(l.At.Y) }),
}

// floor prints a large area in square metres or square feet.
func floor(m2 float64, sys unit.System) string {
	if sys == unit.Imperial {
		return strconv.FormatFloat(m2/(unit.Foot.Metres()*unit.Foot.Metres()), 'f', 0, 64) + " sq ft"
	}
	return strconv.FormatFloat(m2, 'f', 1, 64) + " m2"
}

package plan

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// nearestLandmark returns the landmark of the station's corner that is nearest
// along the boards and the offset from it, positive toward centre ice; the
// landmark is "" between the blue lines and on a rink without markings.
func nearestLandmark(r rink.Rink, station unit.Length) (rink.Landmark, unit.Length) {
	corner := r.Corner(station)
	if corner == rink.NoCorner {
		return "", 0
	}
	var nearest rink.Landmark
	least := math.Inf(1)
	for _, l := range rink.Landmarks() {
		at, ok := r.Landmark(corner, l)
		if !ok {
			continue
		}
		if d := between(r, at, station); math.Abs(d) < math.Abs(least) {
			nearest, least = l, d
		}
	}
	if nearest == "" {
		return "", 0
	}
	if !towardCentre(corner) {
		least = -least
	}
	return nearest, unit.Length(least)
}

// between returns the shorter way along the boards from a to b in metres,
// positive with rising station.
func between(r rink.Rink, a, b unit.Length) float64 {
	perimeter := r.Perimeter().Metres()
	return math.Remainder((b - a).Metres(), perimeter)
}

// towardCentre reports whether rising station leads toward centre ice in a
// corner: from the bench side of the red line stations run to end B first.
func towardCentre(c rink.Corner) bool { return c == rink.BBox || c == rink.ABench }

// nearSlot returns the zone of the light table that lies before the net of the
// station's own end.
func nearSlot(r rink.Rink, station unit.Length) string {
	if r.Point(station).X < 0 {
		return "slot-A"
	}
	return "slot-B"
}

package chart

import (
	"strconv"

	"example.org/rinkpane/internal/measure/unit"
)

// stationStep is the distance between numbered stations on the plan map.
func stationStep(sys unit.System) unit.Length {
	if sys == unit.Imperial {
		return 50 * unit.Foot
	}
	return 10 * unit.Metre
}

// stationName prints a whole station of a ruler: "150 ft", "40 m".
func stationName(s unit.Length, sys unit.System) string {
	if sys == unit.Imperial {
		return strconv.Itoa(int(s.Feet()+0.5)) + " ft"
	}
	return strconv.Itoa(int(s.Metres()+0.5)) + " m"
}

// stationData prints a station or a height for a data attribute: metres to the
// millimetre.
func stationData(s unit.Length) string { return strconv.FormatFloat(s.Metres(), 'f', 3, 64) }

package kit

import (
	"math"

	"example.org/rinkpane/internal/measure/unit"
)

// WidestAt returns the lens's widest stop at focal length f (metres): in
// stops, evenly between the zoom's ends by the logarithm of the focal length,
// which is common practice with no published source.
func (l Lens) WidestAt(f unit.Length) unit.Stop {
	if l.FocalMax <= l.FocalMin || l.StopLong <= 0 {
		return l.Stop
	}
	if l.StopLong == l.Stop {
		return l.Stop // a constant stop, to the last digit
	}
	k := math.Log(float64(f/l.FocalMin)) / math.Log(float64(l.FocalMax/l.FocalMin))
	return unit.Stop(math.Exp((1-k)*math.Log(float64(l.Stop)) + k*math.Log(float64(l.StopLong))))
}

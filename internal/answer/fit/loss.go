package fit

import (
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/unit"
)

// Loss returns the loss tables, from straight ahead to the usable limit of
// each axis in rows of step (above 0; at most 5 deg is what the contract
// asks), and one row at the limit itself. Without a usable limit the row
// straight ahead stands alone.
func (c Case) Loss(step unit.Angle) Loss {
	turned := c.transposed()
	pan, tilt := c.lossAngles(step), turned.lossAngles(step)
	l := Loss{Pan: make([]LossRow, len(pan)), Tilt: make([]LossRow, len(tilt))}
	cores.Each(len(pan)+len(tilt), func(i int) {
		if i < len(pan) {
			l.Pan[i] = lossRow(pan[i], c.quadrant(pan[i].Radians(), 0))
			return
		}
		i -= len(pan)
		l.Tilt[i] = lossRow(tilt[i], c.quadrant(0, tilt[i].Radians()))
	})
	return l
}

// lossAngles returns the pans of a loss table.
func (c *Case) lossAngles(step unit.Angle) []unit.Angle {
	limit, _ := c.panUsable().Get()
	var at []unit.Angle
	for i := 0; unit.Angle(i)*step <= limit; i++ {
		at = append(at, unit.Angle(i)*step)
	}
	if limit > at[len(at)-1] {
		at = append(at, limit)
	}
	return at
}

func lossRow(at unit.Angle, v View) LossRow {
	return LossRow{Angle: at, Centre: v.Centre, Corner: v.WorstCorner(), Pose: v.Pose}
}

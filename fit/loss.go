package fit

import (
	"math"

	"example.org/rinkpane/unit"
)

// Loss returns the loss tables, from straight ahead to the usable limit of
// each axis in rows of step (above 0; at most 5 deg is what the contract
// asks), and one row at the limit itself. Without a usable limit the row
// straight ahead stands alone.
func (c Case) Loss(step unit.Angle) Loss {
	turned := c.transposed()
	return Loss{Pan: c.panLoss(step), Tilt: turned.tiltLoss(step)}
}

func (c *Case) panLoss(step unit.Angle) []LossRow {
	limit, _ := unbroken(c.usable).Get()
	var rows []LossRow
	add := func(pan unit.Angle) {
		v := c.quadrant(pan.Radians(), 0)
		rows = append(rows, LossRow{Angle: pan, Centre: v.Centre, Corner: v.WorstCorner(), Pose: v.Pose})
	}
	for i := 0; ; i++ {
		pan := unit.Angle(i) * step
		if pan > limit {
			break
		}
		add(pan)
	}
	if last := rows[len(rows)-1].Angle; limit > last {
		add(limit)
	}
	return rows
}

// tiltLoss is panLoss of a case turned on its side, its poses turned back.
func (c *Case) tiltLoss(step unit.Angle) []LossRow {
	rows := c.panLoss(step)
	for i := range rows {
		p := &rows[i].Pose
		p.Nose.X, p.Nose.Y = p.Nose.Y, p.Nose.X
		p.Pan, p.Tilt = 0, math.Abs(p.Pan)
	}
	return rows
}

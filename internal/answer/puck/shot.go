package puck

import (
	"fmt"
	"math"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
)

// Shot is a kind of shot from one place on the ice: where it is struck, where
// it is meant to go, and how far single shots stray from that. Speed, upward
// angle and direction are normal and independent; a shot below level slides
// along the ice and reaches no glass.
type Shot struct {
	From, Aim     geom.Vec2 // on the ice, metres, rink frame
	Speed         unit.Speed
	SpeedSD       unit.Speed // standard deviation
	Elevation     unit.Angle // mean upward angle
	ElevationSD   unit.Angle
	SideSD        unit.Angle // of the direction in plan about the aim
	Weight        float64    // relative frequency, a pure weight >= 0
	TumblingShare float64    // share of such shots that tumble rather than fly flat, 0 to 1
	// Spread is how far to either side of From the shots lie that this one stands for.
	Spread unit.Length
}

// check says what is wrong with a shot.
func (s Shot) check() error {
	finite := !math.IsNaN(s.From.X+s.From.Y+s.Aim.X+s.Aim.Y) && !math.IsInf(s.From.Len()+s.Aim.Len(), 0)
	switch {
	case !finite || s.Aim.Sub(s.From).Len() == 0:
		return fmt.Errorf("shot from %v to %v: give two different places on the ice", s.From, s.Aim)
	case !(s.Speed > 0 && s.Speed < 100) || !(s.SpeedSD >= 0 && s.SpeedSD < s.Speed/2):
		return fmt.Errorf("shot speed %g +- %g m/s: give a speed above 0 and below 100 with a deviation below half of it", float64(s.Speed), float64(s.SpeedSD))
	case !(s.ElevationSD > 0) || !(s.SideSD > 0) || s.ElevationSD > 1 || s.SideSD > 1 || math.IsNaN(float64(s.Elevation)):
		return fmt.Errorf("shot spreads of %g and %g deg: give angles above 0 and below 57 deg", s.ElevationSD.Degrees(), s.SideSD.Degrees())
	case !(s.Weight >= 0) || math.IsInf(s.Weight, 1) || !(s.TumblingShare >= 0 && s.TumblingShare <= 1):
		return fmt.Errorf("shot weight %g, tumbling share %g: give a weight of 0 or more and a share from 0 to 1", s.Weight, s.TumblingShare)
	}
	return nil
}

// goalLine returns how far the goal lines stand from centre ice, in metres.
func goalLine(r rink.Rink) (x float64, ok bool) {
	if !r.Marked() {
		return 0, false
	}
	return r.GoalX(), true
}

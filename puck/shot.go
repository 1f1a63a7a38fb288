package puck

import (
	"fmt"
	"math"

	"example.org/rinkpane/geom"
	"example.org/rinkpane/rink"
	"example.org/rinkpane/unit"
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

// Strike is how hard and how wild a kind of shot is.
type Strike struct {
	Speed, SpeedSD         unit.Speed
	Elevation, ElevationSD unit.Angle
	SideSD                 unit.Angle
}

// Slap and Wrist are the two strikes of the default shots. The slap shot's
// 29.14 +- 1.39 m/s is published (Woo et al.), its deviation widened to take in
// the 33.3 m/s of another study (J Appl Biomech 22(3)); the wrist shot's speed
// and all angles are from memory: about a third of the shots that nobody
// blocks miss the net, most of them wide, some high.
var (
	Slap  = Strike{Speed: 29.14, SpeedSD: 4, Elevation: 3 * unit.Degree, ElevationSD: 4 * unit.Degree, SideSD: 5 * unit.Degree}
	Wrist = Strike{Speed: 22, SpeedSD: 4, Elevation: 5 * unit.Degree, ElevationSD: 6 * unit.Degree, SideSD: 7 * unit.Degree}
)

// defaultTumbling is the share of shots that tumble: half, own assumption.
const defaultTumbling = 0.5

// spot is a place in the attacking zone: metres before the goal line and to
// the side of the long axis, with a relative frequency.
type spot struct {
	before, aside, weight float64
	strike                Strike
}

// spots is the default spread of shots over the zone, own judgement: most
// from the slot and the circles, a fifth from the points. Each stands for both sides.
var spots = []spot{
	{2.5, 1.2, 8, Wrist}, {5, 1.5, 12, Wrist}, {8, 2, 14, Wrist}, {11, 3, 10, Wrist},
	{4, 5, 8, Wrist}, {7, 6.5, 14, Wrist}, {11, 7, 10, Wrist}, {3, 8, 4, Wrist},
	{14, 4, 6, Slap}, {16.5, 1.5, 6, Slap}, {16.5, 7, 6, Slap}, {16, 10, 2, Slap},
}

// DefaultShots returns shots at both goals by the stated spread, mirrored to
// both sides; nil on a rink without a goal line. Places that would lie off the ice are left out.
func DefaultShots(r rink.Rink) []Shot {
	goal, ok := goalLine(r)
	if !ok {
		return nil
	}
	var shots []Shot
	for _, end := range []float64{-1, 1} {
		for _, side := range []float64{-1, 1} {
			for _, s := range spots {
				from := geom.Vec2{X: end * (goal - s.before), Y: side * s.aside}
				if r.Contains(from) {
					shots = append(shots, s.strike.At(from, geom.Vec2{X: end * goal}, s.weight))
				}
			}
		}
	}
	return shots
}

// At returns the shot struck so from a place to an aim, with a relative weight.
func (k Strike) At(from, aim geom.Vec2, weight float64) Shot {
	return Shot{
		From: from, Aim: aim, Weight: weight, TumblingShare: defaultTumbling,
		Speed: k.Speed, SpeedSD: k.SpeedSD,
		Elevation: k.Elevation, ElevationSD: k.ElevationSD, SideSD: k.SideSD,
	}
}

// goalLine returns how far the goal lines stand from centre ice, in metres.
func goalLine(r rink.Rink) (x float64, ok bool) {
	if !r.Marked() {
		return 0, false
	}
	d := r.Dimensions()
	return (d.Length/2 - d.Markings.GoalLine).Metres(), true
}

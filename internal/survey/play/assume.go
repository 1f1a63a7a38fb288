package play

import (
	"fmt"
	"math"
)

// Assumptions are what the sampler assumes about a game and about what
// pictures are worth. Make them with [DefaultAssumptions] or
// [ReadAssumptions].
type Assumptions struct {
	Share  [phases]float64 // relative frequency of each phase, without unit; at least one above 0
	Weight [phases]float64 // news weight of one moment of each phase, without unit; each above 0
	// HomeShare is the share of moments in which the home team attacks, in [0, 1].
	HomeShare float64
	// HomeWeight is the factor on the weight of the home team's moments; above 0.
	HomeWeight float64
	// Stature is the standing height of the players without equipment, metres.
	Stature Normal
	// Equipment is what skates and helmet add to the stature, metres.
	Equipment float64
	// Game is what the rink says of its games.
	Game Game
}

// Normal is a bell curve of lengths.
type Normal struct {
	Mean float64 // metres
	SD   float64 // standard deviation, metres
}

// Stature of ANSUR II's men and women: mean and standard deviation in metres
// (US Army Anthropometric Survey 2012, stature).
var (
	StatureMen   = Normal{1.7562, 0.0686}
	StatureWomen = Normal{1.6285, 0.0642}
)

// equipmentHeight is skates (7 to 10 cm) and helmet (3 to 5 cm) at mid-range,
// in metres (from memory).
const equipmentHeight = 0.085 + 0.04

// DefaultAssumptions returns the shipped assumptions. Shares and news weights
// are own judgement, not measured: a goal's celebration is rare and runs large
// in print, a face-off is common and runs small.
func DefaultAssumptions() Assumptions {
	return Assumptions{
		Share:     [phases]float64{Rush: 22, ZonePlay: 30, NetFront: 20, FaceOff: 12, Celebration: 10, Bench: 6},
		Weight:    [phases]float64{Rush: 1, ZonePlay: 0.6, NetFront: 2, FaceOff: 0.4, Celebration: 4, Bench: 1.5},
		HomeShare: 0.5, HomeWeight: 1,
		Stature: StatureMen, Equipment: equipmentHeight,
	}
}

// Check reports the first assumption that makes no sense.
func (a Assumptions) Check() error {
	if err := a.Game.Check(); err != nil {
		return err
	}
	var sum float64
	for _, p := range Phases() {
		if !(a.Share[p] >= 0 && a.Share[p] <= maxShare) {
			return fmt.Errorf("shares: %s: %g: write a number from 0 to %g", p, a.Share[p], maxShare)
		}
		if !(a.Weight[p] > 0 && a.Weight[p] <= maxShare) {
			return fmt.Errorf("weights: %s: %g: write a number above 0, at most %g", p, a.Weight[p], maxShare)
		}
		sum += a.Share[p]
	}
	if sum == 0 {
		return fmt.Errorf("shares: all are 0: give at least one phase a share above 0")
	}
	if !(a.HomeShare >= 0 && a.HomeShare <= 1) {
		return fmt.Errorf("home_share: %g: write a number from 0 to 1", a.HomeShare)
	}
	if !(a.HomeWeight > 0 && a.HomeWeight <= maxShare) {
		return fmt.Errorf("home_weight: %g: write a number above 0, at most %g", a.HomeWeight, maxShare)
	}
	if !(a.Stature.Mean >= 0.8 && a.Stature.Mean <= 2.2) || !(a.Stature.SD >= 0 && a.Stature.SD <= 0.3) {
		return fmt.Errorf("stature: mean %g m, deviation %g m: write a mean from 0.8 to 2.2 m and a deviation from 0 to 0.3 m", a.Stature.Mean, a.Stature.SD)
	}
	if !(a.Equipment >= 0 && a.Equipment <= 0.5) {
		return fmt.Errorf("equipment: %g m: write a length from 0 to 0.5 m", a.Equipment)
	}
	return nil
}

// maxShare keeps relative numbers in a range in which sums stay exact enough.
const maxShare = 1e6

// phase picks a phase by its share; u is uniform in [0, 1).
func (a Assumptions) phase(u float64) Phase {
	var sum float64
	for _, s := range a.Share {
		sum += s
	}
	last := Phase(0)
	for _, p := range Phases() {
		if a.Share[p] == 0 {
			continue
		}
		last = p
		if u -= a.Share[p] / sum; u < 0 {
			return p
		}
	}
	return last // rounding left u at or a hair above 0
}

// Standing is how tall players in their equipment stand on average, in metres.
func (a Assumptions) Standing() float64 { return a.standing(0) }

// standing returns a player's height in equipment, truncated at three deviations
// so that no draw is implausibly tall.
func (a Assumptions) standing(z float64) float64 {
	return a.Stature.Mean + a.Stature.SD*math.Max(-3, math.Min(3, z)) + a.Equipment
}

package puck

import (
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/unit"
)

// Sector is the part of the spectators' side behind a hole that must be kept
// clear. Bearings are in plan, from the outward normal of the pane, positive
// toward rising station; distances from the glass along the flight.
//
//	          rising station ->
//	   glass ======|=hole=|======
//	              / \    / \
//	From (<0)    /   |  |   \     To (> 0)
//	            /    |  |    \
//	       Typical . . . . . Far
type Sector struct {
	// HalfAngle is the widest bearing at which any puck can pass, by the
	// opening's shape alone; unknown when no puck can pass.
	HalfAngle unit.Maybe[unit.Angle]
	// From, To and Clear bound what is to be kept clear: past each of them a puck comes less
	// than once in GamesClear games with the cover out. They are rates and no shares of
	// what passes, so that a larger hole never has a smaller sector. Each is the mean of the
	// outermost passes that make up that rate: a mean moves with the hole as its passes do; the
	// bearing that they begin at would leap over the gap that a goal leaves. From = To where
	// too few come through for a sector.
	From, To unit.Angle
	Clear    unit.Length
	// Typical, Far and Farthest are where clean passes come down on the floor: half of
	// them within Typical, 95 % within Far, 999 of 1000 within Farthest.
	Typical, Far, Farthest unit.Length
	Passing                bool // some shot of the model passes; otherwise the figures above are zero
}

// pass is one way through the hole with its part of all shots, and the spread
// of those that it stands for: of their bearing to either side (radians), and of
// their speed as a share of it.
type pass struct {
	share          float64
	flight         Flight
	motion         Motion
	aside, quicker float64
}

// tally sums the shots that pass through one opening.
type tally struct {
	open     Opening
	axes     Orientations
	passes   []pass
	share    float64 // of all shots, those that pass clean
	touching float64 // of all shots, those whose centre meets the opening, clean ones included
	joules   float64 // share times energy, summed
	mostJ    float64
}

func newTally(o Opening, axes Orientations) *tally { return &tally{open: o, axes: axes} }

// add sums the shots at the hole's centre: the density there times the
// window's area, the window being small against the distance.
func (t *tally) add(shots []Shot, p place, goals goalFrames) {
	total := weight(shots)
	if total == 0 {
		return
	}
	for _, s := range shots {
		aside, quicker := s.Spread.Metres()/max(s.From.Sub(p.at).Len(), s.Spread.Metres(), math.SmallestNonzeroFloat64), float64(s.SpeedSD/s.Speed)
		s.arrivals(p, goals, func(v arrival) {
			perM2 := v.perM2 * s.Weight / total
			t.touching += perM2 * t.open.centreArea(v.flight)
			share := perM2 * t.window(v).AreaM2
			if share <= 0 {
				return
			}
			e := Energy(v.motion.Speed())
			t.share += share
			t.joules += share * e
			t.mostJ = max(t.mostJ, e)
			t.passes = append(t.passes, pass{share, v.flight, v.motion, aside, quicker})
		})
	}
}

func (t *tally) window(v arrival) Window {
	if v.flat {
		return t.open.FlatFlight(v.flight)
	}
	return t.open.Tumbling(v.flight, t.axes)
}

func (t *tally) meanJ() float64 {
	if t.share == 0 {
		return 0
	}
	return t.joules / t.share
}

// The shares of clean passes that tell where they come down.
const (
	half      = 0.5
	highTail  = 0.95
	nearlyAll = 0.999
)

// GamesClear is in how many games, each an hour of play with the cover out, a puck leaves a
// sector over one of its bounds at most: clean passes, raised as the high figure of [Passes]
// is. One that touches the rim may go on anywhere within HalfAngle. Own judgement: at common
// holes 2 to 8 % of what passes leaves over a bound.
const GamesClear = 20_000.0

// sector flies every pass on to the floor; the puck is taken as flat there,
// which meets less air and lands farther. Shots are per hour of play.
func (t *tally) sector(height, floor unit.Length, limit unit.Maybe[unit.Angle], shots float64) Sector {
	s := Sector{HalfAngle: limit}
	widest, opens := limit.Get()
	if t.share <= 0 || !opens {
		return s
	}
	clean, lands := make([]weighted, len(t.passes)), make([]weighted, len(t.passes))
	for i, p := range t.passes {
		m := p.motion
		m.Distance, m.Height = 0, height
		land := FlatBody().Land(m, floor).Distance.Metres()
		clean[i] = weighted{land, p.share, land * p.quicker}
		lands[i] = weighted{land, gamesOverModel * p.share * shots, land * p.quicker}
	}
	s.Passing = true
	s.Typical, s.Far = unit.Length(quantile(clean, half)), unit.Length(quantile(clean, highTail))
	s.Farthest = unit.Length(quantile(clean, nearlyAll))
	bearings := t.bearings(shots)
	from, to := unit.Angle(-outermost(turned(bearings), 1/GamesClear, -math.Pi/2)), unit.Angle(outermost(bearings, 1/GamesClear, -math.Pi/2))
	s.From, s.To = max(from, -widest), min(to, widest)
	if s.From >= s.To {
		s.From, s.To = (s.From+s.To)/2, (s.From+s.To)/2
	}
	s.Clear = unit.Length(outermost(lands, 1/GamesClear, 0))
	return s
}

// Bounded reports whether enough comes through for seats to be cleared.
func (s Sector) Bounded() bool { return s.From < s.To }

// bearings are the raised passes in an hour of play and the direction, in radians, that
// they go on in.
func (t *tally) bearings(shots float64) []weighted {
	out := make([]weighted, len(t.passes))
	for i, p := range t.passes {
		out[i] = weighted{p.flight.Along.Radians(), gamesOverModel * p.share * shots, p.aside}
	}
	return out
}

// weighted is a value with a weight, spread evenly over a width to either side.
type weighted struct{ value, weight, wide float64 }

// below returns the weight of the part below x.
func (w weighted) below(x float64) float64 {
	switch {
	case w.wide > 0:
		return w.weight * max(0, min(1, (x-w.value+w.wide)/(2*w.wide)))
	case w.value <= x:
		return w.weight
	}
	return 0
}

// below returns the weight below x.
func below(v []weighted, x float64) (sum float64) {
	for _, w := range v {
		sum += w.below(x)
	}
	return sum
}

// turned are the values mirrored at 0.
func turned(v []weighted) []weighted {
	out := slices.Clone(v)
	for i := range out {
		out[i].value = -out[i].value
	}
	return out
}

// outermost returns the mean of the greatest values that hold a weight; what the values
// lack of it counts with the least value that there can be. More weight anywhere never makes
// it less, nor do greater values.
func outermost(v []weighted, due, least float64) float64 {
	all := below(v, math.Inf(1))
	from, weight, sum := least, 0.0, 0.0
	if all > due {
		from = quantile(v, 1-due/all)
	}
	for _, x := range v {
		beyond := x.weight - x.below(from)
		weight += beyond
		sum += beyond * (max(x.value-x.wide, min(from, x.value+x.wide)) + x.value + x.wide) / 2
	}
	if all > due {
		return sum / weight
	}
	return (sum + (due-weight)*least) / due
}

// quantile returns the value below which the share q of the weight lies.
func quantile(v []weighted, q float64) float64 {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, x := range v {
		lo, hi = min(lo, x.value-x.wide), max(hi, x.value+x.wide)
	}
	due := q * below(v, hi)
	for range quantileSteps {
		if mid := (lo + hi) / 2; below(v, mid) < due {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

// quantileSteps halve the range of angles and distances to below a nanometre.
const quantileSteps = 40

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
	// From and To hold at least nine in ten of the shots' passes: each is the mean bearing
	// of the outermost 5 % on its side. A mean moves with the hole as its bearings do; the
	// bearing that 5 % lie beyond would leap over the gap that a goal leaves.
	From, To unit.Angle
	// Typical, Far and Farthest are where pucks come down on the floor: half of
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

// The shares of passes that bound the sector.
const (
	tail      = 0.05
	half      = 0.5
	highTail  = 0.95
	nearlyAll = 0.999
)

// sector flies every pass on to the floor; the puck is taken as flat there,
// which meets less air and lands farther.
func (t *tally) sector(height, floor unit.Length, limit unit.Maybe[unit.Angle]) Sector {
	s := Sector{HalfAngle: limit}
	if len(t.passes) == 0 {
		return s
	}
	bearings, lands := t.bearings(), make([]weighted, len(t.passes))
	for i, p := range t.passes {
		m := p.motion
		m.Distance, m.Height = 0, height
		land := FlatBody().Land(m, floor).Distance.Metres()
		lands[i] = weighted{land, p.share, land * p.quicker}
	}
	s.Passing = true
	s.From, s.To = unit.Angle(-outermost(turned(bearings), tail)), unit.Angle(outermost(bearings, tail))
	s.Typical, s.Far = unit.Length(quantile(lands, half)), unit.Length(quantile(lands, highTail))
	s.Farthest = unit.Length(quantile(lands, nearlyAll))
	return s
}

// bearings are the passes by the direction, in radians, that they go on in.
func (t *tally) bearings() []weighted {
	out := make([]weighted, len(t.passes))
	for i, p := range t.passes {
		out[i] = weighted{p.flight.Along.Radians(), p.share, p.aside}
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

// outermost returns the mean of the greatest values that hold the share q of the
// weight.
func outermost(v []weighted, q float64) float64 {
	from := quantile(v, 1-q)
	weight, sum := 0.0, 0.0
	for _, x := range v {
		beyond := x.weight - x.below(from)
		weight += beyond
		sum += beyond * (max(x.value-x.wide, min(from, x.value+x.wide)) + x.value + x.wide) / 2
	}
	if weight == 0 {
		return from
	}
	return sum / weight
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

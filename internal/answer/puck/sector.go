package puck

import (
	"cmp"
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
	// From and To hold nine in ten of the shots' passes: 5 % lie to either side.
	From, To unit.Angle
	// Typical, Far and Farthest are where pucks come down on the floor: half of
	// them within Typical, 95 % within Far, 999 of 1000 within Farthest.
	Typical, Far, Farthest unit.Length
	Passing                bool // some shot of the model passes; otherwise the figures above are zero
}

// pass is one way through the hole with its part of all shots.
type pass struct {
	share  float64
	flight Flight
	motion Motion
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
			t.passes = append(t.passes, pass{share, v.flight, v.motion})
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
	lowTail   = 0.05
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
	bearings, lands := make([]weighted, len(t.passes)), make([]weighted, len(t.passes))
	for i, p := range t.passes {
		m := p.motion
		m.Distance, m.Height = 0, height
		bearings[i] = weighted{p.flight.Along.Radians(), p.share}
		lands[i] = weighted{FlatBody().Land(m, floor).Distance.Metres(), p.share}
	}
	bearings, lands = merged(bearings), merged(lands)
	s.Passing = true
	s.From, s.To = unit.Angle(quantile(bearings, lowTail)), unit.Angle(quantile(bearings, highTail))
	s.Typical, s.Far = unit.Length(quantile(lands, half)), unit.Length(quantile(lands, highTail))
	s.Farthest = unit.Length(quantile(lands, nearlyAll))
	return s
}

// weighted is a value with a weight.
type weighted struct{ value, weight float64 }

// quantile returns the value below which the share q of the weight lies, each
// value standing in the middle of its own weight and straight lines between,
// so that it moves little when values and weights do; v is as merged leaves it.
func quantile(v []weighted, q float64) float64 {
	total := 0.0
	for _, x := range v {
		total += x.weight
	}
	last, below, sum := v[0].value, 0.0, 0.0
	for _, x := range v {
		middle := sum + x.weight/2
		if middle >= q*total {
			return last + (x.value-last)*(q*total-below)/(middle-below)
		}
		last, below, sum = x.value, middle, sum+x.weight
	}
	return last
}

// merged returns the values in order, those that differ by rounding alone as
// one: ways from one place share a bearing. It works in place.
func merged(v []weighted) []weighted {
	const same = 1e-9
	slices.SortFunc(v, func(a, b weighted) int { return cmp.Compare(a.value, b.value) })
	out := v[:1]
	for _, x := range v[1:] {
		if last := &out[len(out)-1]; x.value-last.value < same {
			last.weight += x.weight
		} else {
			out = append(out, x)
		}
	}
	return out
}

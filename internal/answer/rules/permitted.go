package rules

import (
	"cmp"
	"math"
	"slices"

	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// The standard hole where no rule says better: the usual size of common
// practice, at the chest of a photographer who stands, edges well rounded. Own
// choice.
const (
	standardWidth    = 5.5 * unit.Inch
	standardHeight   = 4.5 * unit.Inch
	standardAbove    = 1.5 * unit.Metre // of its centre above the ice
	standardRounding = 10 * unit.Millimetre
)

// Interval is a piece of the boards, in stations: From lies in [0, perimeter),
// To >= From may pass the perimeter.
type Interval struct{ From, To unit.Length }

// Standard returns the hole that the sets would like best, without a place: of
// the size that they ask for (the first that does), at the middle of their
// height range, its corners as round as can be, its edges rounded, with a cover
// on a tether.
func (s Sets) Standard(a arena.Arena) glass.Hole {
	h := glass.Hole{
		ID: "standard", Height: standardAbove,
		Size:     unit.Size{W: standardWidth, H: standardHeight},
		Rounding: unit.Known(standardRounding),
		Cover:    unit.Known(glass.Cover{Present: true, Material: glass.Polycarbonate, Tether: unit.Known(true)}),
	}
	for _, set := range s.list {
		for _, r := range set.Rules {
			if d, ok := r.demand.(shaping); ok && r.holes {
				d.shape(a, &h)
			}
		}
	}
	h.Corner = unit.Known(min(h.Size.W, h.Size.H) / 2)
	return h
}

// How finely the boards are searched.
const (
	searchStep = 0.25 // metres between samples of a pane, besides its breaks
	searchEnd  = 1e-4 // metres: how well the end of an interval is found
)

// Permitted returns the pieces of the boards where the centre of a standard
// hole ([Sets.Standard]) may stand so that every rule on a single hole passes, and
// those where the survey lacks a number to say so, both in rising order; within
// them groups and pairs are still to be kept. Ends are right to a tenth of a millimetre.
//
// Within a pane and between the breaks (ends of stretches and zones) the places
// that pass are one piece about the place nearest the pane's middle; so samples
// at the breaks, the middle and a few between cannot miss one.
func (on *Applied) Permitted() (permitted, undecided []Interval) {
	a := *on.arena
	standard := on.sets.Standard(a)
	breaks := on.breaks(standard.Size.W)
	for _, p := range a.Panes {
		low := p.From + standard.Size.W/2
		high := p.To() - standard.Size.W/2
		if high < low {
			continue
		}
		known := map[unit.Length]Status{}
		is := func(want Status) func(at unit.Length) bool {
			return func(at unit.Length) bool {
				v, ok := known[at]
				if !ok {
					h := standard
					h.Pane, h.Station = p.ID, a.Rink.Wrap(at)
					v = on.Standing(h)
					known[at] = v
				}
				return v == want
			}
		}
		at := samples(a, low, high, breaks)
		permitted = append(permitted, search(at, is(Pass))...)
		undecided = append(undecided, search(at, is(Unknown))...)
	}
	return tidy(a, permitted), tidy(a, undecided)
}

// breaks returns the stations where the answer for a hole of a width may jump
// within a pane.
func (on *Applied) breaks(width unit.Length) []unit.Length {
	var out []unit.Length
	for i := range on.checks {
		if d, ok := on.checks[i].demand.(breaking); ok {
			out = append(out, d.breaks(width)...)
		}
	}
	return out
}

// samples returns the stations of a pane at which the rules are asked, rising.
func samples(a arena.Arena, low, high unit.Length, breaks []unit.Length) []unit.Length {
	out := []unit.Length{low, (low + high) / 2, high}
	n := math.Ceil((high - low).Metres() / searchStep)
	for i := 1.0; i < n; i++ {
		out = append(out, low+(high-low)*unit.Length(i/n))
	}
	for _, b := range breaks {
		into := a.Rink.Wrap(b - low)
		for _, at := range [3]unit.Length{low + into - searchEnd, low + into, low + into + searchEnd} {
			if at > low && at < high {
				out = append(out, at)
			}
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// search returns the pieces between samples where is holds, their ends found by
// halving.
func search(at []unit.Length, is func(unit.Length) bool) []Interval {
	var out []Interval
	var from unit.Length
	inside := false
	for i, x := range at {
		now := is(x)
		switch {
		case now && !inside && i == 0:
			from = x
		case now && !inside:
			from = halve(x, at[i-1], is)
		case !now && inside:
			out = append(out, Interval{from, halve(at[i-1], x, is)})
		}
		inside = now
	}
	if inside {
		out = append(out, Interval{from, at[len(at)-1]})
	}
	return out
}

// halve returns the last station, from in where is holds toward out where it
// does not, at which it still holds.
func halve(in, out unit.Length, is func(unit.Length) bool) unit.Length {
	for abs(out-in) > searchEnd/2 {
		if mid := (in + out) / 2; is(mid) {
			in = mid
		} else {
			out = mid
		}
	}
	return in
}

// tidy brings the starts into [0, perimeter) and sorts.
func tidy(a arena.Arena, list []Interval) []Interval {
	for i, iv := range list {
		from := a.Rink.Wrap(iv.From)
		list[i] = Interval{from, from + iv.To - iv.From}
	}
	slices.SortFunc(list, func(a, b Interval) int { return cmp.Compare(a.From, b.From) })
	return list
}

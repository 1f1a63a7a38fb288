package recap

import (
	"cmp"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// Seen is the light that exposures were made for, in a stage before the holes of an end;
// Stage "" is all stages, End "" both ends and holes that are not known.
type Seen struct {
	Stage, End string
	Lux        Spread // lx, of frames
	// Survey is what the arena's survey says on that end, the median of its readings.
	Survey unit.Maybe[unit.Illuminance]
}

// Passes returns the share of the light that a hole lets through to a frame, 0 to 1, where
// its lens was turned far; nil or a share of 0 corrects nothing.
type Passes func(Matched) float64

// Light returns the light by all frames, by end, and by stage and end: E = C N^2 / (t S)
// over the share that the hole lets through, each by its median and spread, which no single
// frame moves far.
func Light(a arena.Arena, frames []Matched, passes Passes) []Seen {
	type key struct{ stage, end string }
	values := map[key][]float64{}
	for _, m := range frames {
		lux, ok := m.lux()
		if !ok {
			continue
		}
		if passes != nil {
			if share := passes(m); share > 0 {
				lux /= share
			}
		}
		end := endOf(a, m.Hole)
		values[key{}] = append(values[key{}], lux)
		if end == "" {
			continue
		}
		values[key{"", end}] = append(values[key{"", end}], lux)
		if m.Stage != "" {
			values[key{m.Stage, end}] = append(values[key{m.Stage, end}], lux)
		}
	}
	var out []Seen
	for k, v := range values {
		out = append(out, Seen{k.stage, k.end, spread(v), surveyed(a, k.end)})
	}
	slices.SortFunc(out, func(a, b Seen) int { return cmp.Or(strings.Compare(a.End, b.End), strings.Compare(a.Stage, b.Stage)) })
	return out
}

func (f Frame) lux() (float64, bool) {
	t, okT := f.Shutter.Get()
	n, okN := f.Stop.Get()
	s, okS := f.ISO.Get()
	if !okT || !okN || !okS {
		return 0, false
	}
	return optics.DefaultCalibration.Lux(t, n, s).Lux(), true
}

// endOf names the end at which a hole stands.
func endOf(a arena.Arena, hole string) string {
	h, ok := a.Hole(hole)
	switch {
	case !ok:
		return ""
	case a.Rink.Point(h.Station).X < 0:
		return "A"
	}
	return "B"
}

// surveyed returns the median of the survey's readings on an end, "" for both.
func surveyed(a arena.Arena, end string) unit.Maybe[unit.Illuminance] {
	var v []float64
	for _, r := range a.Light.Readings {
		if end == "" || (end == "A") == (r.At.X < 0) {
			v = append(v, r.Lux.Lux())
		}
	}
	if len(v) == 0 {
		return unit.Maybe[unit.Illuminance]{}
	}
	return unit.Known(unit.Illuminance(spread(v).Median))
}

// leastFrames is how many frames of an end are taken as a reading of its light, and
// faceHeight how high it is noted, metres: exposures are made for faces.
const (
	leastFrames = 20
	faceHeight  = 1.5
)

// Readings returns the edits that note the light of each end as a reading in its slot, at
// a third of the way from the goal to the blue line, for somebody to accept; none of an end
// with few frames.
func Readings(a arena.Arena, seen []Seen) (out []edit.Edit) {
	for _, s := range seen {
		if s.Stage != "" || s.End == "" || s.Lux.N < leastFrames || !a.Rink.Marked() {
			continue
		}
		x := slot(a)
		if s.End == "A" {
			x = -x
		}
		out = append(out, reading(a, x, s.Lux.Median))
	}
	return out
}

// slot returns how far before centre ice an end's slot is, metres.
func slot(a arena.Arena) float64 {
	goal := a.Rink.GoalX()
	_, blue := a.Rink.BlueX()
	return goal - (goal-blue)/3
}

// reading is the edit that notes a median light on upright faces, seen from an end.
func reading(a arena.Arena, x, lux float64) edit.Edit {
	end := "B"
	if x < 0 {
		end = "A"
	}
	at := func(metres float64) *edit.Value { return edit.One(unit.Length(metres).Format(a.Units)) }
	return edit.Edit{Do: edit.Append, Path: "light.readings", Value: edit.Group(
		edit.Named{Name: "x", Value: at(x)}, edit.Named{Name: "y", Value: at(0)}, edit.Named{Name: "height", Value: at(faceHeight)},
		edit.Named{Name: "light", Value: edit.One(unit.Illuminance(lux).Format(unit.Metric))}, edit.Named{Name: "facing", Value: edit.One(end)})}
}

package recap

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// Seen is the light that exposures were made for, in a stage, before the holes of an end
// or in a zone of the ice; what is "" is not told apart.
type Seen struct {
	Stage, End, Zone string
	Lux              Spread // lx, of frames
	From             string // the end before whose holes most of the frames were taken
	// Survey is what the arena's survey says there on upright faces: the median of its
	// readings of the end, or its field over the zone.
	Survey unit.Maybe[unit.Illuminance]
}

// bin is which frames are taken together.
type bin struct{ end, zone, stage string }

// Light returns the light by all frames, by end, by stage and end, by zone, and by stage
// and zone where there are [leastFrames]: E = C N^2 / (t S) over the share that the hole
// lets through, each by its median and spread, which no single frame moves far.
func Light(a arena.Arena, frames []Matched) (out []Seen) {
	values, before := map[bin][]float64{}, map[bin]map[string]int{}
	for _, m := range frames {
		lux, ok := m.lux()
		if !ok {
			continue
		}
		if m.Pass > 0 {
			lux /= m.Pass
		}
		end := endOf(a, m.Hole)
		for _, b := range binsOf(m, end) {
			values[b] = append(values[b], lux)
			if before[b] == nil {
				before[b] = map[string]int{}
			}
			before[b][end]++
		}
	}
	lit := surveyOf(a)
	for b, v := range values {
		if b.zone != "" && b.stage != "" && len(v) < leastFrames {
			continue
		}
		s := Seen{Stage: b.stage, End: b.end, Zone: b.zone, Lux: spread(v), Survey: lit.at(b), From: "B"}
		if before[b]["A"] > before[b]["B"] {
			s.From = "A"
		}
		out = append(out, s)
	}
	slices.SortFunc(out, func(a, b Seen) int {
		return cmp.Or(strings.Compare(a.Zone, b.Zone), strings.Compare(a.End, b.End), strings.Compare(a.Stage, b.Stage))
	})
	return out
}

// binsOf lists what a frame counts for.
func binsOf(m Matched, end string) []bin {
	out := []bin{{}}
	if end != "" {
		out = append(out, bin{end: end})
		if m.Stage != "" {
			out = append(out, bin{end: end, stage: m.Stage})
		}
	}
	if m.Zone != "" {
		out = append(out, bin{zone: m.Zone})
		if m.Stage != "" {
			out = append(out, bin{zone: m.Zone, stage: m.Stage})
		}
	}
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

// surveyed is what an arena's survey says of the light on upright faces.
type surveyed struct {
	arena  arena.Arena
	points []light.Point
	field  *light.Field // nil without readings
}

func surveyOf(a arena.Arena) surveyed {
	s := surveyed{arena: a, points: light.SurveyOfFaces(a.Light)}
	if f, err := light.NewField(s.points); err == nil {
		s.field = f
	}
	return s
}

func (s surveyed) at(b bin) (none unit.Maybe[unit.Illuminance]) {
	if s.field == nil {
		return none
	}
	for _, z := range light.Zones(s.arena.Rink) {
		if z.ID != b.zone {
			continue
		}
		if lit, ok := s.field.Over(s.arena.Rink, z); ok {
			return unit.Known(lit.Median)
		}
		return none
	}
	var v []float64
	for _, p := range s.points {
		if b.end == "" || (b.end == "A") == (p.At.X < 0) {
			v = append(v, p.Lux.Lux())
		}
	}
	if len(v) == 0 {
		return none
	}
	return unit.Known(unit.Illuminance(spread(v).Median))
}

// leastFrames is how many frames of a zone or an end are taken as a reading of its light,
// and faceHeight how high it is noted, metres: exposures are made for faces.
const (
	leastFrames = 20
	faceHeight  = 1.5
)

// LightReadings returns the edits that note the light as readings in the middles of the zones of
// which enough frames tell, on faces turned to where they were seen from, for somebody to
// accept; an end none of whose zones tells it has one reading in its slot. What an earlier
// game's frames noted there is noted anew.
func LightReadings(a arena.Arena, seen []Seen) (out []edit.Edit) {
	if !a.Rink.Marked() {
		return nil
	}
	told := map[string]bool{}
	for _, s := range seen {
		if s.Stage == "" && s.Zone != "" && s.Lux.N >= leastFrames {
			told[s.From] = true
		}
	}
	for _, z := range light.Zones(a.Rink) {
		for _, s := range seen {
			slot := s.Zone == "" && s.End != "" && z.ID == "slot-"+s.End && !told[s.End]
			if s.Stage == "" && s.Lux.N >= leastFrames && (slot || s.Zone == z.ID) {
				out = append(out, reading(a, z.Centre(), s))
			}
		}
	}
	return out
}

// samePlace is how near a reading of an earlier game is the same one, metres (own choice:
// it was written in the arena's units).
const samePlace = 0.5

// reading is the edit that notes a median light on upright faces.
func reading(a arena.Arena, p geom.Vec2, s Seen) edit.Edit {
	lux := edit.One(unit.Illuminance(s.Lux.Median).Format(unit.Metric))
	for i, r := range a.Light.Readings {
		path := fmt.Sprintf("light.readings[#%d]", i+1)
		if r.Facing == arena.Facing(s.From) && r.At.Sub(p).Len() < samePlace && a.Source(path) == arena.Frames {
			return edit.Edit{Do: edit.Set, Path: path + ".light", Value: lux}
		}
	}
	at := func(metres float64) *edit.Value { return edit.One(unit.Length(metres).Format(a.Units)) }
	return edit.Edit{Do: edit.Append, Path: "light.readings", Value: edit.Group(
		edit.Named{Name: "x", Value: at(p.X)}, edit.Named{Name: "y", Value: at(p.Y)}, edit.Named{Name: "height", Value: at(faceHeight)},
		edit.Named{Name: "light", Value: lux}, edit.Named{Name: "facing", Value: edit.One(s.From)},
		edit.Named{Name: "source", Value: edit.One(string(arena.Frames))})}
}

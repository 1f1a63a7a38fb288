package api

import (
	"context"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
)

// RuleSet is one rule set.
type RuleSet struct {
	ID      string `json:"id"`
	Name    string `json:"name"`
	Status  string `json:"status" doc:"Published, superseded, common practice, an example."`
	Source  string `json:"source" doc:"Empty when nothing is published."`
	InForce bool   `json:"in_force" doc:"Whether this desk proves arenas against it."`
	Rules   []Rule `json:"rules"`
}

// Rule is one rule of a set.
type Rule struct {
	ID          string `json:"id"`
	Kind        string `json:"kind"`
	Note        string `json:"note,omitempty"`
	Dispensable bool   `json:"dispensable" doc:"A dispensation recorded in the arena lifts it."`
}

// Lens is one lens of the kit.
type Lens struct {
	ID       string   `json:"id"`
	Name     string   `json:"name"`
	FocalMin float64  `json:"focal_min_mm"`
	FocalMax float64  `json:"focal_max_mm"`
	Stop     float64  `json:"stop" doc:"Widest f-number at the short end."`     // f-number
	StopLong float64  `json:"stop_long" doc:"Widest f-number at the long end."` // f-number
	Nose     float64  `json:"nose_mm" doc:"Outer diameter of the foremost part without hood."`
	Length   *float64 `json:"length_mm" doc:"From the nose without hood to the mount; null when the kit does not know."`
}

// Body is one camera body of the kit.
type Body struct {
	ID      string  `json:"id"`
	Name    string  `json:"name"`
	SensorW float64 `json:"sensor_width_mm"`
	SensorH float64 `json:"sensor_height_mm"`
	PixelsW int     `json:"pixels_across"`
	PixelsH int     `json:"pixels_down"`
	ISOMax  int     `json:"iso_max"`
	// FrontW and FrontH are the body's front, held level; null when the kit does not know.
	FrontW *float64 `json:"front_width_mm"`
	FrontH *float64 `json:"front_height_mm"`
}

type bag struct {
	Bodies []Body `json:"bodies"`
	Lenses []Lens `json:"lenses"`
}

type ruleSets struct {
	Sets []RuleSet `json:"rule_sets"`
}

func (s *server) catalogue() {
	answer(s, "GET /api/rules", "list-rules", "The rule sets that the program knows and those in force", s.rules)
	answer(s, "GET /api/kit", "get-kit", "Bodies and lenses", s.kit)
}

func (s *server) rules(context.Context, *struct{}) (ruleSets, error) {
	out, inForce := ruleSets{[]RuleSet{}}, map[string]bool{}
	for _, set := range s.Shelf.Maker().Rules.All() {
		inForce[set.ID] = true
		out.Sets = append(out.Sets, ruleSetOf(set, true))
	}
	for _, id := range rules.Names() {
		if inForce[id] {
			continue
		}
		set, err := rules.Shipped(id)
		if err != nil {
			return out, err
		}
		out.Sets = append(out.Sets, ruleSetOf(set, false))
	}
	return out, nil
}

func ruleSetOf(set rules.Set, inForce bool) RuleSet {
	out := RuleSet{set.ID, set.Name, set.Status, set.Source, inForce, []Rule{}}
	for _, r := range set.Rules {
		out.Rules = append(out.Rules, Rule{r.ID, r.Kind, r.Note, r.Dispensable})
	}
	return out
}

func (s *server) kit(context.Context, *struct{}) (bag, error) {
	k, out := s.Shelf.Maker().Kit, bag{[]Body{}, []Lens{}}
	for _, b := range k.Bodies {
		row := Body{ID: b.ID, Name: b.Name, SensorW: b.Sensor.W.Millimetres(), SensorH: b.Sensor.H.Millimetres(), PixelsW: b.PixelsW, PixelsH: b.PixelsH, ISOMax: b.ISOMax}
		if front, known := b.Front.Get(); known {
			row.FrontW, row.FrontH = millimetres(unit.Known(front.W)), millimetres(unit.Known(front.H))
		}
		out.Bodies = append(out.Bodies, row)
	}
	for _, l := range k.Lenses {
		out.Lenses = append(out.Lenses, Lens{l.ID, l.Name, l.FocalMin.Millimetres(), l.FocalMax.Millimetres(), float64(l.Stop), float64(l.StopLong), l.Nose.Millimetres(), millimetres(l.Length)})
	}
	return out, nil
}

// millimetres is null for an unknown length.
func millimetres(l unit.Maybe[unit.Length]) *float64 {
	v, known := l.Get()
	if !known {
		return nil
	}
	mm := v.Millimetres()
	return &mm
}

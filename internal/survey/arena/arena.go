// Package arena is the survey of one rink as a document people mail, diff and
// keep in git: what does it say, and is it sound?
//
//	text --Read--> Document --Check--> Arena --> rules, fit, sight ...
//	                 |  ^
//	                 Set, Append, Remove, MoveHole ...: the next Document
//
// A [Document] is what was read: the text with its comments and order. An
// [Arena] is what was proved sound: every pane on the boards, every hole in a
// pane, every id once. Only a Document can become an Arena, by [Document.Check];
// its errors name file, line, column, field, the value seen and the cure.
//
// Assumptions: what a survey lacks is unknown and stays so ([unit.Maybe]); only
// the boards' height, the panes' widths and heights and the holes' places and
// sizes must be there. Panes are told along the boards' rink face, whether the
// glass stands back or not. Whether a sound arena keeps any rule is for package
// rules to say. Limits stand as constants beside [Read]; docs/arena-file.md
// describes the format.
package arena

import (
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

// Arena is one checked rink with its glass, holes, zones and light.
// Make one with Document.Check. Treat its slices as read only.
type Arena struct {
	Name          string
	Place         string // town or building, free text
	Note          string
	Units         unit.System
	Rink          rink.Rink
	Boards        glass.Boards
	Panes         []glass.Pane // in station order, no overlap
	Holes         []glass.Hole // in the document's order, those turned off included
	Windows       []glass.Window
	Zones         []Zone
	NoZones       bool // the survey says that there are none
	Light         Light
	Dispensations []Dispensation
	// Day is the day for which the arena is asked about, YYYY-MM-DD: dispensations end.
	// It stands in no document; [Document.For] sets it, "" asks for no day.
	Day      string
	Lenses   []string // kit lens ids used at this rink; empty means the whole kit
	Kit      string   // id of the kit that the desk plans this rink with; "" is the program's
	Game     play.Game
	RuleSets []string // ids of the rule sets in force at this rink; empty: the program's

	thick   unit.Maybe[unit.Length] // see TakingThickness
	sources map[string]Source       // by path; see Source
}

// Zone is a stretch of boards with a use: no hole where Kind forbids one.
type Zone struct {
	ID   string
	Kind string      // "bench", "penalty-box", "scorekeeper", "gate", "broadcast", "keep-out"
	From unit.Length // station, rising station toward To (may wrap past the perimeter)
	To   unit.Length
	Note string
}

// Light is the survey of the light on the ice.
type Light struct {
	Mains    unit.Maybe[float64] // Hz: 50 or 60
	Readings []Reading
	Upright  unit.Maybe[float64] // the light on upright faces over that on a flat meter, a share
	Colour   unit.Maybe[float64] // of the lamps: correlated colour temperature, kelvin
}

// Reading is one lux reading on the ice.
type Reading struct {
	At     geom.Vec2 // rink frame, metres
	Height unit.Length
	Lux    unit.Illuminance
	Facing Facing
	Colour unit.Maybe[float64] // as [Light.Colour], of the light there
}

// Facing is which way a meter's receptor looks: up, or upright toward a side or an
// end of the rink. The zero value is up.
type Facing string

// Facings lists the ways of a meter, up first.
func Facings() []Facing { return []Facing{"up", "bench", "box", "A", "B"} }

// Upright reports whether the meter stood upright, as a face does.
func (f Facing) Upright() bool { return f != "" && f != Facings()[0] }

// Dispensation records who allowed what a rule forbids.
type Dispensation struct {
	Rule      string   // rule id in the rule set
	Holes     []string // empty means every hole
	By        string
	Reference string
	Date      string // YYYY-MM-DD
	Until     string // its last day, YYYY-MM-DD; "" when it says none
}

// Ended reports whether a dispensation has ended by the arena's day; without a day none has.
func (a Arena) Ended(d Dispensation) bool { return d.Until != "" && a.Day > d.Until }

// Working returns the holes that are not turned off.
func (a Arena) Working() []glass.Hole {
	var out []glass.Hole
	for _, h := range a.Holes {
		if h.State != glass.Off {
			out = append(out, h)
		}
	}
	return out
}

// ZonesSurveyed reports whether the survey tells the zones, be it that there
// are none.
func (a Arena) ZonesSurveyed() bool { return a.NoZones || len(a.Zones) > 0 }

// Hole returns the hole with this id.
func (a Arena) Hole(id string) (glass.Hole, bool) {
	for _, h := range a.Holes {
		if h.ID == id {
			return h, true
		}
	}
	return glass.Hole{}, false
}

// Pane returns the pane with this id.
func (a Arena) Pane(id string) (glass.Pane, bool) {
	for _, p := range a.Panes {
		if p.ID == id {
			return p, true
		}
	}
	return glass.Pane{}, false
}

// PaneAt returns the pane that covers a station.
func (a Arena) PaneAt(s unit.Length) (glass.Pane, bool) {
	per := a.Rink.Perimeter()
	s = a.Rink.Wrap(s)
	for _, p := range a.Panes {
		if (s >= p.From && s <= p.To()) || (s+per >= p.From && s+per <= p.To()) {
			return p, true
		}
	}
	return glass.Pane{}, false
}

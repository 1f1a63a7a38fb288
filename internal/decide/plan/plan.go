// Package plan answers everything about one arena at once: it surveys, proves,
// fits, lights, maps and guards every working hole, and keeps the answers as
// one typed value.
//
//	arena document --+--> rules  findings, verdict
//	                 +--> fit    every hole x every lens: limits
//	kit -------------+--> light  every hole: lux -> ISO by part of the ice
//	                 +--> sight  every hole: share of the ice it can shoot
//	                 +--> puck   every hole: what comes through  } [Maker.Whole]
//	                 '--> choose the best legal set of holes     }
//
// Assumptions and limits are those of the packages it calls; it adds no model
// of its own, only the choice of the lens to recommend (see [Hole.BestFit]).
// Holes that are turned off are left out. What is said of a plan to people, in
// their units, and how it is drawn and encoded, is made above.
package plan

import (
	"slices"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/rink"
)

// Plan is all results for one arena.
type Plan struct {
	Proof
	Holes []Hole
	// Light is the light of the ice as a whole; each hole has its own rows.
	Light light.Report
	Kit   kit.Kit // that it was made with
	Arena arena.Arena
	// Boards where a standard hole may stand, and where the survey lacks a number to say.
	Permitted, Undecided []rules.Interval
	// Remarks say what was left out of the plan, and why.
	Remarks []say.Sentence

	// Guards are what comes through the holes while their covers are out, and
	// Choice the best legal set of holes: nil where they were not asked for, and
	// where a remark says why there are none. See [Maker.Whole].
	Guards []puck.Guard
	Choice *choose.Answer

	// Approval is what became of the revision, as far as whoever asked for the plan
	// knows; its zero value has no record. It is set after the plan is made.
	Approval custody.Approval
}

// Proof is what can be said without looking through a lens: the survey and the
// findings. It is quick, so that a list of arenas can show it for each.
type Proof struct {
	Revision string // SHA-256 of the arena document's bytes, in hexadecimal
	Survey   Survey
	rules.Report
}

// Survey is what the document says of the rink as a whole.
type Survey struct {
	Name, Place                        string
	Units                              unit.System // how people's tables print by default
	Ice                                rink.Dimensions
	Perimeter                          unit.Length
	Area                               float64 // of the ice, square metres
	Panes, Holes, Off, Zones, Readings int     // Holes are the working ones, Off those turned off; Readings are of light
}

// SurveyedHole is one hole as surveyed, where it stands, and its verdict.
type SurveyedHole struct {
	glass.Hole               // its state is told: planned where the document does not say
	Opening    arena.Opening // the way through, with what was assumed of it
	Place      arena.Place   // as people tell it
	At         geom.Vec2     // on the boards' rink face, metres
	Slot       string        // zone of the light table before the hole's own net
	Status     rules.Status  // the worst of the findings that name it; pass for one turned off
}

// Hole is all results for one working hole.
type Hole struct {
	SurveyedHole
	Fits  []LensFit       // every lens in use at each end of its range
	Best  unit.Maybe[int] // which of Fits is recommended; unknown when no lens fits
	Light []light.Row
	Reach IceShare
}

// LensFit is one lens in one hole: bare, landscape, wide open.
type LensFit struct {
	Lens kit.Lens
	fit.Setting
	fit.Limits
	Case fit.Case
	// Framing is the share of the ice, 0 to 1, on which the lens frames a player,
	// zoomed as needed.
	Framing float64
}

// IceShare is the share of the ice that a hole can shoot with some lens.
type IceShare struct {
	Share     float64 // of the ice at puck height, 0 to 1: half of the light at the frame's centre
	FaceShare float64 // of the ice at face height, 0 to 1
	// Whole and WholeFace are the same with the whole frame within one stop; unknown
	// for shapes of hole past the first few.
	Whole, WholeFace unit.Maybe[float64]
	// Blind is the width of the strip along the near boards that is not seen,
	// straight ahead of the hole; BlindMean its mean over the boards near the hole.
	Blind, BlindMean unit.Length
	Assumed          []arena.Assumption // what stood in for lengths that the survey lacks
}

// BestFit returns the fit of the recommended lens; ok is false when no lens fits.
func (h Hole) BestFit() (LensFit, bool) {
	i, ok := h.Best.Get()
	if !ok {
		return LensFit{}, false
	}
	return h.Fits[i], true
}

// IsBest reports whether a row of the hole's fits is the recommended one.
func (h Hole) IsBest(row int) bool { return h.Best == unit.Known(row) }

// SlotLight returns the row of the slot before the hole's own net.
func (h Hole) SlotLight() (light.Row, bool) {
	if i := slices.IndexFunc(h.Light, func(r light.Row) bool { return r.Zone == h.Slot }); i >= 0 {
		return h.Light[i], true
	}
	return light.Row{}, false
}

// Hole returns the hole with this id.
func (p Plan) Hole(id string) (Hole, bool) {
	if i := slices.IndexFunc(p.Holes, func(h Hole) bool { return h.ID == id }); i >= 0 {
		return p.Holes[i], true
	}
	return Hole{}, false
}

// IsOff reports whether the arena has a hole of this id that is turned off.
func (p Plan) IsOff(id string) bool {
	h, ok := p.Arena.Hole(id)
	return ok && h.State == glass.Off
}

// FindingsOf returns the findings that name the hole, broken ones first.
func (p Proof) FindingsOf(hole string) []rules.Finding { return rules.About(hole, p.Findings) }

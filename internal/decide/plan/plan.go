// Package plan answers everything about one arena at once: it surveys, proves,
// fits, lights and maps every working hole, and keeps the answers as one value.
//
//	arena document --+--> rules  findings, verdict
//	                 +--> fit    every hole x every lens: limits
//	kit -------------+--> light  every hole: lux -> ISO by part of the ice
//	                 +--> sight  every hole: share of the ice it can shoot
//	                 '--> chart  plan map, boards strip
//
// Assumptions and limits are those of the packages it calls; it adds no model
// of its own, only the choice of the lens to recommend (see [Hole.Best]).
// Holes that are turned off are left out.
package plan

import (
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/survey/arena"
)

// Plan is all results for one arena.
type Plan struct {
	Proof
	Holes []Hole `json:"holes"`
	// Choice is the best legal set of holes; nil when it was not asked for, and on
	// a rink too small for a game.
	Choice   *choose.Answer `json:"-"`
	Light    Light          `json:"light"`
	Cautions []string       `json:"cautions"`

	// What the drawings show besides.
	arena                arena.Arena
	permitted, undecided []rules.Interval // boards where a standard hole may stand
}

// Proof is what can be said without looking through a lens: the survey and the
// findings. It is quick, so that a list of arenas can show it for each.
type Proof struct {
	Revision string          `json:"revision"` // SHA-256 of the arena document's bytes, in hexadecimal
	Survey   Survey          `json:"survey"`
	RuleSets []string        `json:"rule_sets"`
	Verdict  rules.Status    `json:"verdict"`
	Findings []rules.Finding `json:"-"`     // written with their messages in a reader's units by package wire
	Notes    []string        `json:"notes"` // remarks that change no verdict
}

// Survey is what the document says of the rink as a whole.
type Survey struct {
	Name         string  `json:"name"`
	Place        string  `json:"place"`
	Units        string  `json:"units"` // "metric" or "imperial": how people's tables print
	Length       float64 `json:"length_m"`
	Width        float64 `json:"width_m"`
	CornerRadius float64 `json:"corner_radius_m"`
	Perimeter    float64 `json:"perimeter_m"`
	Area         float64 `json:"ice_area_m2"`
	Panes        int     `json:"panes"`
	Holes        int     `json:"holes"` // working ones
	Off          int     `json:"holes_off"`
	Zones        int     `json:"zones"`
	Readings     int     `json:"light_readings"`
}

// Hole is all results for one working hole.
type Hole struct {
	ID     string `json:"id"`
	Pane   string `json:"pane"`
	Slot   string `json:"slot"`   // zone of the light table before the hole's own net
	State  string `json:"state"`  // "planned" or "cut"
	Corner string `json:"corner"` // "" between the blue lines and on a rink without markings
	// Landmark is the corner's landmark nearest to the hole, "" without one; Offset
	// runs from it along the boards in metres, positive toward centre ice.
	Landmark string  `json:"landmark"`
	Offset   float64 `json:"offset_m"`
	Station  float64 `json:"station_m"`
	Height   float64 `json:"height_m"` // of its centre above the ice
	Width    float64 `json:"hole_width_mm"`
	Tall     float64 `json:"hole_height_mm"`
	Thick    float64 `json:"pane_thickness_mm"` // of the pane; see ThickAssumed
	// ThickAssumed reports that the survey lacks the pane's thickness and Thick is a common one.
	ThickAssumed bool         `json:"pane_thickness_assumed"`
	Status       rules.Status `json:"status"`        // the worst of the findings that name the hole
	Best         string       `json:"best_lens"`     // id in the kit, "" when none fits
	BestFocal    float64      `json:"best_focal_mm"` // at which it is best
	Fits         []LensFit    `json:"fits"`
	Light        []light.Row  `json:"light"`
	Reach        Reach        `json:"reach"`
}

// LensFit is one lens in one hole. Angles are from straight ahead in degrees;
// a null limit means that its mark already fails straight ahead.
type LensFit struct {
	Lens       string   `json:"lens"`
	Name       string   `json:"name"`
	Focal      float64  `json:"focal_mm"`
	Stop       float64  `json:"stop"` // f-number: wide open there
	Fits       bool     `json:"fits"` // the nose can enter the hole
	PanBody    *float64 `json:"pan_body_deg"`
	PanClear   *float64 `json:"pan_clear_deg"`
	PanUsable  *float64 `json:"pan_usable_deg"`
	TiltBody   *float64 `json:"tilt_body_deg"`
	TiltClear  *float64 `json:"tilt_clear_deg"`
	TiltUsable *float64 `json:"tilt_usable_deg"`
	// Framing is the share of the ice, 0 to 1, on which the lens frames a player,
	// zoomed as needed.
	Framing float64 `json:"framing_share"`
}

// Reach is the share of the ice that a hole can shoot with some lens.
type Reach struct {
	Share     float64 `json:"reach_share"`      // of the ice at puck height, 0 to 1
	FaceShare float64 `json:"reach_face_share"` // of the ice at face height, 0 to 1
	// Blind is the width of the strip along the near boards that is not seen,
	// straight ahead of the hole; BlindMean its mean over the boards near the hole.
	Blind     float64  `json:"blind_strip_m"`
	BlindMean float64  `json:"blind_strip_mean_m"`
	Assumed   []string `json:"assumed"` // what stood in for numbers that the survey lacks

	wedge sight.Wedge // outline of the ice that is seen at puck height
}

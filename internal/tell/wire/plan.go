package wire

import (
	"bytes"
	"encoding/json"
	"fmt"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Plan is plan.json.
type Plan struct {
	Proof
	Holes []Hole `json:"holes"`
	// Choice is the best legal set of holes; null when it was not asked for, and
	// on a rink too small for a game.
	Choice   *Choice  `json:"choice"`
	Guard    []Guard  `json:"guard"` // null when it was not asked for, and when the shots cannot be modelled
	Light    Light    `json:"light"`
	Cautions []string `json:"cautions"`
	Remarks  []string `json:"remarks"` // what was left out of the plan, and why
	Approval Approval `json:"approval"`
}

// Proof is the survey and the findings.
type Proof struct {
	Revision string       `json:"revision"` // SHA-256 of the arena document's bytes, in hexadecimal
	Survey   Survey       `json:"survey"`
	RuleSets []string     `json:"rule_sets"`
	Verdict  rules.Status `json:"verdict"`
	Findings []Finding    `json:"findings"`
	Notes    []string     `json:"notes"` // remarks that change no verdict
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
	// runs from it along the boards, positive toward centre ice.
	Landmark     string       `json:"landmark"`
	Offset       float64      `json:"offset_m"`
	Station      float64      `json:"station_m"`
	Height       float64      `json:"height_m"` // of its centre above the ice
	Width        float64      `json:"hole_width_mm"`
	Tall         float64      `json:"hole_height_mm"`
	Thick        float64      `json:"pane_thickness_mm"`
	ThickAssumed bool         `json:"pane_thickness_assumed"` // the survey lacks it; the thickness is a common one
	Status       rules.Status `json:"status"`                 // the worst of the findings that name the hole
	Best         string       `json:"best_lens"`              // id in the kit, "" when none fits
	BestFocal    float64      `json:"best_focal_mm"`          // at which it is best
	Fits         []LensFit    `json:"fits"`
	Light        []LightRow   `json:"light"`
	Reach        IceShare     `json:"reach"`
}

// LensFit is one lens in one hole. Angles are from straight ahead in degrees;
// a null limit means that its mark already fails straight ahead.
type LensFit struct {
	Lens  string  `json:"lens"`
	Name  string  `json:"name"`
	Focal float64 `json:"focal_mm"`
	Stop  float64 `json:"stop"` // f-number: wide open there
	Limits
	Framing float64 `json:"framing_share"` // of the ice, 0 to 1, on which the lens frames a player, zoomed as needed
}

// Limits is how far a lens turns in a hole.
type Limits struct {
	Fits       bool     `json:"fits"` // the nose can enter the hole
	PanBody    *float64 `json:"pan_body_deg"`
	PanCamera  *float64 `json:"pan_camera_deg"` // null also where the kit does not know lens and body
	PanClear   *float64 `json:"pan_clear_deg"`
	PanUsable  *float64 `json:"pan_usable_deg"`
	TiltBody   *float64 `json:"tilt_body_deg"`
	TiltCamera *float64 `json:"tilt_camera_deg"`
	TiltClear  *float64 `json:"tilt_clear_deg"`
	TiltUsable *float64 `json:"tilt_usable_deg"`
}

// IceShare is the share of the ice that a hole can shoot with some lens.
type IceShare struct {
	Share     float64  `json:"reach_share"`       // of the ice at puck height, 0 to 1
	FaceShare float64  `json:"reach_face_share"`  // of the ice at face height, 0 to 1
	Whole     *float64 `json:"reach_whole_share"` // at puck height with the whole frame within one stop; null when not told
	WholeFace *float64 `json:"reach_whole_face_share"`
	Blind     float64  `json:"blind_strip_m"`      // strip along the near boards that is not seen, straight ahead
	BlindMean float64  `json:"blind_strip_mean_m"` // its mean over the boards near the hole
	Assumed   []string `json:"assumed"`            // what stood in for numbers that the survey lacks
}

// Light is the light of the arena as a whole; each hole has its own table.
type Light struct {
	Known       bool           `json:"known"`    // the survey holds readings
	Ice         *ZoneLight     `json:"ice"`      // null when the light is not known
	MainsHz     *float64       `json:"mains_hz"` // null when the survey lacks it; lamps flicker at twice of it
	FlickerSafe []unit.Shutter `json:"flicker_safe_s"`
	Notes       []string       `json:"notes"`
}

// PlanOf encodes a plan, with sentences in the system's units.
func PlanOf(p plan.Plan, sys unit.System) Plan {
	l := LightOf(p.Light, sys)
	out := Plan{
		Proof: ProofOf(p.Proof, sys), Holes: []Hole{}, Guard: GuardsOf(p.Guards, sys), Cautions: glass.Cautions(), Remarks: say.All(p.Remarks, sys),
		Approval: ApprovalOf(p.Approval),
		Light:    Light{l.Known, l.Ice, l.MainsHz, l.FlickerSafe, l.Notes},
	}
	if p.Choice != nil {
		c := ChoiceOf(*p.Choice, sys)
		out.Choice = &c
	}
	for _, h := range p.Holes {
		out.Holes = append(out.Holes, holeOf(h, sys))
	}
	return out
}

// ProofOf encodes a proof.
func ProofOf(p plan.Proof, sys unit.System) Proof {
	return Proof{p.Revision, SurveyOf(p.Survey), p.RuleSets, p.Verdict, Findings(p.Findings, sys), p.Notes}
}

// SurveyOf encodes a survey.
func SurveyOf(s plan.Survey) Survey {
	return Survey{
		s.Name, s.Place, s.Units.String(), s.Ice.Length.Metres(), s.Ice.Width.Metres(), s.Ice.CornerRadius.Metres(),
		s.Perimeter.Metres(), s.Area, s.Panes, s.Holes, s.Off, s.Zones, s.Readings,
	}
}

func holeOf(h plan.Hole, sys unit.System) Hole {
	out := Hole{
		ID: h.ID, Pane: h.Pane, Slot: h.Slot, State: string(h.State),
		Corner: h.Place.Corner.String(), Landmark: string(h.Place.Landmark), Offset: h.Place.Offset.Metres(),
		Station: h.Station.Metres(), Height: h.Height.Metres(), Width: h.Size.W.Millimetres(), Tall: h.Size.H.Millimetres(),
		Thick: h.Opening.Thick.Value.Millimetres(), ThickAssumed: !h.Opening.Thick.Surveyed(), Status: h.Status,
		Fits: fitsOf(h.Fits), Light: rowsOf(h.Light),
		Reach: IceShare{h.Reach.Share, h.Reach.FaceShare, plain(h.Reach.Whole), plain(h.Reach.WholeFace), h.Reach.Blind.Metres(), h.Reach.BlindMean.Metres(), arena.Reasons(h.Reach.Assumed, sys)},
	}
	if best, ok := h.BestFit(); ok {
		out.Best, out.BestFocal = best.Lens.ID, best.Focal.Millimetres()
	}
	return out
}

func fitsOf(fits []plan.LensFit) []LensFit {
	out := make([]LensFit, len(fits))
	for i, f := range fits {
		out[i] = LensFit{f.Lens.ID, f.Lens.Name, f.Focal.Millimetres(), float64(f.Stop), LimitsOf(f.Limits), f.Framing}
	}
	return out
}

// JSON sets a value as the files of a folder have it: indented, UTF-8.
func JSON(v any) ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil {
		return nil, fmt.Errorf("writing JSON: %w", err)
	}
	return b.Bytes(), nil
}

package light

import (
	"errors"
	"fmt"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Report is the light of one arena as seen from its holes.
type Report struct {
	Arena       string  `json:"arena"`
	Readings    int     `json:"readings"`    // of the survey; 0 with a light given by hand
	Known       bool    `json:"known"`       // there is a light to compute with
	Calibration float64 `json:"calibration"` // C of ISO 2720, without unit
	// MainsHz is null when neither survey nor request say it.
	MainsHz      *float64    `json:"mains_hz"`
	FlickerSafeS []float64   `json:"flicker_safe_s"`
	Lens         string      `json:"lens"` // id; "" without one
	Body         string      `json:"body"`
	Ice          *ZoneLight  `json:"ice"` // null when the light is not known
	Zones        []ZoneLight `json:"zones"`
	Holes        []HoleLight `json:"holes"`
	Notes        []string    `json:"notes"`

	// Assumed is what stood in for lengths that the survey lacks.
	Assumed []arena.Assumption `json:"-"`
}

// HoleLight is one hole's table, a row a zone.
type HoleLight struct {
	Hole  string `json:"hole"`
	Zones []Row  `json:"zones"`
}

// Row is one zone as seen from one hole. Its exposure suits the zone's median
// light; Dark and Bright suit its lowest and highest.
type Row struct {
	ZoneLight
	optics.ExposureReport
	Dark       optics.ExposureReport `json:"dark"`
	Bright     optics.ExposureReport `json:"bright"`
	DistanceM  float64               `json:"distance_m"` // from the hole to the zone's middle
	Depth      *DepthRow             `json:"depth"`      // null without a lens
	OverISO    bool                  `json:"over_iso_max"`
	PastStop   bool                  `json:"past_widest_stop"`
	OffFlicker bool                  `json:"off_flicker"` // not a flicker-safe time on known mains
}

// guessShare is the share of a zone outside the readings from which its light is
// called a guess. Own choice.
const guessShare = 0.5

// Guessed reports whether the zone's light is mostly a guess.
func (r Row) Guessed() bool { return r.Extrapolated > guessShare }

// DepthRow is what looks sharp when the lens frames a player in the zone's middle.
type DepthRow struct {
	FocalMM float64  `json:"focal_mm"`
	NearM   float64  `json:"near_m"`
	FarM    *float64 `json:"far_m"` // null at or past the hyperfocal distance
}

// Compute answers a request for an arena. An arena without readings, and no
// light given, is no error: the report then says Known false and why.
func Compute(a arena.Arena, q Request) (Report, error) {
	openings, err := a.Pick(q.Holes)
	if err != nil {
		return Report{}, fmt.Errorf("hole %w", err)
	}
	r := Report{
		Arena: a.Name, Calibration: float64(q.calibration()),
		FlickerSafeS: []float64{}, Zones: []ZoneLight{}, Holes: []HoleLight{}, Notes: []string{},
		Body: q.Body.ID,
	}
	if lens, ok := q.Lens.Get(); ok {
		r.Lens = lens.ID
	}
	if err := r.flicker(a, q); err != nil {
		return Report{}, err
	}
	field, err := q.field(a)
	if errors.Is(err, ErrNoReadings) {
		r.Notes = append(r.Notes, err.Error())
		return r, nil
	}
	if err != nil {
		return Report{}, err
	}
	if !known(q.Uniform) {
		r.Readings = len(a.Light.Readings)
	}
	r.Known = true
	if ice, ok := field.OverIce(a.Rink); ok {
		r.Ice = &ice
	}
	zones := Zones(a.Rink)
	lit := make(map[string]ZoneLight, len(zones))
	for _, z := range zones {
		if zl, ok := field.Over(a.Rink, z); ok {
			lit[z.ID] = zl
			r.Zones = append(r.Zones, zl)
		}
	}
	for _, o := range openings {
		hl, err := tableOf(a, o, zones, lit, q)
		if err != nil {
			return Report{}, err
		}
		r.Holes = append(r.Holes, hl)
		r.Assumed = append(r.Assumed, arena.Assumed(o.Setback)...)
	}
	r.remark(a, q)
	return r, nil
}

func known[T any](m unit.Maybe[T]) bool {
	_, ok := m.Get()
	return ok
}

// mains returns the mains to reckon with: the request's, else the survey's.
func (q Request) mains(a arena.Arena) (float64, bool) {
	if hz, ok := q.Mains.Get(); ok {
		return hz, true
	}
	return a.Light.Mains.Get()
}

func (r *Report) flicker(a arena.Arena, q Request) error {
	hz, ok := q.mains(a)
	if !ok {
		return nil
	}
	safe, err := optics.FlickerSafe(hz)
	if err != nil {
		return err
	}
	r.MainsHz = &hz
	for _, t := range safe {
		r.FlickerSafeS = append(r.FlickerSafeS, t.Seconds())
	}
	return nil
}

// remark says what a reader of the table must know.
func (r *Report) remark(a arena.Arena, q Request) {
	if r.Ice != nil && r.Ice.Extrapolated > 0 && !known(q.Uniform) {
		r.Notes = append(r.Notes, fmt.Sprintf(
			"%.0f %% of the ice lies outside the readings; there the nearest reading's light is taken: measure near the boards",
			100*r.Ice.Extrapolated))
	}
	if r.MainsHz == nil {
		r.Notes = append(r.Notes, "the mains frequency is not known, so no flicker-safe times; add light.mains to the arena")
	}
	if lo, hi, mixed := heights(a); mixed && !known(q.Uniform) {
		r.Notes = append(r.Notes, fmt.Sprintf("readings taken from %s to %s above the ice are used alike",
			lo.Format(a.Units), hi.Format(a.Units)))
	}
}

// heights returns the readings' lowest and highest height, and whether they differ.
func heights(a arena.Arena) (lo, hi unit.Length, mixed bool) {
	for i, p := range a.Light.Readings {
		if i == 0 {
			lo, hi = p.Height, p.Height
		}
		lo, hi = min(lo, p.Height), max(hi, p.Height)
	}
	return lo, hi, hi > lo
}

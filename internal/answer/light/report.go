package light

import (
	"errors"
	"fmt"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Report is the light of one arena as seen from its holes.
type Report struct {
	Arena       string
	Readings    int  // of the survey; 0 with a light given by hand
	Known       bool // there is a light to compute with
	Calibration optics.Calibration
	Mains       unit.Maybe[float64] // Hz; unknown when neither survey nor request say it
	FlickerSafe []unit.Shutter      // shortest first; none without known mains
	Lens        string              // id; "" without one
	Body        string
	Ice         *ZoneLight // nil when the light is not known
	Zones       []ZoneLight
	Holes       []HoleLight
	Notes       []say.Sentence
	Assumed     []arena.Assumption // what stood in for lengths that the survey lacks
}

// HoleLight is one hole's table, a row a zone.
type HoleLight struct {
	Hole  string
	Zones []Row
}

// Row is one zone as seen from one hole. Its exposure suits the zone's median
// light; Dark and Bright suit its lowest and highest.
type Row struct {
	ZoneLight
	optics.Exposure
	Dark, Bright optics.Exposure
	FaceLux      unit.Illuminance // median on upright faces
	Faces        optics.Exposure  // that suits it
	Distance     unit.Length      // from the hole to the zone's middle
	Depth        *Depth           // nil without a lens
	OverISO      bool             // a flat meter's ISO passes the body's limit
	OverISOFaces bool             // the ISO for faces does
	PastStop     bool             // wider than the lens opens
	OffFlicker   bool             // not a flicker-safe time on known mains
}

// guessShare is the share of a zone outside the readings from which its light is
// called a guess. Own choice.
const guessShare = 0.5

// Guessed reports whether the zone's light is mostly a guess.
func (r Row) Guessed() bool { return r.Extrapolated > guessShare }

// Depth is what looks sharp when the lens frames a player in the zone's middle.
type Depth struct {
	Focal unit.Length
	optics.Depth
}

// Lit is the light over an arena's ice, by zone: what all its holes have in
// common, worked out once. Make one with [Over].
type Lit struct {
	known bool // there is a light
	ice   *ZoneLight
	zones []Zone
	lit   map[string]ZoneLight        // of the zones that have ice
	faces map[string]unit.Illuminance // median on upright faces, of the same zones
}

// Over works out the light of an arena's ice from its readings, or of a light
// given by hand. An arena without readings is no error: its light is not known.
func Over(a arena.Arena, uniform unit.Maybe[unit.Illuminance]) (Lit, error) {
	field := (*Field)(nil)
	if lux, ok := uniform.Get(); ok {
		field = Uniform(lux)
	} else {
		var err error
		if field, err = NewField(Survey(a.Light)); errors.Is(err, ErrNoReadings) {
			return Lit{}, nil
		} else if err != nil {
			return Lit{}, err
		}
	}
	l := Lit{known: true, zones: Zones(a.Rink), lit: map[string]ZoneLight{}}
	if ice, ok := field.OverIce(a.Rink); ok {
		l.ice = &ice
	}
	for _, z := range l.zones {
		if zl, ok := field.Over(a.Rink, z); ok {
			l.lit[z.ID] = zl
		}
	}
	var err error
	l.faces, err = facesOver(a, known(uniform), l.zones, l.lit)
	return l, err
}

// Compute answers a request for an arena: [Over], then [Lit.Compute].
func Compute(a arena.Arena, q Request) (Report, error) {
	l, err := Over(a, q.Uniform)
	if err != nil {
		return Report{}, err
	}
	return l.Compute(a, q)
}

// Compute answers a request for the arena whose light it is. Without a light it
// is no error: the report then says Known false and why.
func (l Lit) Compute(a arena.Arena, q Request) (Report, error) {
	openings, err := a.Pick(q.Holes)
	if err != nil {
		return Report{}, fmt.Errorf("hole %w", err)
	}
	r := Report{
		Arena: a.Name, Calibration: q.calibration(), Mains: q.mains(a), Body: q.Body.ID,
	}
	if lens, ok := q.Lens.Get(); ok {
		r.Lens = lens.ID
	}
	if hz, ok := r.Mains.Get(); ok {
		if r.FlickerSafe, err = optics.FlickerSafe(hz); err != nil {
			return Report{}, err
		}
	}
	if r.Known = l.known; !r.Known {
		r.Notes = append(r.Notes, say.Make(ErrNoReadings.Error()))
		return r, nil
	}
	if !known(q.Uniform) {
		r.Readings = len(a.Light.Readings)
	}
	r.Ice = l.ice
	for _, z := range l.zones {
		if zl, ok := l.lit[z.ID]; ok {
			r.Zones = append(r.Zones, zl)
		}
	}
	for _, o := range openings {
		hl, err := tableOf(a, o, l, q)
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

// mains returns the mains to reckon with in Hz: the request's, else the survey's.
func (q Request) mains(a arena.Arena) unit.Maybe[float64] {
	if known(q.Mains) {
		return q.Mains
	}
	return a.Light.Mains
}

// remark says what a reader of the table must know.
func (r *Report) remark(a arena.Arena, q Request) {
	if r.Ice != nil && r.Ice.Extrapolated > 0 && !known(q.Uniform) {
		r.Notes = append(r.Notes, say.Make(
			"%.0f %% of the ice lies outside the readings; there the nearest reading's light is taken: measure near the boards",
			100*r.Ice.Extrapolated))
	}
	if !known(r.Mains) {
		r.Notes = append(r.Notes, say.Make("the mains frequency is not known, so no flicker-safe times; add light.mains to the arena"))
	}
	r.Notes = append(r.Notes, faceNote(a, known(q.Uniform)))
	if lo, hi, mixed := heights(a); mixed && !known(q.Uniform) {
		r.Notes = append(r.Notes, say.Make("readings taken from %s to %s above the ice are used alike", lo, hi))
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

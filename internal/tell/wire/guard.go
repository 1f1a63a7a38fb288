package wire

import (
	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/measure/unit"
)

// Guard is what one hole lets through while its cover is out.
type Guard struct {
	Hole            string       `json:"hole"`
	Pane            string       `json:"pane"`
	Rank            int          `json:"rank"`
	ThickMM         float64      `json:"thick_mm"`
	ThickAssumed    bool         `json:"thick_assumed"`
	Assumed         []Assumption `json:"assumed"`
	FlatWindowMM    [2]float64   `json:"flat_window_mm"`
	FlatLimitDeg    *float64     `json:"flat_limit_deg"`
	AnyLimitDeg     *float64     `json:"any_limit_deg"`
	ShareOfShots    float64      `json:"share_of_shots"`       // of all struck pucks, 0 to 1, those that pass clean
	ShareHigh       float64      `json:"share_of_shots_high"`  // the high bound of it, 0 to 1
	ShareAtPane     *float64     `json:"share_at_pane"`        // of all struck pucks, 0 to 1; null for a low window
	PassesPerHour   float64      `json:"passes_per_hour"`      // number of pucks in an hour open, the low bound
	PerHourHigh     float64      `json:"passes_per_hour_high"` // number of pucks in an hour open, the high bound
	Game            Passes       `json:"game"`
	Practice        Passes       `json:"practice"`
	MeanEnergyJ     float64      `json:"mean_energy_j"`
	GreatestEnergyJ float64      `json:"greatest_energy_j"`
	Sector          *Sector      `json:"sector"` // null when no shot of the model passes
	Reach           []Through    `json:"reach"`
}

// Passes is how many pucks to expect, between a low and a high bound.
type Passes struct {
	PerHour        float64 `json:"passes_per_hour"`
	PerHourHigh    float64 `json:"passes_per_hour_high"` // number of pucks in an hour open, the high bound
	Minutes        float64 `json:"open_minutes"`
	Expected       float64 `json:"expected_passes"`
	ExpectedHigh   float64 `json:"expected_passes_high"`
	AtLeastOne     float64 `json:"probability_of_one_or_more"`
	AtLeastOneHigh float64 `json:"probability_of_one_or_more_high"`
}

// Sector is what is to be kept clear behind a hole.
type Sector struct {
	HalfAngleDeg *float64 `json:"half_angle_deg"`
	FromDeg      float64  `json:"from_deg"`
	ToDeg        float64  `json:"to_deg"`
	TypicalM     float64  `json:"landing_half_m"`
	FarM         float64  `json:"landing_95_percent_m"`
	FarthestM    float64  `json:"landing_farthest_m"`
	// ClearM is how far off the glass From and To are to be kept clear: past each of the three
	// a puck comes once in GamesClear games with the cover out at most.
	ClearM     float64 `json:"clear_m"`
	GamesClear float64 `json:"clear_games"` // number of games
	// Rows behind the glass, counted from 1, and how far the sector reaches to either side.
	FirstRowM float64 `json:"first_row_m"`
	RowDeepM  float64 `json:"row_depth_m"`
	TypicalIn int     `json:"rows_half"`
	FarIn     int     `json:"rows_95_percent"`
	LastIn    int     `json:"rows_farthest"`
	ClearIn   int     `json:"rows_clear"`
	LeftM     float64 `json:"aside_left_m"`  // as one faces the ice
	RightM    float64 `json:"aside_right_m"` // as one faces the ice
}

// Together is in how many games one puck comes through any hole; null when none ever does.
type Together struct {
	Middle float64 `json:"games_per_puck"`       // number of games, the geometric mean of the two below
	Often  float64 `json:"games_per_puck_least"` // number of games, by the high counts
	Seldom float64 `json:"games_per_puck_most"`  // number of games, by the low counts
}

// TogetherOf encodes how often a puck comes through any of the holes.
func TogetherOf(guards []puck.Guard) *Together {
	g, ok := puck.Together(guards)
	if !ok {
		return nil
	}
	return &Together{g.Middle, g.Often, g.Seldom}
}

// Through is how far an elbow or a stick reaches through a hole.
type Through struct {
	What     string   `json:"what"`
	Passes   bool     `json:"passes"`
	PastMM   float64  `json:"past_mm"`
	LimitDeg *float64 `json:"limit_deg"`
	Toward   string   `json:"toward"`
}

// GuardsOf encodes the guards of an arena's holes; without any it is null.
// Sentences are set in the system's units.
func GuardsOf(guards []puck.Guard, sys unit.System) []Guard {
	if guards == nil {
		return nil
	}
	rank := make(map[string]int, len(guards))
	for i, g := range puck.Rank(guards) {
		rank[g.Hole] = i + 1
	}
	out := make([]Guard, len(guards))
	for i, g := range guards {
		out[i] = Guard{
			Hole: g.Hole, Pane: g.Pane, Rank: rank[g.Hole],
			ThickMM: g.Opening.Thick().Millimetres(), ThickAssumed: g.ThickAssumed, Assumed: Assumed(g.Assumed, sys),
			FlatWindowMM: [2]float64{g.FlatWindow.W.Millimetres(), g.FlatWindow.H.Millimetres()},
			FlatLimitDeg: Degrees(g.FlatLimit), AnyLimitDeg: Degrees(g.AnyLimit),
			ShareOfShots: g.ShareOfShots, ShareHigh: g.ShareHigh, ShareAtPane: plain(g.ShareAtPane),
			PassesPerHour: g.Game.PerHour, PerHourHigh: g.Game.PerHourHigh,
			Game: Passes(g.Game), Practice: Passes(g.Practice), MeanEnergyJ: g.MeanJ, GreatestEnergyJ: g.MostJ,
			Sector: sectorOf(g), Reach: throughOf(g.Reach),
		}
	}
	return out
}

func sectorOf(g puck.Guard) *Sector {
	s, seats := g.Sector, g.Seating
	if !s.Passing {
		return nil
	}
	left, right := s.Aside()
	return &Sector{
		Degrees(s.HalfAngle), s.From.Degrees(), s.To.Degrees(), s.Typical.Metres(), s.Far.Metres(), s.Farthest.Metres(),
		s.Clear.Metres(), puck.GamesClear,
		seats.First.Metres(), seats.Deep.Metres(), seats.Row(s.Typical), seats.Row(s.Far), seats.Row(s.Farthest), seats.Row(s.Clear),
		left.Metres(), right.Metres(),
	}
}

func throughOf(reach []puck.Protrusion) []Through {
	out := make([]Through, len(reach))
	for i, r := range reach {
		out[i] = Through{r.What, r.Passes, r.Past.Millimetres(), Degrees(r.Limit), r.Toward}
	}
	return out
}

// LimitsOf encodes how far a lens turns.
func LimitsOf(l fit.Limits) Limits {
	return Limits{
		l.Fits, Degrees(l.Pan.Body), Degrees(l.Pan.Camera), Degrees(l.Pan.Clear), Degrees(l.Pan.Usable),
		Degrees(l.Tilt.Body), Degrees(l.Tilt.Camera), Degrees(l.Tilt.Clear), Degrees(l.Tilt.Usable),
	}
}

// Degrees is an angle in degrees, null when there is none.
func Degrees(a unit.Maybe[unit.Angle]) *float64 {
	v, ok := a.Get()
	if !ok {
		return nil
	}
	d := v.Degrees()
	return &d
}

// plain is null where a number does not exist.
func plain(m unit.Maybe[float64]) *float64 {
	v, ok := m.Get()
	if !ok {
		return nil
	}
	return &v
}

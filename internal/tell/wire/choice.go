package wire

import (
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// Choice is an answer of choose as JSON: the contract's names. Ids of new places
// stay the same whatever the units; sentences are set in a system's units.
type Choice struct {
	Status       string         `json:"status"`
	Value        float64        `json:"value"` // without unit
	Bound        float64        `json:"bound"` // without unit
	Gap          float64        `json:"gap"`   // share of the bound, from 0 to 1
	Holes        []ChosenHole   `json:"holes"`
	People       *int           `json:"people"` // holes worked at once at most; null for all
	Person       *ChoicePerson  `json:"person"` // who works, where heights were tried; null else
	Crews        []ChoiceCrew   `json:"crews"`  // who works when; empty where all do
	Seconds      float64        `json:"seconds"`
	Candidates   int            `json:"candidates"`
	Moments      int            `json:"moments"`
	Seed         uint64         `json:"seed"`
	Margin       float64        `json:"value_margin"` // half the 95 % interval of value over all moments, without unit
	Others       OtherSamples   `json:"other_samples"`
	Costs        ChoiceCosts    `json:"costs"`
	Ladder       []ChoiceStep   `json:"ladder"`         // by new_cuts; a step may give holes up
	Keeping      []ChoiceStep   `json:"ladder_keeping"` // the steps that keep all that is cut, where they differ
	Frontier     []ChoiceStep   `json:"frontier"`       // by cost
	Alternatives []ChoiceOption `json:"alternatives"`
	Prices       []ChoicePrice  `json:"prices"`
	Today        ChoiceStanding `json:"today"`
	Drawn        ChoiceStanding `json:"drawn"`
	Excluded     []ChoiceCause  `json:"excluded"`
	Clash        []string       `json:"clash"`
	Unfinished   []string       `json:"unfinished"`
	Nodes        int            `json:"nodes"`
	Cuts         int            `json:"cuts"`
	RuleSets     []string       `json:"rule_sets"` // that the sets were proved to keep
}

// ChosenPlace is a hole of a set.
type ChosenPlace struct {
	ID       string  `json:"id"`
	Pane     string  `json:"pane"`
	Corner   string  `json:"corner"` // "" between the blue lines and on a rink without markings
	State    string  `json:"state"`  // "cut", "planned" or "new"
	Station  float64 `json:"station_m"`
	Height   float64 `json:"height_m"` // of its centre above the ice
	X        float64 `json:"x_m"`
	Y        float64 `json:"y_m"`
	Landmark string  `json:"landmark"` // "" without one
	Offset   float64 `json:"offset_m"` // from the landmark, positive toward centre ice
	Wide     float64 `json:"hole_width_mm"`
	Tall     float64 `json:"hole_height_mm"`
}

// ChosenHole is a hole of the best set and what it is good for.
type ChosenHole struct {
	ChosenPlace
	Worth float64  `json:"worth"`           // without unit
	Loss  *float64 `json:"loss"`            // without unit; null when it was not asked for
	Best  float64  `json:"best_view_share"` // from 0 to 1
	Only  float64  `json:"only_view_share"` // from 0 to 1
	From  float64  `json:"seen_from_score"` // from which only_view_share counts a moment as seen, 0 to 1
	Why   string   `json:"why"`
	// AsGood are the ids of the places along the boards that may stand for it.
	AsGood []string `json:"as_good"`
}

// ChoicePerson is who works at the holes, and at what heights of their centres.
type ChoicePerson struct {
	Posture      string  `json:"posture"`        // "standing", "sitting", "wheelchair"
	Eye          float64 `json:"eye_m"`          // above the floor
	Floor        float64 `json:"floor_m"`        // above the ice
	FloorAssumed bool    `json:"floor_assumed"`  // nobody surveyed it
	Best         float64 `json:"height_m"`       // at ease, above the ice
	Low          float64 `json:"height_least_m"` // that can be worked
	High         float64 `json:"height_most_m"`  // that can be worked
}

func choicePerson(w choose.Working) *ChoicePerson {
	return &ChoicePerson{string(w.Posture), w.Eye.Metres(), w.Floor.Metres(), w.FloorAssumed, w.Best.Metres(), w.Low.Metres(), w.High.Metres()}
}

// ChoiceCrew is who of a set works in a phase of play.
type ChoiceCrew struct {
	Phase string   `json:"phase"`
	Share float64  `json:"news_share"` // of the news that the phase is, from 0 to 1
	Value float64  `json:"value"`      // that the crew adds, without unit
	Holes []string `json:"holes"`
}

func choiceCrew(c choose.Crew) ChoiceCrew {
	return ChoiceCrew{c.Phase.String(), c.Share, c.Value, Each(c.Holes, id)}
}

func id(c choose.Candidate) string { return c.Hole.ID }

// ChoiceOption is another set.
type ChoiceOption struct {
	Value  float64       `json:"value"`       // without unit
	Bound  float64       `json:"bound"`       // without unit
	Lost   float64       `json:"lost"`        // without unit
	Margin float64       `json:"lost_margin"` // half the 95 % interval of lost over all moments, without unit
	Holes  []ChosenPlace `json:"holes"`
}

// OtherSamples is what other samples of moments say of the best set.
type OtherSamples struct {
	Number int     `json:"n"`
	Low    float64 `json:"value_low"`  // without unit
	High   float64 `json:"value_high"` // without unit
	Regret float64 `json:"regret"`     // the most by which another set is better in one of them, without unit
}

// ChoiceCosts says what the steps' money is.
type ChoiceCosts struct {
	Currency string   `json:"currency"`
	Invented bool     `json:"invented"` // the shipped numbers, which nobody quoted
	Silent   []string `json:"left_out"` // what the user's file leaves out and so costs nothing
}

// ChoiceStep is the best set that cuts at most so many panes newly, or that costs
// at most so much.
type ChoiceStep struct {
	Kind    string   `json:"kind"` // "today", "keep all", "give up", "spend"
	NewCuts int      `json:"new_cuts"`
	Kept    []string `json:"kept"`
	Cut     []string `json:"cut"`
	GivenUp []string `json:"given_up"`
	Value   float64  `json:"value"`                 // without unit
	Bound   float64  `json:"bound"`                 // without unit
	Share   float64  `json:"share"`                 // of the best set's value
	Alike   *float64 `json:"value_of_best_as_many"` // without unit; null when it was not asked for
	Cost    int      `json:"cost"`                  // in the currency of costs
	Panes   int      `json:"panes_to_buy"`
	Days    float64  `json:"days_closed"` // in units of a day of work
	Proved  bool     `json:"proved"`

	Crews []ChoiceCrew `json:"crews"`
}

func choiceStep(a choose.Answer, s choose.Step) ChoiceStep {
	out := ChoiceStep{
		Kind: string(s.Kind), NewCuts: s.NewCuts, Kept: Each(s.Kept(), id), Cut: Each(s.Cut(), id), GivenUp: Each(s.GivenUp, id),
		Value: s.Value, Bound: s.Bound, Cost: int(s.Bill.Money), Panes: s.Bill.Panes, Days: a.Costs.Days(s.Bill), Proved: s.Proved,
		Crews: Each(s.Crews, choiceCrew),
	}
	if a.Value > 0 {
		out.Share = s.Value / a.Value
	}
	if s.Alike > 0 {
		out.Alike = &s.Alike
	}
	return out
}

// ChoicePrice is what a constraint costs.
type ChoicePrice struct {
	Rule  string   `json:"rule"`
	Value float64  `json:"value"` // without unit
	Bound float64  `json:"bound"` // without unit
	Gain  float64  `json:"gain"`  // without unit
	Holes []string `json:"holes"`
}

// ChoiceStanding is the value of holes that are there or drawn.
type ChoiceStanding struct {
	Value   float64  `json:"value"` // without unit
	Holes   []string `json:"holes"`
	Verdict string   `json:"verdict"`
}

// ChoiceCause is why panes hold no candidate.
type ChoiceCause struct {
	Cause string   `json:"cause"`
	Count int      `json:"count"` // panes
	Panes []string `json:"panes"`
}

// ChoiceOf encodes an answer of choose.
func ChoiceOf(a choose.Answer, sys unit.System) Choice {
	out := Choice{
		Status: string(a.Status), Value: a.Value, Bound: a.Bound, Gap: a.Gap(), Seconds: a.Took.Seconds(),
		Candidates: a.Candidates, Moments: a.Moments, Seed: a.Seed, Today: standing(a.Today), Drawn: standing(a.Drawn),
		Clash: some(say.All(a.Clash, sys)), Unfinished: some(a.Unfinished), Nodes: a.Nodes, Cuts: a.Cuts, RuleSets: a.Sets.IDs(),
	}
	out.Holes = Each(a.Holes, func(h choose.Choice) ChosenHole {
		return ChosenHole{chosenPlace(h.Candidate), h.Worth, plain(h.Loss), h.Best, h.Only, choose.SeenFrom, h.Why.In(sys), Each(h.AsGood, id)}
	})
	if a.People > 0 {
		out.People = &a.People
	}
	if w, ok := a.Working.Get(); ok {
		out.Person = choicePerson(w)
	}
	out.Crews = Each(a.Crews, choiceCrew)
	out.Margin, out.Others = a.Margin, OtherSamples(a.Others)
	out.Costs = ChoiceCosts{a.Costs.Currency, a.Costs.Invented, some(a.Costs.Silent)}
	step := func(s choose.Step) ChoiceStep { return choiceStep(a, s) }
	var free, keeping []choose.Step
	for k, s := range a.Ladder {
		if s.Kind == choose.KeepStep && k+1 < len(a.Ladder) && a.Ladder[k+1].NewCuts == s.NewCuts {
			keeping = append(keeping, s)
		} else {
			free = append(free, s)
		}
	}
	out.Ladder, out.Keeping, out.Frontier = Each(free, step), Each(keeping, step), Each(a.Frontier, step)
	out.Alternatives = Each(a.Alternatives, func(o choose.Option) ChoiceOption {
		return ChoiceOption{o.Value, o.Bound, o.Lost, o.Margin, Each(o.Holes, chosenPlace)}
	})
	out.Prices = Each(a.Prices, func(p choose.Price) ChoicePrice {
		return ChoicePrice{p.Rule, p.Value, p.Bound, p.Gain, Each(p.Holes, id)}
	})
	out.Excluded = Each(a.Excluded, func(c choose.Cause) ChoiceCause { return ChoiceCause{c.Cause, len(c.Panes), c.Panes} })
	return out
}

func chosenPlace(c choose.Candidate) ChosenPlace {
	h, at := c.Hole, c.At()
	return ChosenPlace{
		ID: h.ID, Pane: h.Pane, Corner: c.Corner(), State: c.State(), Station: h.Station.Metres(), Height: h.Height.Metres(), X: at.X, Y: at.Y,
		Landmark: string(c.Place.Landmark), Offset: c.Place.Offset.Metres(), Wide: h.Size.W.Millimetres(), Tall: h.Size.H.Millimetres(),
	}
}

func standing(s choose.Standing) ChoiceStanding {
	return ChoiceStanding{s.Value, some(s.Holes), string(s.Verdict)}
}

// Each encodes a list one by one; an empty one is [], not null.
func Each[T, J any](list []T, encode func(T) J) []J {
	out := make([]J, len(list))
	for i, v := range list {
		out[i] = encode(v)
	}
	return out
}

func some(list []string) []string { return Each(list, func(s string) string { return s }) }

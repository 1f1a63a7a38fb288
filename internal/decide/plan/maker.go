package plan

import (
	"context"
	"errors"

	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

// Maker makes plans with one kit under one combination of rule sets. It may be
// used by many at once.
type Maker struct {
	Kit   kit.Kit
	Rules rules.Sets
}

// Prove surveys and checks an arena. Errors are those of [arena.Document.Check].
func (m Maker) Prove(doc *arena.Document) (Proof, error) {
	a, err := doc.Check()
	if err != nil {
		return Proof{}, err
	}
	return m.prove(doc, a), nil
}

func (m Maker) prove(doc *arena.Document, a arena.Arena) Proof {
	return Proof{arena.Revision(doc.Bytes()), survey(a), m.Rules.Check(a)}
}

// Arena returns the arena of a document as it can be planned with the kit:
// lenses that the kit does not know are left out, each with a remark. Errors are
// those of [arena.Document.Check], and a kit without a body or a lens.
func (m Maker) Arena(doc *arena.Document) (arena.Arena, []say.Sentence, error) {
	a, err := doc.Check()
	if err != nil {
		return arena.Arena{}, nil, err
	}
	switch {
	case len(m.Kit.Bodies) == 0:
		return arena.Arena{}, nil, errors.New("kit: a plan needs at least one body")
	case len(m.Kit.Lenses) == 0:
		return arena.Arena{}, nil, errors.New("lenses: the kit has none; add one to it")
	}
	var known []string
	var remarks []say.Sentence
	for _, id := range a.Lenses {
		if _, ok := m.Kit.Lens(id); ok {
			known = append(known, id)
			continue
		}
		remarks = append(remarks, say.Make("Left out: %s. Take it off the arena's list of lenses, or add it to the kit (--kit FILE).", m.Kit.Lacking(id)))
	}
	if len(a.Lenses) > 0 && len(known) == 0 {
		remarks = append(remarks, say.Make("The kit knows none of the arena's lenses: the plan shows every lens of the kit instead."))
	}
	a.Lenses = known
	return a, remarks, nil
}

// Make plans every working hole of an arena. It ends early with ctx's error
// when ctx ends. Other errors are those of [Maker.Arena].
func (m Maker) Make(ctx context.Context, doc *arena.Document) (Plan, error) {
	a, remarks, err := m.Arena(doc)
	if err != nil {
		return Plan{}, err
	}
	p := Plan{Proof: m.prove(doc, a), Holes: []Hole{}, Kit: m.Kit, Arena: a, Remarks: remarks}
	p.Permitted, p.Undecided = m.Rules.On(a).Permitted()
	for _, h := range a.Working() {
		p.Holes = append(p.Holes, Hole{SurveyedHole: p.mark(a, h)})
	}
	for _, step := range []func(context.Context, kit.Kit) error{p.fits, p.reaches, p.lights} {
		if err := step(ctx, m.Kit); err != nil {
			return Plan{}, err
		}
	}
	return p, nil
}

// Whole adds to a plan of Make what takes longer: the guard of every hole and,
// where it is asked for, the best legal set of holes. A rink on which no game
// can be played has neither, which a remark says. Errors are ctx's, and those
// of [choose.ForArena].
func (m Maker) Whole(ctx context.Context, p Plan, choice bool) (Plan, error) {
	var err error
	p.Remarks = p.Remarks[:len(p.Remarks):len(p.Remarks)] // p may be shared
	if p.Guards, err = puck.Assess(ctx, p.Arena, puck.DefaultOptions()); err != nil {
		p.Guards = nil
		p.Remarks = append(p.Remarks, say.Make("There is no guard of the holes: %s.", err))
	}
	if err := ctx.Err(); err != nil || !choice {
		return p, err
	}
	opt := choose.FolderOptions()
	opt.Tell = func(r choose.Report) { cores.Tell(ctx, r.Stage, r.Share) }
	c, err := choose.ForArena(ctx, p.Arena, m.Rules, m.Kit, opt)
	switch {
	case errors.Is(err, play.ErrSmall):
		p.Remarks = append(p.Remarks, say.Make("There is no choice of holes: %s.", play.ErrSmall))
	case err != nil:
		return Plan{}, err
	default:
		p.Choice = &c
	}
	return p, nil
}

// survey counts and measures what the document holds.
func survey(a arena.Arena) Survey {
	working := len(a.Working())
	return Survey{
		Name: a.Name, Place: a.Place, Units: a.Units, Ice: a.Rink.Dimensions(), Perimeter: a.Rink.Perimeter(), Area: a.Rink.Area(),
		Panes: len(a.Panes), Holes: working, Off: len(a.Holes) - working, Zones: len(a.Zones), Readings: len(a.Light.Readings),
	}
}

// mark fills in what the survey says of a hole and what the findings make of it.
func (p Proof) mark(a arena.Arena, h glass.Hole) SurveyedHole {
	m := SurveyedHole{Hole: h, Place: a.PlaceOf(h.Station), At: a.Rink.Point(h.Station), Slot: nearSlot(a.Rink, h.Station), Status: rules.Pass}
	m.Opening, _ = a.OpeningOf(h) // a checked hole lies in a pane
	if h.State == "" {
		m.State = glass.Planned
	}
	if h.State != glass.Off {
		m.Status = rules.Verdict(p.FindingsOf(h.ID))
	}
	return m
}

// nearSlot returns the zone of the light table that lies before the net of the
// station's own end.
func nearSlot(r rink.Rink, station unit.Length) string {
	if r.Point(station).X < 0 {
		return "slot-A"
	}
	return "slot-B"
}

package plan

import (
	"context"
	"errors"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
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
	report := m.Rules.Check(a)
	return Proof{
		Revision: arena.Revision(doc.Bytes()),
		Survey:   survey(a),
		RuleSets: report.RuleSets,
		Verdict:  report.Verdict,
		Findings: report.Findings,
		Notes:    report.Notes,
	}
}

// Make plans every working hole of an arena. It ends early with ctx's error
// when ctx ends. Errors are those of [arena.Document.Check] and a kit without a
// body or without the lenses that the arena names.
func (m Maker) Make(ctx context.Context, doc *arena.Document) (Plan, error) {
	a, err := doc.Check()
	if err != nil {
		return Plan{}, err
	}
	lenses, err := m.lenses(a)
	if err != nil {
		return Plan{}, err
	}
	p := Plan{
		Proof: m.prove(doc, a), Holes: []Hole{}, Cautions: Cautions(),
		arena: a, permitted: m.Rules.Permitted(a), undecided: m.Rules.Undecided(a),
	}
	for _, h := range a.Working() {
		p.Holes = append(p.Holes, p.place(a, h))
	}
	if err := p.fits(ctx, m.Kit, lenses); err != nil {
		return Plan{}, err
	}
	if err := p.reaches(ctx, m.Kit); err != nil {
		return Plan{}, err
	}
	if err := p.lights(m.Kit); err != nil {
		return Plan{}, err
	}
	return p, nil
}

// lenses returns the lenses in use at an arena.
func (m Maker) lenses(a arena.Arena) ([]kit.Lens, error) {
	if len(m.Kit.Bodies) == 0 {
		return nil, errors.New("kit: a plan needs at least one body")
	}
	return m.Kit.InUse(a.Lenses)
}

// survey counts and measures what the document holds.
func survey(a arena.Arena) Survey {
	d := a.Rink.Dimensions()
	working := len(a.Working())
	return Survey{
		Name: a.Name, Place: a.Place, Units: a.Units.String(),
		Length: d.Length.Metres(), Width: d.Width.Metres(), CornerRadius: d.CornerRadius.Metres(),
		Perimeter: a.Rink.Perimeter().Metres(), Area: a.Rink.Area(),
		Panes: len(a.Panes), Holes: working, Off: len(a.Holes) - working,
		Zones: len(a.Zones), Readings: len(a.Light.Readings),
	}
}

// place fills in what the survey says of a hole and what the findings make of it.
func (p Plan) place(a arena.Arena, h glass.Hole) Hole {
	landmark, offset := nearestLandmark(a.Rink, h.Station)
	out := Hole{
		ID: h.ID, Pane: h.Pane, State: string(stateOf(h)),
		Corner: a.Rink.Corner(h.Station).String(), Landmark: string(landmark), Offset: offset.Metres(),
		Station: h.Station.Metres(), Height: h.Height.Metres(),
		Width: h.Size.W.Millimetres(), Tall: h.Size.H.Millimetres(),
		Slot:   nearSlot(a.Rink, h.Station),
		Status: rules.Verdict(p.FindingsOf(h.ID)),
		Fits:   []LensFit{}, Light: []light.Row{},
	}
	o, _ := a.OpeningOf(h) // a checked hole lies in a pane
	out.Thick, out.ThickAssumed = o.Thick.Value.Millimetres(), !o.Thick.Surveyed()
	return out
}

// stateOf returns a hole's state, planned where the document does not say.
func stateOf(h glass.Hole) glass.State {
	if h.State == "" {
		return glass.Planned
	}
	return h.State
}

package plan

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Choice is the best legal set of holes for an arena, with what its drawing needs.
type Choice struct {
	choose.Answer
	arena     arena.Arena // the chosen holes in place of its own
	permitted []rules.Interval
	undecided []rules.Interval
}

// ChoiceOptions returns the options for a plan's folder: fewer moments and a
// wider step than the command choose takes, no prices, and a search that ends
// after a number of nodes, not a time, so that the folder is the same on every
// machine.
func ChoiceOptions() choose.Options {
	o := choose.DefaultOptions()
	o.Moments, o.Step, o.Alternatives, o.Plain, o.Nodes = 4000, 300*unit.Millimetre, 2, true, 200
	return o
}

// Choose chooses the best legal holes of an arena, and tells of each candidate
// the ways of [choose.ForArena]. Errors are those of [arena.Document.Check] and
// [choose.Prepare].
func (m Maker) Choose(ctx context.Context, doc *arena.Document, opt choose.Options) (Choice, error) {
	a, err := doc.Check()
	if err != nil {
		return Choice{}, err
	}
	s, err := choose.Prepare(ctx, a, m.Rules, m.Kit, opt)
	if err != nil {
		return Choice{}, err
	}
	return m.Chosen(a, s, s.Answer(ctx))
}

// Chosen makes a choice of a study's answer.
func (m Maker) Chosen(a arena.Arena, s *choose.Study, ans choose.Answer) (Choice, error) {
	c := Choice{Answer: ans, arena: a, permitted: m.Rules.Permitted(a), undecided: m.Rules.Undecided(a)}
	c.arena.Holes = nil
	for _, h := range ans.Holes {
		hole, err := s.Hole(h.ID)
		if err != nil {
			return Choice{}, err
		}
		c.arena.Holes = append(c.arena.Holes, hole)
	}
	return c, nil
}

// Chart returns what the drawing of the choice shows: the chosen holes, and
// the places that the next best sets use instead.
func (c Choice) Chart(sys unit.System) chart.Plan {
	p := chart.Plan{
		Arena: c.arena, Permitted: c.permitted, Undecided: c.undecided,
		Status: map[string]rules.Status{}, Notes: map[string]string{},
	}
	p.Arena.Units = sys
	p.Arena.Name = "The best legal holes of " + p.Arena.Name
	seen := map[string]bool{}
	for _, h := range c.Holes {
		p.Status[h.ID], seen[h.ID] = rules.Pass, true
		p.Notes[h.ID] = fmt.Sprintf("best view of %.0f %%", 100*h.Best)
	}
	for _, alt := range c.Alternatives {
		for _, h := range alt.Holes {
			if !seen[h.ID] {
				seen[h.ID] = true
				p.Others = append(p.Others, chart.Spot{Label: h.ID, Station: unit.Length(h.Station)})
			}
		}
	}
	return p
}

// Files returns the choice's part of a plan's folder.
func (c Choice) Files(sys unit.System) ([]File, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetIndent("", "  ")
	enc.SetEscapeHTML(false)
	if err := enc.Encode(c.Answer); err != nil {
		return nil, fmt.Errorf("choice as JSON: %w", err)
	}
	return []File{
		{"choice-map.svg", sheet.SVG(chart.PlanMap(c.Chart(sys), mapWidth))},
		{"choice.txt", []byte(c.Text(sys))},
		{"choice.json", b.Bytes()},
	}, nil
}

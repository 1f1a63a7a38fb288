// Package league answers: what do the arenas of a league ask for, beside one another,
// what does a rule set cost all of them together, and what do their seasons and games
// come to?
//
//	Question   one arena with its rules and kit, as texts: any machine may answer it
//	   |  Choose: check and choose
//	Answer     verdict, value, holes, what to cut
//	   |
//	Row        the answer beside the arena, under the league's rules and others'
//	   '-- Total over all rows
//
//	Season --Play--> Played    all games of a season seated, as command seat has them
//	Look   --Ask---> Looked    the frames of one game, as command recap has them
//
// A value is without unit, as package choose has it: 1 sees every moment once. The
// league's value is the sum over its arenas: each arena's games count alike. A rule
// set's price is the sum under the other rule set less that under this one, over the
// arenas that have both.
package league

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// Document is a text and the name that messages give it. An empty text stands for one
// that the program carries under that name.
type Document struct{ Name, Text string }

// Question is what is asked about one arena.
type Question struct {
	Arena   Document
	Rules   []Document // in force together
	Kit     Document
	Day     string // YYYY-MM-DD, on which it is asked
	Moments int    // of a game that are looked at; 0: as for a plan's folder
}

// Open reads the documents. Errors name the document, the line and the field.
func (q Question) Open() (*arena.Document, plan.Maker, error) {
	doc, err := arena.Read(q.Arena.Name, strings.NewReader(q.Arena.Text))
	if err != nil {
		return nil, plan.Maker{}, err
	}
	var m plan.Maker
	if m.Rules, err = inForce(q.Rules); err != nil {
		return nil, m, err
	}
	m.Kit, err = kit.Default()
	if q.Kit.Text != "" {
		m.Kit, err = kit.Read(q.Kit.Name, strings.NewReader(q.Kit.Text))
	}
	return doc.For(q.Day), m, err
}

// inForce reads rule sets that are in force together.
func inForce(docs []Document) (rules.Sets, error) {
	var sets []rules.Set
	for _, r := range docs {
		set, err := rules.Shipped(r.Name)
		if r.Text != "" {
			set, err = rules.Read(r.Name, strings.NewReader(r.Text))
		}
		if err != nil {
			return rules.Sets{}, err
		}
		sets = append(sets, set)
	}
	return rules.InForce(sets...)
}

// Answer is what one arena is worth under its rules, and what to cut for it.
type Answer struct {
	Verdict        rules.Status
	Fails, Unknown int      // findings
	Broken         []string // ids of the rules that fail or cannot be answered, each once
	Today          float64  // value of what is cut, without unit
	TodayHoles     int
	Value, Bound   float64 // of the best set; no set is worth more than the bound; without unit
	Holes          []Hole  // of the best set, in station order
	GivenUp        []glass.Hole
	Bill           cost.Bill // of the step from what is cut to the best set
	Currency       string
	Without        string // why there is no set, "" where there is one
}

// Hole is a hole of the best set.
type Hole struct {
	glass.Hole
	Worth float64 // value lost without it, without unit
	New   bool    // not in the arena's document
}

// Cut reports that the hole is there already.
func (h Hole) Cut() bool { return !h.New && h.State == glass.Cut }

// Choose checks the arena and chooses its best legal set. Progress is told by
// [cores.Tell]. Errors are those of Open and of [choose.ForArena].
func (q Question) Choose(ctx context.Context) (Answer, error) {
	doc, m, err := q.Open()
	if err != nil {
		return Answer{}, err
	}
	a, _, err := m.Arena(doc)
	if err != nil {
		return Answer{}, err
	}
	rep := m.Rules.Check(a)
	out := Answer{Verdict: rep.Verdict, TodayHoles: cutHoles(a)}
	for _, f := range rep.Findings {
		switch f.Status {
		case rules.Fail:
			out.Fails++
		case rules.Unknown:
			out.Unknown++
		default:
			continue
		}
		if !slices.Contains(out.Broken, f.Rule) {
			out.Broken = append(out.Broken, f.Rule)
		}
	}
	opt := choose.FolderOptions()
	if q.Moments > 0 {
		opt.Moments = q.Moments
	}
	opt.Tell = func(r choose.Report) { cores.Tell(ctx, r.Stage, r.Share) }
	c, err := choose.ForArena(ctx, a, m.Rules, m.Kit, opt)
	switch {
	case errors.Is(err, play.ErrSmall):
		out.Without = play.ErrSmall.Error()
		return out, nil
	case err != nil:
		return out, err
	case ctx.Err() != nil: // half a search is no answer that is kept
		return out, ctx.Err()
	}
	out.chosen(c)
	return out, nil
}

// chosen takes over what a choice says.
func (a *Answer) chosen(c choose.Answer) {
	a.Today, a.Value, a.Bound, a.Currency = c.Today.Value, c.Value, c.Bound, c.Costs.Currency
	if len(c.Holes) == 0 {
		a.Without = fmt.Sprintf("no set of holes keeps the rules (%d candidate places)", c.Candidates)
		a.Value, a.Bound = 0, 0
		return
	}
	for _, h := range c.Holes {
		a.Holes = append(a.Holes, Hole{h.Hole, h.Worth, h.New})
	}
	best := -1
	for i, s := range c.Ladder {
		if best < 0 || s.Value > c.Ladder[best].Value {
			best = i
		}
	}
	if best >= 0 {
		a.Bill = c.Ladder[best].Bill
	}
	for _, h := range c.Arena.Holes {
		if h.State == glass.Cut && !a.has(h.ID) {
			a.GivenUp = append(a.GivenUp, h)
		}
	}
}

func (a Answer) has(id string) bool {
	return slices.ContainsFunc(a.Holes, func(h Hole) bool { return h.ID == id })
}

func cutHoles(a arena.Arena) (n int) {
	for _, h := range a.Working() {
		if h.State == glass.Cut {
			n++
		}
	}
	return n
}

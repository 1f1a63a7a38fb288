package league

import (
	"path"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
)

// Row is one arena of a league.
type Row struct {
	File   string
	Arena  unit.Maybe[arena.Arena] // unknown where the file cannot be read
	Cause  string                  // why there is no answer, "" where there is one
	Answer unit.Maybe[Answer]
	Other  unit.Maybe[Answer] // under the other rule sets
	Pages  int                // of its book
}

// Name is what the arena is called, its file where that cannot be read.
func (r Row) Name() string {
	if a, ok := r.Arena.Get(); ok {
		return a.Name
	}
	return r.File
}

// Weakest is the hole of the best set whose loss costs least; ok is false without one.
func (a Answer) Weakest() (weakest Hole, ok bool) {
	for i, h := range a.Holes {
		if i == 0 || h.Worth < weakest.Worth {
			weakest = h
		}
	}
	return weakest, len(a.Holes) > 0
}

// ToCut are the holes of the best set that are not there yet.
func (a Answer) ToCut() (out []Hole) {
	for _, h := range a.Holes {
		if !h.Cut() {
			out = append(out, h)
		}
	}
	return out
}

// Chosen returns an arena with the best set in place of its own holes.
func (a Answer) Chosen(of arena.Arena) arena.Arena {
	of.Holes = nil
	for _, h := range a.Holes {
		of.Holes = append(of.Holes, h.Hole)
	}
	return of
}

// Of is what came of one file of a league beside its arenas.
type Of[A any] struct {
	File   string
	Cause  string // why there is no answer, "" where there is one
	Answer unit.Maybe[A]
}

// League is the rows of a league and under which rule sets they were answered.
type League struct {
	Rows         []Row
	Seasons      []Of[Played] // of games documents
	Looks        []Of[Looked] // of readings of games' frames
	Rules, Other []string     // ids; Other is empty where no other rule sets were asked about
	Units        unit.System
}

// Whole reports that everything has its answer.
func (l League) Whole() bool {
	return !slices.ContainsFunc(l.Rows, func(r Row) bool { return r.Cause != "" }) && whole(l.Seasons) && whole(l.Looks)
}

func whole[A any](of []Of[A]) bool {
	return !slices.ContainsFunc(of, func(o Of[A]) bool { return o.Cause != "" })
}

// Total is the sum over a league's arenas.
type Total struct {
	Arenas, Answered, Passing int
	Today, Value              float64 // without unit
	Cut, GivenUp              int     // holes
	// Bill is what it costs, in Currency; Currency is "" where arenas have several, which
	// cannot be added.
	Bill        cost.Bill
	Currency    string
	Both        int     // arenas that have an answer under the other rules, too
	Here, There float64 // their values under the one and the other, without unit
}

// Price is what the rules cost against the other ones, without unit; below 0 where the
// others are the stricter.
func (t Total) Price() float64 { return t.There - t.Here }

// Total sums up.
func (l League) Total() Total {
	t := Total{Arenas: len(l.Rows)}
	for _, r := range l.Rows {
		a, ok := r.Answer.Get()
		if !ok {
			continue
		}
		t.Answered++
		if a.Verdict == rules.Pass {
			t.Passing++
		}
		t.Today, t.Value = t.Today+a.Today, t.Value+a.Value
		t.Cut, t.GivenUp = t.Cut+len(a.ToCut()), t.GivenUp+len(a.GivenUp)
		t.Bill = t.Bill.Plus(a.Bill)
		if t.Answered == 1 {
			t.Currency = a.Currency
		} else if t.Currency != a.Currency {
			t.Currency = ""
		}
		if o, ok := r.Other.Get(); ok {
			t.Both++
			t.Here, t.There = t.Here+a.Value, t.There+o.Value
		}
	}
	return t
}

// RuleIDs adds the names of rule sets to a list, each once.
func RuleIDs(list []string, docs []Document) []string {
	for _, d := range docs {
		name := strings.TrimSuffix(d.Name, path.Ext(d.Name))
		if !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	return list
}

package main

import (
	"fmt"

	"example.org/rinkpane/internal/draw/cut"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// cutSums are the sums of the cut list: all drilled panes and their covers, of
// these what exists and what is to be made, and how many spares of each last a
// season, all kinds together.
type cutSums struct {
	Panes       int         `json:"panes"`
	Covers      int         `json:"covers"`
	MassKG      float64     `json:"drilled_mass_kg"`
	ToMake      workSum     `json:"to_make"`
	Existing    workSum     `json:"existing"`
	SparePanes  int         `json:"spare_panes"`
	SpareCovers int         `json:"spare_covers"`
	Certainty   float64     `json:"certainty"`
	Reached     float64     `json:"certainty_reached"`
	Kinds       []pieceKind `json:"kinds"`
	CoverKinds  []pieceKind `json:"cover_kinds"`
}

// workSum is what a list comes to of work to do, or of what exists.
type workSum struct {
	Holes  int     `json:"holes"`
	Panes  int     `json:"panes"`
	Covers int     `json:"covers"`
	MassKG float64 `json:"drilled_mass_kg"`
}

// pieceKind is panes, or covers, that can stand in for one another.
type pieceKind struct {
	Pane     string   `json:"pane,omitempty"`
	Cover    string   `json:"cover,omitempty"`
	Holes    []string `json:"holes"`
	InUse    int      `json:"in_use"`
	Existing int      `json:"existing"`
	ToMake   int      `json:"to_make"`
	Spares   int      `json:"spares"`
	MassKG   float64  `json:"mass_kg"`
}

func sumsOf(l cut.List, sys unit.System) *cutSums {
	toMake, existing := l.Sums()
	s := &cutSums{
		Panes: toMake.Panes + existing.Panes, Covers: toMake.Covers + existing.Covers, MassKG: toMake.MassKG + existing.MassKG,
		ToMake: workSum(toMake), Existing: workSum(existing), Certainty: l.Options.Certainty, Reached: l.Reached,
		Kinds: []pieceKind{}, CoverKinds: []pieceKind{},
	}
	s.SparePanes, s.SpareCovers = l.Spares()
	for _, k := range append(l.Panes, l.Covers...) {
		p := pieceKind{Holes: k.Holes, InUse: k.InUse(), Existing: k.Exist, ToMake: k.Make, Spares: k.Spares, MassKG: k.Piece}
		if k.Cover {
			p.Cover = k.What.In(sys)
			s.CoverKinds = append(s.CoverKinds, p)
		} else {
			p.Pane = k.What.In(sys)
			s.Kinds = append(s.Kinds, p)
		}
	}
	return s
}

// words says the sums in sentences.
func (s *cutSums) words() []string {
	counts := func(w workSum) string {
		return fmt.Sprintf("%s, %s (%.0f kg drilled), %s", say.Count(w.Holes, "hole"), say.Count(w.Panes, "pane"), w.MassKG, say.Count(w.Covers, "cover"))
	}
	return []string{
		"To make: " + counts(s.ToMake) + ".",
		"Exist already: " + counts(s.Existing) + ".",
		fmt.Sprintf("To keep for a season, at %g %% certainty for all kinds together: %s and %s.",
			100*s.Certainty, say.Count(s.SparePanes, "spare pane"), say.Count(s.SpareCovers, "spare cover")),
	}
}

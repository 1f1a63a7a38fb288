package main

import (
	"fmt"

	"example.org/rinkpane/internal/draw/cut"
)

// cutSums are the sums of the cut list: all drilled panes, their covers, and
// how many spares of each last a season.
type cutSums struct {
	Panes       int        `json:"panes"`
	Covers      int        `json:"covers"`
	MassKG      float64    `json:"drilled_mass_kg"`
	SparePanes  int        `json:"spare_panes"`
	SpareCovers int        `json:"spare_covers"`
	Certainty   float64    `json:"certainty"`
	Kinds       []paneKind `json:"kinds"`
}

// paneKind is panes that can stand in for one another.
type paneKind struct {
	Pane   string   `json:"pane"`
	Holes  []string `json:"holes"`
	InUse  int      `json:"in_use"`
	Spares int      `json:"spares"`
}

func sumsOf(l cut.List) *cutSums {
	s := &cutSums{
		Covers: l.Covers, MassKG: l.Mass, SparePanes: l.Spares, SpareCovers: l.CoverSpare,
		Certainty: l.Options.Certainty, Kinds: []paneKind{},
	}
	for _, g := range l.Groups {
		s.Panes += g.Count
		s.Kinds = append(s.Kinds, paneKind{g.Pane, g.Holes, g.Count, g.Spares})
	}
	return s
}

// words says the sums in a sentence.
func (s *cutSums) words() string {
	return fmt.Sprintf("%s drilled, %.0f kg in all, and %s; to keep for a season, at %g %% certainty: %s and %s.",
		counted(s.Panes, "pane"), s.MassKG, counted(s.Covers, "cover"), 100*s.Certainty, counted(s.SparePanes, "spare pane"), counted(s.SpareCovers, "spare cover"))
}

package api

import (
	"context"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/tell/wire"
)

type reaching struct {
	Base  int         `json:"base" minimum:"0" doc:"The version to start from; the newest for 0."`
	Edits []edit.Edit `json:"edits" maxItems:"500" doc:"May be empty."`
	Hole  string      `json:"hole"`
	Step  float64     `json:"step_m,omitempty" minimum:"0" maximum:"2" doc:"Side of a cell, from 0.1; 0.25 without it."`
	Face  bool        `json:"face,omitempty" doc:"At the height of faces instead of a puck on the ice."`
}

func (r reaching) base() int { return r.Base }

// reachOf is a request for the map of a version.
type reachOf struct {
	AtVersion
	Hole string  `query:"hole" required:"true"`
	Step float64 `query:"step_m" minimum:"0" maximum:"2"`
	Face bool    `query:"face"`
}

func (s *server) reachOfVersion(ctx context.Context, b shelf.Book, in *reachOf) (wire.ReachMap, error) {
	return s.reachOfEdits(ctx, b, &onBase[reaching]{Body: reaching{Hole: in.Hole, Step: in.Step, Face: in.Face}})
}

func (s *server) reachOfEdits(ctx context.Context, b shelf.Book, in *onBase[reaching]) (wire.ReachMap, error) {
	doc, _, err := s.tried(b, in.Body.Edits)
	if err != nil {
		return wire.ReachMap{}, err
	}
	seen, err := b.Live.Reach(ctx, doc, plan.ReachQuestion{Hole: in.Body.Hole, Step: unit.Length(in.Body.Step), Face: in.Body.Face})
	if err != nil {
		return wire.ReachMap{}, err
	}
	a, err := doc.Check()
	return wire.ReachMapOf(seen, a.Units), err
}

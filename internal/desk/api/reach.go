package api

import (
	"context"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"example.org/rinkpane/internal/decide/plan"
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

func (s *server) reach() {
	const words = "cells is a byte for each cell in base64, row by row from the bench side: how many of the lenses can be aimed at it, 255 off the ice."
	huma.Register(s.api, huma.Operation{
		Method: http.MethodGet, Path: "/api/arenas/{id}/reach", OperationID: "map-reach", Tags: []string{"edits"},
		Summary: "The map of what a hole sees", Description: words,
	}, s.reachOfVersion)
	huma.Register(s.api, huma.Operation{
		Method: http.MethodPost, Path: "/api/arenas/{id}/reach", OperationID: "try-reach", Tags: []string{"edits"},
		Summary: "The map of what a hole sees with edits, without saving: for when the hand rests", Description: words, MaxBodyBytes: mostSent,
	}, s.reachOfEdits)
}

func (s *server) reachOfVersion(ctx context.Context, in *struct {
	AtVersion
	Hole string  `query:"hole" required:"true"`
	Step float64 `query:"step_m" minimum:"0" maximum:"2"`
	Face bool    `query:"face"`
}) (*body[wire.ReachMap], error) {
	return s.reached(ctx, in.ID.ID, reaching{Base: in.Version, Hole: in.Hole, Step: in.Step, Face: in.Face})
}

func (s *server) reachOfEdits(ctx context.Context, in *struct {
	ID
	Body reaching
}) (*body[wire.ReachMap], error) {
	return s.reached(ctx, in.ID.ID, in.Body)
}

func (s *server) reached(ctx context.Context, id string, in reaching) (*body[wire.ReachMap], error) {
	b, err := s.Shelf.Open(ctx, id, in.Base)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	doc := b.Arena
	if len(in.Edits) > 0 {
		if doc, _, err = s.Shelf.Edited(b, in.Edits); err != nil {
			return nil, s.fail(ctx, err)
		}
	}
	seen, err := b.Live.Reach(ctx, doc, plan.ReachQuestion{Hole: in.Hole, Step: unit.Length(in.Step), Face: in.Face})
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	a, err := doc.Check()
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	return &body[wire.ReachMap]{wire.ReachMapOf(seen, a.Units)}, nil
}

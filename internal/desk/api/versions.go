package api

import (
	"cmp"
	"context"
	"errors"
	"fmt"

	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
)

type history struct {
	Head     int           `json:"head"`
	Undo     int           `json:"undo" doc:"The version that an undo puts on top; 0 without one."`
	Redo     int           `json:"redo" doc:"The version that a redo puts on top; 0 without one."`
	Versions []VersionLine `json:"versions" doc:"The newest first."`
}

// VersionText is one version with its text.
type VersionText struct {
	VersionLine
	Mark string `json:"mark"`
	Text string `json:"text"`
}

// Difference is what changed between two versions.
type Difference struct {
	From int      `json:"from"`
	To   int      `json:"to"`
	Gone []string `json:"gone"`
	Come []string `json:"come"`
	Diff string   `json:"diff" doc:"In the unified form; empty when nothing changed."`
}

func (s *server) versions() {
	answer(s, "GET /api/arenas/{id}/versions", "list-versions", "The versions of an arena, the newest first", s.history)
	answer(s, "GET /api/arenas/{id}/versions/{number}", "get-version", "One version with its text", s.version)
	answer(s, "GET /api/arenas/{id}/diff", "diff-versions", "What changed between two versions", s.diff)
	answer(s, "POST /api/arenas/{id}/restore", "restore-version", "Put an older version on top: undo, redo, restore", s.restore,
		short, more("A save like another: 409 with conflict when somebody saved since base."))
}

func (s *server) history(ctx context.Context, in *struct {
	ID
	Limit int `query:"limit" minimum:"1" maximum:"1000" default:"100"`
}) (history, error) {
	d, err := s.Shelf.Keeper().Document(ctx, in.ID.ID)
	if err != nil {
		return history{}, err
	}
	versions, err1 := s.Shelf.Keeper().History(ctx, in.ID.ID, in.Limit)
	to, err2 := s.Shelf.Steps(ctx, in.ID.ID)
	return history{d.Head, to.Undo, to.Redo, linesOf(versions)}, errors.Join(err1, err2)
}

func (s *server) version(ctx context.Context, in *struct {
	ID
	Number int `path:"number" minimum:"1"`
}) (VersionText, error) {
	v, err := s.Shelf.Keeper().Version(ctx, in.ID.ID, in.Number)
	return VersionText{lineOf(v), arena.Mark([]byte(v.Text)), v.Text}, err
}

func (s *server) diff(ctx context.Context, in *struct {
	ID
	From int `query:"from" minimum:"1" required:"true"`
	To   int `query:"to" minimum:"0" doc:"The newest for 0 or none."`
}) (Difference, error) {
	from, err1 := s.Shelf.Keeper().Version(ctx, in.ID.ID, in.From)
	to, err2 := s.Shelf.Keeper().Version(ctx, in.ID.ID, in.To)
	if err := errors.Join(err1, err2); err != nil {
		return Difference{}, err
	}
	return differenceOf(ctx, from, to)
}

func differenceOf(ctx context.Context, from, to revision.Version) (Difference, error) {
	name := func(v revision.Version) string { return fmt.Sprintf("version %d", v.Number) }
	c, err := revision.Compare(ctx, from.Text, to.Text, name(from), name(to))
	return Difference{from.Number, to.Number, c.Gone, c.Come, c.Text}, err
}

func (s *server) restore(ctx context.Context, in *struct {
	ID
	Body struct {
		Base    int    `json:"base" minimum:"1" doc:"The newest version that you know of."`
		Version int    `json:"version" minimum:"1" doc:"The version to put on top."`
		What    string `json:"what,omitempty" maxLength:"200" doc:"Such as undo: move H3."`
	}
}) (Saved, error) {
	b, err := s.Shelf.Open(ctx, in.ID.ID, in.Body.Version)
	if err != nil {
		return Saved{}, err
	}
	v, err := s.Shelf.Restore(ctx, b, in.Body.Base, s.Who(ctx), cmp.Or(in.Body.What, fmt.Sprintf("restore version %d", in.Body.Version)))
	return s.saved(ctx, v, err)
}

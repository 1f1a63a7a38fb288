package api

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

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
	huma.Register(s.api, huma.Operation{
		Method: http.MethodGet, Path: "/api/arenas/{id}/versions", OperationID: "list-versions", Tags: []string{"versions"},
		Summary: "The versions of an arena, the newest first",
	}, s.history)
	huma.Register(s.api, huma.Operation{
		Method: http.MethodGet, Path: "/api/arenas/{id}/versions/{number}", OperationID: "get-version", Tags: []string{"versions"},
		Summary: "One version with its text",
	}, s.version)
	huma.Register(s.api, huma.Operation{
		Method: http.MethodGet, Path: "/api/arenas/{id}/diff", OperationID: "diff-versions", Tags: []string{"versions"},
		Summary: "What changed between two versions",
	}, s.diff)
	huma.Register(s.api, huma.Operation{
		Method: http.MethodPost, Path: "/api/arenas/{id}/restore", OperationID: "restore-version", Tags: []string{"versions"},
		Summary: "Put an older version on top: undo, redo, restore", MaxBodyBytes: fewWords,
		Description: "A save like another: 409 with conflict when somebody saved since base.",
	}, s.restore)
}

func (s *server) history(ctx context.Context, in *struct {
	ID
	Limit int `query:"limit" minimum:"1" maximum:"1000" default:"100"`
}) (*body[history], error) {
	d, err := s.Shelf.Keeper().Document(ctx, in.ID.ID)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	versions, err := s.Shelf.Keeper().History(ctx, in.ID.ID, in.Limit)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	out := &body[history]{history{Head: d.Head, Versions: []VersionLine{}}}
	if out.Body.Undo, out.Body.Redo, err = s.Shelf.Steps(ctx, in.ID.ID); err != nil {
		return nil, s.fail(ctx, err)
	}
	for _, v := range versions {
		out.Body.Versions = append(out.Body.Versions, lineOf(v))
	}
	return out, nil
}

func (s *server) version(ctx context.Context, in *struct {
	ID
	Number int `path:"number" minimum:"1"`
}) (*body[VersionText], error) {
	v, err := s.Shelf.Keeper().Version(ctx, in.ID.ID, in.Number)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	return &body[VersionText]{VersionText{lineOf(v), arena.Mark([]byte(v.Text)), v.Text}}, nil
}

func (s *server) diff(ctx context.Context, in *struct {
	ID
	From int `query:"from" minimum:"1" required:"true"`
	To   int `query:"to" minimum:"0" doc:"The newest for 0 or none."`
}) (*body[Difference], error) {
	from, err := s.Shelf.Keeper().Version(ctx, in.ID.ID, in.From)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	to, err := s.Shelf.Keeper().Version(ctx, in.ID.ID, in.To)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	out := Difference{From: from.Number, To: to.Number}
	out.Gone, out.Come = changed(from.Text, to.Text)
	out.Diff = revision.Diff(from.Text, to.Text, versionName(from.Number), versionName(to.Number))
	return &body[Difference]{out}, nil
}

// changed returns the lines that went and came, empty lists where none did.
func changed(from, to string) (gone, come []string) {
	gone, come = revision.ChangedLines(from, to)
	return append([]string{}, gone...), append([]string{}, come...)
}

func versionName(n int) string { return fmt.Sprintf("version %d", n) }

func (s *server) restore(ctx context.Context, in *struct {
	ID
	Body struct {
		Base    int    `json:"base" minimum:"1" doc:"The newest version that you know of."`
		Version int    `json:"version" minimum:"1" doc:"The version to put on top."`
		What    string `json:"what,omitempty" maxLength:"200" doc:"Such as undo: move H3."`
	}
}) (*body[Saved], error) {
	b, err := s.Shelf.Open(ctx, in.ID.ID, in.Body.Version)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	base, err := s.Shelf.Keeper().Version(ctx, in.ID.ID, in.Body.Base)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	what := cmp.Or(in.Body.What, fmt.Sprintf("restore version %d", in.Body.Version))
	v, err := s.Shelf.Restore(ctx, b, in.Body.Base, s.Who(ctx), what)
	var stale *revision.Stale
	if errors.As(err, &stale) {
		return nil, s.conflict(in.ID.ID, base, b.Version.Text, stale)
	}
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	return s.saved(ctx, v), nil
}

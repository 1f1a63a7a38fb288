package api

import (
	"cmp"
	"context"
	"errors"
	"net/http"

	"github.com/danielgtaylor/huma/v2"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/tell/wire"
)

type editing struct {
	Base  int         `json:"base" minimum:"1" doc:"The version that the edits were made from."`
	Edits []edit.Edit `json:"edits" minItems:"1" maxItems:"500" doc:"Made one after the other; all or none."`
	What  string      `json:"what,omitempty" maxLength:"200" doc:"What changed, in a line; told from the edits without it."`
}

type trying struct {
	Base  int         `json:"base" minimum:"0" doc:"The version to start from; the newest for 0."`
	Edits []edit.Edit `json:"edits" maxItems:"500" doc:"May be empty."`
	Hole  string      `json:"hole,omitempty" doc:"The hole picked."`
	Lens  string      `json:"lens,omitempty" doc:"The lens in it; the first that fits without it."`
	Focal float64     `json:"focal_mm,omitempty" minimum:"0" doc:"An end of the lens's range; the short one without it."`
	All   bool        `json:"all,omitempty" doc:"Limits of every lens in use, not only of the one picked."`
}

// Tried is the answer to a trial: nothing was saved.
type Tried struct {
	Base int      `json:"base" doc:"The version that was started from."`
	Head int      `json:"head" doc:"The newest version; another than base when somebody saved since."`
	Mark string   `json:"mark" doc:"Of the text that was tried."`
	What string   `json:"what" doc:"What the edits do, in a line; empty without edits."`
	Now  wire.Now `json:"now"`
}

func (s *server) edits() {
	huma.Register(s.api, huma.Operation{
		Method: http.MethodPost, Path: "/api/arenas/{id}/edits", OperationID: "edit-arena", Tags: []string{"edits"},
		Summary: "Edit an arena and save it as a new version", MaxBodyBytes: mostSent,
		Description: "Checked as a file is. When somebody saved since base, nothing is saved and the answer is 409 with conflict.",
	}, s.edit)
	huma.Register(s.api, huma.Operation{
		Method: http.MethodPost, Path: "/api/arenas/{id}/try", OperationID: "try-edits", Tags: []string{"edits"},
		Summary: "Try edits without saving: findings, permitted boards, wedges, limits, light", MaxBodyBytes: mostSent,
	}, s.try)
}

func (s *server) edit(ctx context.Context, in *struct {
	ID
	Body editing
}) (*body[Saved], error) {
	b, err := s.Shelf.Open(ctx, in.ID.ID, in.Body.Base)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	doc, what, err := s.Shelf.Edited(b, in.Body.Edits)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	v, err := s.Shelf.Save(ctx, in.ID.ID, in.Body.Base, doc, s.Who(ctx), cmp.Or(in.Body.What, what), shelf.Renamed(in.Body.Edits)...)
	var stale *revision.Stale
	if errors.As(err, &stale) {
		return nil, s.conflict(in.ID.ID, b.Version, string(doc.Bytes()), stale)
	}
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	return s.saved(ctx, v), nil
}

// conflict tells what came between and proposes a merge.
func (s *server) conflict(id string, base revision.Version, mine string, stale *revision.Stale) error {
	c := &Conflict{Base: stale.Base, Head: lineOf(stale.Head), Mine: mine, Clashes: []Clash{}, Sound: true}
	c.Gone, c.Come = changed(base.Text, stale.Head.Text)
	c.Diff = revision.Diff(base.Text, stale.Head.Text, versionName(base.Number), versionName(stale.Head.Number))
	merged, clashes := revision.Merge(base.Text, mine, stale.Head.Text)
	c.Merged = merged
	for _, k := range clashes {
		c.Clashes = append(c.Clashes, Clash(k))
	}
	if _, err := s.Shelf.Read(id, merged); err != nil {
		c.Sound, c.Why = false, err.Error()
	}
	p := problem(http.StatusConflict, stale.Error())
	p.Conflict = c
	return p
}

func (s *server) try(ctx context.Context, in *struct {
	ID
	Body trying
}) (*body[Tried], error) {
	b, err := s.Shelf.Open(ctx, in.ID.ID, in.Body.Base)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	out := Tried{Base: b.Version.Number, Head: b.Document.Head, Mark: b.Mark}
	doc := b.Arena
	if len(in.Body.Edits) > 0 {
		if doc, out.What, err = s.Shelf.Edited(b, in.Body.Edits); err != nil {
			return nil, s.fail(ctx, err)
		}
		out.Mark = arena.Mark(doc.Bytes())
	}
	q := plan.Question{Hole: in.Body.Hole, Lens: in.Body.Lens, Focal: unit.Length(in.Body.Focal) * unit.Millimetre, All: in.Body.All}
	now, err := b.Live.Try(doc, q)
	if err != nil {
		return nil, s.fail(ctx, err)
	}
	out.Now = wire.NowOf(now, now.Survey.Units)
	return &body[Tried]{out}, nil
}

package api

import (
	"context"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
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
	Edits []edit.Edit `json:"edits" maxItems:"500" doc:"May be empty. So many that a second of work suffices: 4 MiB over the size of the arena's text."`
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

// onBase is a request whose body names the version that it begins with.
type onBase[B interface{ base() int }] struct {
	ID
	Body B
}

func (in *onBase[B]) version() (string, int) { return in.ID.ID, in.Body.base() }

func (e editing) base() int { return e.Base }
func (t trying) base() int  { return t.Base }

func (s *server) edits() {
	ofBook(s, "POST /api/arenas/{id}/edits", "edit-arena", "Edit an arena and save it as a new version", s.edit,
		more("Checked as a file is. When somebody saved since base, nothing is saved and the answer is 409 with conflict."))
	ofBook(s, "POST /api/arenas/{id}/try", "try-edits", "Try edits without saving: findings, permitted boards, wedges, limits, light", s.try)
	words := more("cells is a byte for each cell in base64, row by row from the bench side: how many of the lenses can be aimed at it, 255 off the ice.")
	ofBook(s, "GET /api/arenas/{id}/reach", "map-reach", "The map of what a hole sees", s.reachOfVersion, words)
	ofBook(s, "POST /api/arenas/{id}/reach", "try-reach", "The map of what a hole sees with edits, without saving: for when the hand rests", s.reachOfEdits, words)
}

func (s *server) edit(ctx context.Context, b shelf.Book, in *onBase[editing]) (Saved, error) {
	_, v, err := s.Shelf.Edit(ctx, b, in.Body.Edits, s.Who(ctx), in.Body.What)
	return s.saved(ctx, v, err)
}

// tried makes edits that are not saved, if there are any.
func (s *server) tried(b shelf.Book, edits []edit.Edit) (doc *arena.Document, what string, err error) {
	if len(edits) == 0 {
		return b.Arena, "", nil
	}
	return s.Shelf.Tried(b, edits)
}

func (s *server) try(_ context.Context, b shelf.Book, in *onBase[trying]) (Tried, error) {
	doc, what, err := s.tried(b, in.Body.Edits)
	if err != nil {
		return Tried{}, err
	}
	now, err := b.Live.Try(doc, plan.Question{Hole: in.Body.Hole, Lens: in.Body.Lens, Focal: unit.Length(in.Body.Focal) * unit.Millimetre, All: in.Body.All})
	if err != nil {
		return Tried{}, err
	}
	return Tried{b.Version.Number, b.Document.Head, arena.Mark(doc.Bytes()), what, wire.NowOf(now, now.Survey.Units)}, nil
}

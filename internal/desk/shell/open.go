package shell

import (
	"context"
	"errors"
	"net/http"
	"net/url"
	"time"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
)

// Opened is one version of an arena with its plan, ready to be shown.
type Opened struct {
	shelf.Book
	At   Address
	Plan plan.Plan
}

// mostPlanning is how long a page waits for the plan of its arena: one as large as
// a document may be takes some ten seconds of two free cores.
const mostPlanning = 45 * time.Second

// Open takes the arena of an address off the shelf and plans it.
func (s *Shell) Open(r *http.Request, slug string, q url.Values) (Opened, error) {
	at, err := ReadAddress(slug, q)
	if err != nil {
		return Opened{}, err
	}
	b, err := s.Book(r, slug, at.Version)
	if err != nil {
		return Opened{}, err
	}
	ctx, stop := context.WithTimeout(r.Context(), mostPlanning)
	defer stop()
	p, err := s.Shelf.Plan(ctx, b)
	if err != nil && ctx.Err() != nil {
		return Opened{}, ctx.Err()
	}
	if err != nil {
		s.Log.WarnContext(r.Context(), "desk", "arena", b.Document.ID, "error", err)
		return Opened{}, Refuse(http.StatusUnprocessableEntity, "This arena cannot be planned.", err.Error())
	}
	return Opened{Book: b, At: at, Plan: p}, nil
}

// Book takes a version of an arena off the shelf, the newest for 0.
func (s *Shell) Book(r *http.Request, slug string, version int) (shelf.Book, error) {
	b, err := s.Shelf.Open(r.Context(), slug, version)
	if errors.Is(err, revision.ErrNone) && version > 0 {
		err = ErrNoVersion
	}
	return b, err
}

// Newest takes the newest version of the arena of a request's path off the
// shelf, with the state that its address asks for.
func (s *Shell) Newest(r *http.Request) (shelf.Book, Address, error) {
	at, err := ReadAddress(r.PathValue("slug"), r.URL.Query())
	if err != nil {
		return shelf.Book{}, at, err
	}
	b, err := s.Book(r, at.Slug, 0)
	return b, at, err
}

// NewestArena is Newest with the arena checked.
func (s *Shell) NewestArena(r *http.Request) (shelf.Book, arena.Arena, Address, error) {
	b, at, err := s.Newest(r)
	if err != nil {
		return b, arena.Arena{}, at, err
	}
	a, err := b.Arena.Check()
	return b, a, at, err
}

// SampleArena is the arena on whose pages samples of addresses are taken.
const SampleArena = "quillhaven"

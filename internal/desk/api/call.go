package api

import (
	"context"
	"net/http"
	"strings"

	"github.com/danielgtaylor/huma/v2"

	"example.org/rinkpane/internal/desk/shelf"
)

// body is an answer in JSON.
type body[T any] struct{ Body T }

// short takes a request without a document.
func short(op *huma.Operation) { op.MaxBodyBytes = fewWords }

// created and silent are calls that make something, and that have nothing to tell.
func created(op *huma.Operation) { op.DefaultStatus = http.StatusCreated }
func silent(op *huma.Operation)  { op.DefaultStatus = http.StatusNoContent }

// more adds to what a call's summary says.
func more(words string) func(*huma.Operation) {
	return func(op *huma.Operation) { op.Description = words }
}

// route adds a call: its method and path, an id, what it is for, and what does it.
func route[I, O any](s *server, pattern, id, summary string, do func(context.Context, *I) (*O, error), set ...func(*huma.Operation)) {
	method, path, _ := strings.Cut(pattern, " ")
	op := huma.Operation{Method: method, Path: path, OperationID: id, Tags: []string{s.tag}, Summary: summary}
	if method != http.MethodGet {
		op.MaxBodyBytes = mostSent
	}
	for _, change := range set {
		change(&op)
	}
	huma.Register(s.api, op, func(ctx context.Context, in *I) (*O, error) {
		out, err := do(ctx, in)
		if err != nil {
			return nil, s.fail(ctx, err)
		}
		return out, nil
	})
}

// answer adds a call that answers in JSON.
func answer[I, O any](s *server, pattern, id, summary string, do func(context.Context, *I) (O, error), set ...func(*huma.Operation)) {
	route(s, pattern, id, summary, func(ctx context.Context, in *I) (*body[O], error) {
		out, err := do(ctx, in)
		return &body[O]{out}, err
	}, set...)
}

// A versioned request names a version of an arena.
type versioned interface {
	version() (id string, number int)
}

// ofBook adds a call about a version of an arena, which is opened first.
func ofBook[I, O any, P interface {
	*I
	versioned
}](s *server, pattern, id, summary string, do func(context.Context, shelf.Book, *I) (O, error), set ...func(*huma.Operation)) {
	answer(s, pattern, id, summary, func(ctx context.Context, in *I) (out O, err error) {
		arena, number := P(in).version()
		b, err := s.Shelf.Open(ctx, arena, number)
		if err != nil {
			return out, err
		}
		return do(ctx, b, in)
	}, set...)
}

package api

import (
	"context"
	"errors"
	"net/http"
	"reflect"

	"github.com/danielgtaylor/huma/v2"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/parcel"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/edit"
)

// Problem is an error in the form of RFC 9457 with the place in the document.
type Problem struct {
	huma.ErrorModel
	Place    *Location `json:"place,omitempty" doc:"Where the document is wrong."`
	Edit     int       `json:"edit,omitempty" doc:"The edit that could not be made, from 1."`
	Conflict *Conflict `json:"conflict,omitempty" doc:"Status 409: what somebody else saved since."`
}

// Location is where a document is wrong.
type Location struct {
	File   string `json:"file"`
	Line   int    `json:"line" doc:"From 1; 0 when the place is not known."`
	Column int    `json:"column"`
	Field  string `json:"field" doc:"As edits name it: holes[H3].size; empty for the document as a whole."`
	Text   string `json:"text" doc:"The value seen and the cure."`
}

// Conflict says what came between, and proposes a merge.
type Conflict struct {
	Base    int         `json:"base"`
	Head    VersionLine `json:"head"`
	Gone    []string    `json:"gone" doc:"Lines that the newer versions took away."`
	Come    []string    `json:"come" doc:"Lines that they brought."`
	Diff    string      `json:"diff" doc:"The same as a unified diff."`
	Mine    string      `json:"mine" doc:"The document as you would have saved it."`
	Merged  string      `json:"merged" doc:"Both joined; where both changed the same lines, yours."`
	Clashes []Clash     `json:"clashes" doc:"Places that both changed in different ways."`
	Sound   bool        `json:"sound" doc:"Whether the merged document is a sound arena; if not, why says the line."`
	Why     string      `json:"why,omitempty"`
}

// Clash is a place that both sides changed.
type Clash struct {
	Line   int    `json:"line" doc:"In the base, from 1."`
	Base   string `json:"base"`
	Mine   string `json:"mine"`
	Theirs string `json:"theirs"`
}

func problem(status int, detail string) *Problem {
	return &Problem{ErrorModel: huma.ErrorModel{Status: status, Title: http.StatusText(status), Detail: detail}}
}

// conflict tells what came between and proposes a merge.
func conflict(ctx context.Context, status int, late *shelf.Late) *Problem {
	d, err := differenceOf(ctx, late.From, late.Head)
	if err != nil {
		return problem(status, late.Error())
	}
	c := &Conflict{Base: late.Base, Head: lineOf(late.Head), Gone: d.Gone, Come: d.Come, Diff: d.Diff, Mine: late.Mine, Clashes: []Clash{}}
	merged, clashes, wrong := late.Merged()
	c.Merged, c.Sound = merged, wrong == nil
	for _, k := range clashes {
		c.Clashes = append(c.Clashes, Clash(k))
	}
	if wrong != nil {
		c.Why = wrong.Error()
	}
	p := problem(status, late.Error())
	p.Conflict = c
	return p
}

// describeProblems says in the specification what every call answers when it fails.
func describeProblems(spec *huma.OpenAPI) {
	schema := spec.Components.Schemas.Schema(reflect.TypeFor[Problem](), true, "Problem")
	answer := &huma.Response{
		Description: "What went wrong, and where",
		Content:     map[string]*huma.MediaType{"application/problem+json": {Schema: schema}},
	}
	for op := range operations(spec) {
		op.Responses["default"] = answer
	}
}

// fail turns an error into its answer. What nobody foresaw is logged and told
// without its text.
func (s *server) fail(ctx context.Context, err error) error {
	var known *Problem
	var at *form.Problem
	var fault *edit.Fault
	var wish *parcel.Error
	var late *shelf.Late
	var used *shelf.InUse
	switch {
	case errors.As(err, &known):
		return known
	case errors.As(err, &late):
		return conflict(ctx, http.StatusConflict, late)
	case errors.As(err, &used):
		return problem(http.StatusConflict, used.Error())
	case errors.Is(err, context.DeadlineExceeded):
		return problem(http.StatusServiceUnavailable, "this takes longer than the desk waits: others are at work too, or the arena is very large; ask again in a minute, or use the command line, which waits as long as it takes")
	case errors.Is(err, context.Canceled):
		return problem(499, "the request was taken back")
	case errors.Is(err, revision.ErrNone):
		return problem(http.StatusNotFound, "there is no such arena or version; it may have been put away")
	case errors.Is(err, revision.ErrTaken):
		return problem(http.StatusConflict, "this id is taken; choose another, or leave it out")
	case errors.Is(err, revision.ErrFull):
		return problem(http.StatusInsufficientStorage, revision.ErrFull.Error())
	case errors.Is(err, revision.ErrDown):
		return problem(http.StatusServiceUnavailable, revision.ErrDown.Error())
	}
	p := problem(http.StatusUnprocessableEntity, err.Error())
	if errors.As(err, &wish) || errors.Is(err, plan.ErrAsked) {
		return p
	}
	if errors.As(err, &fault) {
		p.Edit = fault.Number
	}
	if errors.As(err, &at) {
		p.Place = &Location{at.File, at.Line, at.Column, at.Field, at.Text}
	}
	if p.Edit == 0 && p.Place == nil {
		s.Log.ErrorContext(ctx, "api", "error", err)
		return problem(http.StatusInternalServerError, "this could not be done; the terminal that runs the desk shows why")
	}
	return p
}

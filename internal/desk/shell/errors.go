package shell

import (
	"context"
	"encoding/json"
	"errors"
	"io/fs"
	"net/http"

	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/edit"
)

// Refusal is why there is no page to show: the status, what happened, the cure.
// What and cure are ours; of the request nothing is repeated.
type Refusal struct {
	Status    int
	What      string
	Cure      string
	WaitUntil string // seconds, for Retry-After; ""
}

// Error says what and the cure.
func (f *Refusal) Error() string { return f.What + " " + f.Cure }

// Refuse returns a refusal.
func Refuse(status int, what, cure string) error {
	return &Refusal{Status: status, What: what, Cure: cure}
}

// Because refuses with the error as its cure, a sentence.
func Because(status int, what string, err error) error {
	return Refuse(status, what, WhyNot(err))
}

// The refusals that several areas give.
var (
	ErrNowhere    = Refuse(http.StatusNotFound, "There is no page here.", "Go back to the list of arenas and pick one.")
	ErrNoVersion  = Refuse(http.StatusNotFound, "There is no such version of this arena.", "Look at the list of versions.")
	ErrIncomplete = Refuse(http.StatusBadRequest, "This form is incomplete.", "Open the page again and try once more.")
)

// refusals is the error table: what is told of errors from below the desk.
var refusals = []struct {
	of  error
	say Refusal
}{
	{fs.ErrNotExist, Refusal{Status: http.StatusNotFound, What: "There is no page here.", Cure: "Go back to the list of arenas and pick one."}},
	{revision.ErrNone, Refusal{Status: http.StatusNotFound, What: "No arena has this address.", Cure: "Go back to the list of arenas and pick one."}},
	{revision.ErrFull, Refusal{Status: http.StatusInsufficientStorage, What: "The disk is full.", Cure: "Nothing was saved. Free some room, go back and try again."}},
	{context.DeadlineExceeded, Refusal{Status: http.StatusServiceUnavailable, What: "This takes longer than the desk waits.", Cure: "Others are at work too, or the arena is very large. Nothing is lost: ask again in a minute, or use the command line, which waits as long as it takes.", WaitUntil: "60"}},
	{revision.ErrDown, Refusal{Status: http.StatusServiceUnavailable, What: "The database does not answer.", Cure: "Wait a moment, look whether your last change is there, and try again.", WaitUntil: "5"}},
}

// refusalOf finds what to tell of an error; ours is false for one that nobody
// foresaw, of which the log has the reason and the visitor does not.
func refusalOf(err error) (say Refusal, ours bool) {
	var known *Refusal
	var at *form.Problem
	var fault *edit.Fault
	if errors.As(err, &known) {
		return *known, true
	}
	for _, row := range refusals {
		if errors.Is(err, row.of) {
			return row.say, true
		}
	}
	if errors.As(err, &at) || errors.As(err, &fault) {
		return Refusal{Status: http.StatusUnprocessableEntity, What: "This document cannot be used like this.", Cure: err.Error()}, true
	}
	return Refusal{
		Status: http.StatusInternalServerError, What: "This page broke.",
		Cure: "The terminal that runs the desk shows why. The arena file is untouched.",
	}, false
}

// errorPage is what a visitor reads when there is no page to show.
type errorPage struct {
	Frame
	Refusal
	Arena string // id of the arena that the address is about, to go back to; ""
}

// Fail answers with what went wrong: people on a page, programs in JSON.
func (s *Shell) Fail(w http.ResponseWriter, r *http.Request, err error) {
	var late *shelf.Late
	switch {
	case errors.Is(err, context.Canceled):
		return // the visitor no longer wants it
	case errors.As(err, &late):
		err = s.showConflict(w, r, late)
		if err == nil {
			return
		}
	}
	say, ours := refusalOf(err)
	if !ours {
		s.Log.ErrorContext(r.Context(), "desk", "path", r.URL.Path, "error", err)
	}
	if say.WaitUntil != "" {
		w.Header().Set("Retry-After", say.WaitUntil)
	}
	if ForProgram(r) {
		s.problem(w, r, say)
		return
	}
	page := errorPage{Frame: s.Frame(r, say.What), Refusal: say}
	if slug := r.PathValue("slug"); say.Status != http.StatusNotFound && revision.CheckID(slug) == nil {
		page.Arena = slug
	}
	if err := s.Page(w, r, say.Status, "error.tmpl", page); err != nil {
		s.Log.ErrorContext(r.Context(), "desk", "path", r.URL.Path, "error", err)
		http.Error(w, "This page broke; the terminal that runs the desk shows why.", http.StatusInternalServerError)
	}
}

// problem answers a program in JSON (RFC 9457).
func (s *Shell) problem(w http.ResponseWriter, r *http.Request, say Refusal) {
	text, _ := json.Marshal(map[string]any{"status": say.Status, "title": http.StatusText(say.Status), "detail": say.Error()}) // texts and a number always encode
	w.Header().Set("Cache-Control", "no-store")
	Send(w, r, say.Status, "application/problem+json", text, nil)
}

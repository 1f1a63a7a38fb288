package shell

import (
	"bytes"
	"errors"
	"io"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/keep/people"
)

// A Route is an address of the desk: who may ask for it, how much may be sent
// to it, and what answers. What is in no area's list cannot be reached.
type Route struct {
	Pattern string // as of [http.ServeMux]
	Need    people.Act
	Most    int64    // bytes of a request's body
	TooMuch *Refusal // what is said of more; nil where that is a form, or a document
	Answer  Answer
	Heavy   bool // it waits for a turn of its asker's: see turns
	// Samples are addresses that show the page, and its states, on a desk of the
	// example arenas: what tests of all pages look at. A page without a variable
	// in its pattern is its own sample.
	Samples []string
}

// Answer answers a request; what it returns is told by the error table.
type Answer func(w http.ResponseWriter, r *http.Request) error

// How much may be sent, in bytes.
const (
	Form     = 4 << 10 // a few words
	Document = 3 << 20 // a megabyte of text, every character escaped
	Call     = 4 << 20 // each call of the API has its own, lower limit and says so
)

// Serve answers the routes, each behind its need and within what goes around it.
func (s *Shell) Serve(routes []Route, d *door.Door, around func(route string, next http.Handler) http.Handler) http.Handler {
	mux := http.NewServeMux()
	for _, r := range routes {
		answer := r.Answer
		if r.Heavy {
			answer = s.turns.heavy(answer)
		}
		if strings.HasPrefix(r.Pattern, "POST ") || strings.HasPrefix(r.Pattern, "PUT ") {
			answer = whole(answer, r.TooMuch)
		}
		mux.Handle(r.Pattern, around(r.Pattern, d.Need(r.Need, http.MaxBytesHandler(s.handler(answer), r.Most))))
	}
	return mux
}

// handler answers errors by the table.
func (s *Shell) handler(a Answer) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		if err := a(w, r); err != nil {
			s.Fail(w, r, err)
		}
	}
}

// whole lets through what arrived whole: a form, or the body of a call. Of one
// that did not, a handler would read nothing, and an empty answer may mean
// something.
func whole(next Answer, tooMuch *Refusal) Answer {
	return func(w http.ResponseWriter, r *http.Request) error {
		if ForProgram(r) {
			body, err := io.ReadAll(r.Body)
			if err != nil {
				return halfSent(err, tooMuch)
			}
			r.Body = io.NopCloser(bytes.NewReader(body))
			return next(w, r)
		}
		err := r.ParseForm()
		if err == nil {
			err = r.ParseMultipartForm(Document)
		}
		if err != nil && !errors.Is(err, http.ErrNotMultipart) {
			return halfSent(err, tooMuch)
		}
		return next(w, r)
	}
}

// halfSent says what became of a body that did not arrive whole.
func halfSent(err error, tooMuch *Refusal) error {
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large) && tooMuch != nil:
		return tooMuch
	case errors.As(err, &large) && large.Limit >= Document:
		return Refuse(http.StatusRequestEntityTooLarge, "This is more than an arena document may hold.", "It may have a megabyte; is it the right file?")
	case errors.As(err, &large):
		return Refuse(http.StatusRequestEntityTooLarge, "This is more than the form may hold.", "Nothing was saved. Go back, where what you typed still stands, and shorten it.")
	}
	return Refuse(http.StatusBadRequest, "The form did not arrive whole.", "Nothing was saved. Go back, where what you typed still stands, and send it again.")
}

// ForProgram reports whether a program asks, or a page's module: it is answered
// in JSON, errors as problem details (RFC 9457).
func ForProgram(r *http.Request) bool {
	accept := r.Header.Get("Accept")
	return accept == "application/json" || accept == "text/event-stream" || strings.HasPrefix(r.URL.Path, "/api/") || strings.HasSuffix(r.URL.Path, "/live")
}

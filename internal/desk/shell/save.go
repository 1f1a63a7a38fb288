package shell

import (
	"errors"
	"io"
	"net/http"
	"net/url"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// Base opens the version that a form was made from.
func (s *Shell) Base(r *http.Request) (shelf.Book, error) {
	base, err := strconv.Atoi(r.PostFormValue("base"))
	if err != nil || base < 1 {
		return shelf.Book{}, ErrIncomplete
	}
	b, err := s.Book(r, r.PathValue("slug"), base)
	if err != nil {
		return b, err
	}
	return s.Shelf.Advance(r.Context(), b, door.Who(r.Context()), r.PostFormValue("once"))
}

// Edit makes edits in the version that a form was made from, and saves the outcome
// on top of it; without words of their own the version says what they did. What
// others saved since is kept, and where both changed the same the error is answered
// by a page that asks.
func (s *Shell) Edit(r *http.Request, from shelf.Book, what string, edits ...edit.Edit) (shelf.Joined, error) {
	return s.Shelf.Join(r.Context(), from, shelf.Change{Edits: edits, Who: door.Who(r.Context()), What: what, Once: r.PostFormValue("once")})
}

// YesOrNo reads a field of a form that is one of both.
func YesOrNo(r *http.Request, name string) (yes bool, err error) {
	switch r.PostFormValue(name) {
	case "yes":
		return true, nil
	case "no":
		return false, nil
	}
	return false, ErrIncomplete
}

// BackTo goes on to the arena's page in the state that a form was on, without a
// hole that is no longer there.
func (s *Shell) BackTo(w http.ResponseWriter, r *http.Request, doc *arena.Document) error {
	back := Back(r)
	if hole := back.Get("hole"); hole != "" && !doc.Has("holes["+hole+"]") {
		back.Del("hole")
	}
	return s.Goto(w, r, "/arena/"+r.PathValue("slug")+Suffix(back))
}

// Back returns the state of the page that a form was on.
func Back(r *http.Request) url.Values {
	q, err := url.ParseQuery(r.PostFormValue("back"))
	if err != nil {
		return url.Values{}
	}
	return q
}

// Suffix writes a query behind a path.
func Suffix(q url.Values) string {
	if len(q) == 0 {
		return ""
	}
	return "?" + q.Encode()
}

// Problem is what is wrong with something that somebody sent.
type Problem struct {
	Status int
	Line   int // 0 when the place is not known
	Field  string
	Text   string
	Near   []NearLine // the lines around it
}

// Say tells the problem in a sentence, with the field that it is in.
func (p *Problem) Say() string {
	if p.Field == "" {
		return Sentence(p.Text)
	}
	return Sentence(p.Field + ": " + p.Text)
}

// NearLine is a line of a document, and whether it is the one that is wrong.
type NearLine struct {
	Number int
	Text   string
	Here   bool
}

// longestNear is how much of such a line is shown, in characters: a file that is
// no document may be one line.
const longestNear = 300

// nearMost is how many lines are shown before and after the one that is wrong.
const nearMost = 2

// Again answers a form that could not be saved: show shows it with what was
// typed and what is wrong with it. A conflict, and a version that is not there,
// have pages of their own.
func (s *Shell) Again(r *http.Request, err error, text string, show func(*Problem) error) error {
	var late *shelf.Late
	var at *form.Problem
	var fault *edit.Fault
	switch {
	case err == nil || errors.As(err, &late):
		return err
	case errors.As(err, &at) && !IsText(text):
		return show(&Problem{Status: http.StatusUnprocessableEntity, Text: "This is " + kindOf(text) + ", not a document (not UTF-8 text): choose the file that ends in .yaml."})
	case errors.As(err, &at):
		return show(problemAt(at, text))
	case errors.As(err, &fault):
		return show(&Problem{Status: http.StatusUnprocessableEntity, Text: SentenceOf(fault.Err)})
	case errors.Is(err, revision.ErrFull):
		return show(&Problem{Status: http.StatusInsufficientStorage, Text: SentenceOf(revision.ErrFull)})
	case errors.Is(err, revision.ErrTaken):
		return show(&Problem{Status: http.StatusConflict, Text: "One of this name is there already: choose another name in the document."})
	}
	if say, ours := refusalOf(err); ours {
		return show(&Problem{Status: say.Status, Text: say.Error()})
	}
	s.Log.ErrorContext(r.Context(), "desk", "path", r.URL.Path, "error", err)
	return show(&Problem{Status: http.StatusInternalServerError, Text: "This could not be saved now; the terminal that runs the desk shows why. What you typed stands here still."})
}

// problemAt shows an error of a document with the lines around it.
func problemAt(at *form.Problem, text string) *Problem {
	p := &Problem{Status: http.StatusUnprocessableEntity, Line: at.Line, Field: at.Field, Text: at.Text}
	lines := strings.Split(text, "\n")
	for n := max(1, at.Line-nearMost); at.Line > 0 && n <= min(len(lines), at.Line+nearMost); n++ {
		p.Near = append(p.Near, NearLine{n, CutShort(strings.TrimRight(lines[n-1], "\r"), longestNear), n == at.Line})
	}
	return p
}

// SentDocument returns the document of a form: the file, else the text typed.
// A browser sends the text's lines with CRLF, whatever they were.
func SentDocument(r *http.Request) (string, error) {
	f, _, err := r.FormFile("file")
	if err == nil {
		defer f.Close()
		data, err := io.ReadAll(f)
		if err != nil || len(data) > 0 {
			return string(data), err
		}
	}
	return strings.ReplaceAll(r.PostFormValue("text"), "\r\n", "\n"), nil
}

// IsText reports whether what was sent is text that people read.
func IsText(sent string) bool { return utf8.ValidString(sent) && !strings.ContainsRune(sent, 0) }

// kindOf says what a file that is no text seems to be.
func kindOf(sent string) string {
	kind, _, _ := strings.Cut(http.DetectContentType([]byte(sent)), ";")
	switch {
	case strings.HasPrefix(kind, "image/"):
		return "a picture"
	case kind == "application/pdf":
		return "a PDF"
	case kind == "application/zip" || kind == "application/x-gzip":
		return "an archive"
	}
	return "no text"
}

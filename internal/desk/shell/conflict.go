package shell

import (
	"errors"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
)

// conflictPage is shown to the second of two who saved: what the first changed,
// and both joined, to be saved or thrown away.
type conflictPage struct {
	Frame
	ID      string
	Head    revision.Version
	What    string
	Diff    []DiffLine
	Merged  string
	Clashes []revision.Clash
	Problem *Problem // why the merge is no sound arena yet
}

func (s *Shell) showConflict(w http.ResponseWriter, r *http.Request, late *shelf.Late) error {
	page := conflictPage{Frame: s.Frame(r, "Somebody saved before you"), ID: late.Head.Document, Head: late.Head, What: late.What}
	page.Diff = DiffLines(late.From.Text, late.Head.Text)
	var at *form.Problem
	var wrong error
	if page.Merged, page.Clashes, wrong = late.Merged(); errors.As(wrong, &at) {
		page.Problem = problemAt(at, page.Merged)
	}
	return s.Page(w, r, http.StatusConflict, "conflict.tmpl", page)
}

// DiffLine is a line of what changed between two texts.
type DiffLine struct {
	Kind string // "gone", "come", "place" or ""
	Text string
}

// DiffLines returns what changed between two texts, without their names; none
// when nothing did.
func DiffLines(from, to string) (out []DiffLine) {
	kinds := map[byte]string{'-': "gone", '+': "come", '@': "place"}
	lines := strings.Split(strings.TrimSuffix(revision.Diff(from, to, "", ""), "\n"), "\n")
	for _, line := range lines[min(2, len(lines)):] {
		if line != "" {
			out = append(out, DiffLine{kinds[line[0]], line})
		}
	}
	return out
}

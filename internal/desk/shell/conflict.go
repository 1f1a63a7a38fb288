package shell

import (
	"context"
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
	var err error
	if page.Diff, err = DiffLines(r.Context(), late.From.Text, late.Head.Text); err != nil {
		return err
	}
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
// when nothing did. The error is ctx's.
func DiffLines(ctx context.Context, from, to string) (out []DiffLine, err error) {
	c, err := revision.Compare(ctx, from, to, "", "")
	if err != nil {
		return nil, err
	}
	kinds := map[byte]string{'-': "gone", '+': "come", '@': "place"}
	lines := strings.Split(strings.TrimSuffix(c.Text, "\n"), "\n")
	for _, line := range lines[min(2, len(lines)):] {
		if line != "" {
			out = append(out, DiffLine{kinds[line[0]], line})
		}
	}
	return out, nil
}

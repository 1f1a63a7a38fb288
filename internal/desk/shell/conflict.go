package shell

import (
	"errors"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
)

// conflict says that somebody saved since the version that a save was made from.
type conflict struct {
	*revision.Stale
	from shelf.Book
	mine string
	what string
}

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

func (s *Shell) showConflict(w http.ResponseWriter, r *http.Request, c *conflict) error {
	page := conflictPage{Frame: s.Frame(r, "Somebody saved before you"), ID: c.from.Document.ID, Head: c.Head, What: c.what}
	page.Diff = DiffLines(c.from.Version.Text, c.Head.Text)
	page.Merged, page.Clashes = revision.Merge(c.from.Version.Text, c.mine, c.Head.Text)
	var at *form.Problem
	if _, err := s.Shelf.Read(page.ID, page.Merged); errors.As(err, &at) {
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

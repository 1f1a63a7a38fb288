package shell

import (
	"context"
	"errors"
	"maps"
	"net/http"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
)

// conflictPage is shown to the second of two who saved: what the first changed,
// and both joined, to be saved or thrown away.
type conflictPage struct {
	Frame
	ID      string
	Who     string
	Head    revision.Version
	What    string
	Diff    []DiffLine
	Merged  string
	Clashes []revision.Clash
	Problem *Problem // why the merge is no sound arena yet
}

func (s *Shell) showConflict(w http.ResponseWriter, r *http.Request, late *shelf.Late) error {
	who := door.Named(late.Head.Who)
	if len(late.Both) > 0 {
		return s.askConflict(w, r, late, who)
	}
	page := conflictPage{Frame: s.Frame(r, "Somebody saved before you"), ID: late.Head.Document, Who: who, Head: late.Head, What: late.What}
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

// bothPage asks whose change shall count where two changed the same.
type bothPage struct {
	Frame
	ID, Who string
	Head    revision.Version
	What    string // of what was to be saved
	Parts   string // what both changed: "hole B2 and the boards"
	Action  string
	Fields  []Fact // of the form, made on the newest version
}

func (s *Shell) askConflict(w http.ResponseWriter, r *http.Request, late *shelf.Late, who string) error {
	parts := make([]string, len(late.Both))
	for i, p := range late.Both {
		parts[i] = partWords(p)
	}
	page := bothPage{ID: late.Head.Document, Who: who, Head: late.Head, What: late.What, Parts: say.Names(parts), Action: r.URL.RequestURI()}
	page.Frame = s.Frame(r, "You both changed "+page.Parts)
	page.Fields = Resent(r, late.Head.Number)
	return s.Page(w, r, http.StatusConflict, "both.tmpl", page)
}

// Resent returns the fields of a form to be sent once more, made on a newer version.
func Resent(r *http.Request, base int) (out []Fact) {
	for _, name := range slices.Sorted(maps.Keys(r.PostForm)) {
		for _, value := range r.PostForm[name] {
			if name == "base" {
				value = strconv.Itoa(base)
			}
			if name != "once" { // it is another change now
				out = append(out, Fact{name, value})
			}
		}
	}
	return out
}

// partWords names a part of an arena in a sentence: "hole B2", "the boards".
func partWords(part string) string {
	if id, ok := strings.CutPrefix(part, "holes["); ok {
		return "hole " + strings.TrimSuffix(id, "]")
	}
	return "the " + strings.ReplaceAll(part, "-", " ")
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

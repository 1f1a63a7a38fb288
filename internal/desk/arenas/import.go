package arenas

import (
	"context"
	"errors"
	"net/http"
	"regexp"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// importPage takes a document, and keeps what was typed when it is wrong.
type importPage struct {
	shell.Frame
	Text    string
	Problem *shell.Problem
	Known   *known // where the document seems to come from
}

// known is the arena that a document seems to come from.
type known struct {
	ID, Name string
	Base     int // the version that it was made from
	Same     bool
	Diff     []shell.DiffLine
}

func (d area) importPage(w http.ResponseWriter, r *http.Request) error {
	return d.Page(w, r, http.StatusOK, "import.tmpl", importPage{Frame: d.Frame(r, "Import")})
}

// importArena takes a document in as a new arena, or on top of the one it came
// from; where it seems to come from one and nobody said which, it asks.
func (d area) importArena(w http.ResponseWriter, r *http.Request) error {
	text, err := shell.SentDocument(r)
	if err != nil {
		return err
	}
	doc, err := d.Shelf.Read("arena", text)
	as := r.PostFormValue("as")
	if err == nil && as == "" {
		from, knownErr := d.cameFrom(r.Context(), fileName(r), doc)
		if knownErr != nil {
			return knownErr
		}
		if from != nil {
			return d.Page(w, r, http.StatusOK, "import.tmpl", importPage{d.Frame(r, "Import"), text, nil, from})
		}
	}
	to := ""
	if err == nil {
		to, err = d.takeIn(r, as, doc)
	}
	if err == nil {
		return d.Goto(w, r, "/arena/"+to)
	}
	return d.Again(r, err, text, func(p *shell.Problem) error {
		if !shell.IsText(text) {
			text = "" // nobody reads a picture's bytes
		}
		return d.Page(w, r, p.Status, "import.tmpl", importPage{d.Frame(r, "Import"), text, p, nil})
	})
}

// takeIn adds a document, or puts it on top of the arena that as names, and
// returns the arena's id.
func (d area) takeIn(r *http.Request, as string, doc *arena.Document) (string, error) {
	who := door.Who(r.Context())
	if as == "" || as == "new" {
		added, err := d.Shelf.Add(r.Context(), "", doc, who, "import")
		return added.Document, err
	}
	base, err := strconv.Atoi(r.PostFormValue("base"))
	if err != nil || base < 1 {
		return "", shell.ErrIncomplete
	}
	b, err := d.Book(r, as, base)
	if err != nil {
		return "", err
	}
	_, err = d.Shelf.Join(r.Context(), b, shelf.Change{Who: who, What: "import of an edited file", Edits: []edit.Edit{{Do: edit.Text, Text: string(doc.Bytes())}}})
	return as, err
}

// exported is the name of a file that the desk gave away: its arena and version.
var exported = regexp.MustCompile(`^([a-z0-9-]+)-v([0-9]+)-[0-9a-f]{12}-arena`)

// cameFrom finds the arena that a document was taken from: by the name of its
// file, else by the arena's; nil without one.
func (d area) cameFrom(ctx context.Context, file string, doc *arena.Document) (*known, error) {
	a, err := doc.Check()
	if err != nil {
		return nil, err
	}
	docs, err := d.Shelf.Keeper().Documents(ctx, revision.Arena, false)
	if err != nil {
		return nil, err
	}
	id, base := "", 0
	if m := exported.FindStringSubmatch(file); m != nil {
		id = m[1]
		base, _ = strconv.Atoi(m[2]) // digits
	}
	for _, there := range docs {
		if there.ID != id && (id != "" || there.Name != a.Name) {
			continue
		}
		if base < 1 || base > there.Head {
			base = there.Head
		}
		was, err := d.Shelf.Keeper().Version(ctx, there.ID, base)
		if err != nil {
			return nil, err
		}
		k := &known{ID: there.ID, Name: there.Name, Base: base, Same: was.Text == string(doc.Bytes())}
		k.Diff, err = shell.DiffLines(ctx, was.Text, string(doc.Bytes()))
		return k, err
	}
	if id != "" { // renamed or gone since: the arena's own name may tell
		return d.cameFrom(ctx, "", doc)
	}
	return nil, nil
}

// fileName is the name of the file that was sent, "" for a text.
func fileName(r *http.Request) string {
	_, head, err := r.FormFile("file")
	if errors.Is(err, http.ErrMissingFile) || err != nil {
		return ""
	}
	return strings.TrimSpace(head.Filename)
}

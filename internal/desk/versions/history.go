package versions

import (
	"errors"
	"net/http"
	"strconv"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
)

// versionsPage is the history of an arena: who, when, what, and what changed
// between two versions.
type versionsPage struct {
	shell.Frame
	Way         string // which of the arena's pages this is
	Address     shell.Address
	ID, Name    string
	Head        int
	Away        bool
	shelf.Steps // to the newest
	Versions    []revision.Version
	From, To    int
	Diff        []shell.DiffLine
}

// mostVersions is how many versions a page lists.
const mostVersions = 200

func (d area) versionsPage(w http.ResponseWriter, r *http.Request) error {
	b, at, err := d.Newest(r)
	if err != nil {
		return err
	}
	id, head := b.Document.ID, b.Document.Head
	page := versionsPage{Frame: d.Frame(r, b.Document.Name+": versions"), Way: "versions", Address: at.Shared(), ID: id, Name: b.Document.Name, Head: head, Away: b.Document.Away}
	page.To = numberOr(r.FormValue("to"), head)
	page.From = numberOr(r.FormValue("from"), max(1, page.To-1))
	page.Versions, err = d.Shelf.Keeper().History(r.Context(), id, mostVersions)
	if err == nil {
		page.Steps, err = d.Shelf.Steps(r.Context(), id)
	}
	if err != nil {
		return err
	}
	from, err1 := d.Shelf.Keeper().Version(r.Context(), id, page.From)
	to, err2 := d.Shelf.Open(r.Context(), id, page.To)
	if errors.Join(err1, err2) != nil {
		return shell.ErrNoVersion
	}
	if page.Diff, err = shell.DiffLines(r.Context(), from.Text, to.Version.Text); err != nil {
		return err
	}
	return d.Page(w, r, http.StatusOK, "versions.tmpl", page)
}

// numberOr reads a version's number, or takes another when there is none.
func numberOr(text string, other int) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 {
		return other
	}
	return n
}

// longestWhat is the most characters of what a version says of itself.
const longestWhat = 160

// restore puts an older version on top.
func (d area) restore(w http.ResponseWriter, r *http.Request) error {
	id, version := r.PathValue("slug"), numberOr(r.PostFormValue("version"), 0)
	from, err1 := d.Base(r)
	old, err2 := d.Shelf.Open(r.Context(), id, version)
	if version == 0 || errors.Join(err1, err2) != nil {
		return shell.ErrNoVersion
	}
	to, err := d.Shelf.Steps(r.Context(), id)
	if err != nil {
		return err
	}
	what := r.PostFormValue("what")
	switch act := r.PostFormValue("act"); {
	case act == "undo" && version == to.Undo:
		what = shell.CutShort("undo: "+to.Undoes, longestWhat)
	case act == "redo" && version == to.Redo:
		what = shell.CutShort("redo: "+to.Redoes, longestWhat)
	case what == "":
		what = "restore version " + strconv.Itoa(version)
	}
	if _, err := d.Shelf.Restore(r.Context(), old, from.Version.Number, door.Who(r.Context()), what); err != nil {
		return d.Again(r, err, old.Version.Text, func(p *shell.Problem) error {
			return shell.Refuse(p.Status, "This version could not be put on top.", p.Text)
		})
	}
	return d.BackTo(w, r, old.Arena)
}

// putAway takes an arena off the list, or puts it back.
func (d area) putAway(w http.ResponseWriter, r *http.Request) error {
	id := r.PathValue("slug")
	away, err := shell.YesOrNo(r, "away")
	if err != nil {
		return err
	}
	if err := d.Shelf.Keeper().SetAway(r.Context(), id, away); err != nil {
		return err
	}
	d.Log.InfoContext(r.Context(), "desk", "arena", id, "away", away, "who", door.Who(r.Context()))
	return d.Goto(w, r, "/")
}

// Beside returns where the plans of both versions stand side by side.
func (p versionsPage) Beside() string {
	return p.Address.Beside("/compare", "left", p.ID+"@"+strconv.Itoa(p.From), "right", p.ID+"@"+strconv.Itoa(p.To))
}

// Look returns where a version is looked at.
func (p versionsPage) Look(number int) string {
	return p.Address.Beside("/versions", "to", strconv.Itoa(number))
}

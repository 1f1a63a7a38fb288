package desk

import (
	"errors"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/parcel"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
)

// versionsPage is the history of an arena: who, when, what, and what changed
// between two versions.
type versionsPage struct {
	frame
	Way        string // which of the arena's pages this is
	Address    address
	ID, Name   string
	Head       int
	Away       bool
	Undo, Redo int // versions to put on top; 0 without one
	Versions   []versionRow
	From, To   int
	Diff       []diffLine
	Files      []fileRow // of version To
}

type versionRow struct {
	revision.Version
	When   string
	Newest bool
}

type diffLine struct {
	Kind string // "gone", "come", "place" or ""
	Text string
}

// fileRow is a file to take away, or one for each hole.
type fileRow struct {
	Name, Words, Path string
	Holes             []fileRow
}

// mostVersions is how many versions a page lists.
const mostVersions = 200

func (d *Desk) versionsPage(w http.ResponseWriter, r *http.Request) {
	b, ok := d.bookOf(w, r)
	if !ok {
		return
	}
	id := b.Document.ID
	at, err := readAddress(id, r.URL.Query())
	if err != nil {
		d.fail(w, r, http.StatusBadRequest, "This address leads nowhere.", sentenceOf(err))
		return
	}
	page := versionsPage{frame: d.frame(r, b.Document.Name+": versions"), Way: "versions", Address: at.shared(), ID: id, Name: b.Document.Name, Head: b.Document.Head, Away: b.Document.Away}
	page.To = numberOr(r.FormValue("to"), page.Head)
	page.From = numberOr(r.FormValue("from"), max(1, page.To-1))
	versions, err := d.shelf.Keeper().History(r.Context(), id, mostVersions)
	if err == nil {
		page.Undo, page.Redo, err = d.shelf.Steps(r.Context(), id)
	}
	if err != nil {
		d.broken(w, r, err)
		return
	}
	for _, v := range versions {
		page.Versions = append(page.Versions, versionRow{v, v.At.Format("2 Jan 2006, 15:04 MST"), v.Number == page.Head})
	}
	from, err1 := d.shelf.Keeper().Version(r.Context(), id, page.From)
	to, err2 := d.shelf.Open(r.Context(), id, page.To)
	if err := errors.Join(err1, err2); err != nil {
		d.fail(w, r, http.StatusNotFound, "This arena has no such version.", "Go back and pick one of the list.")
		return
	}
	diff, err := revision.Diff(from.Text, to.Version.Text, "", "")
	if err != nil {
		d.broken(w, r, err)
		return
	}
	page.Diff, page.Files = diffLines(diff), filesOf(to)
	d.show(w, r, http.StatusOK, "versions.tmpl", page)
}

// numberOr reads a version's number, or takes another when there is none.
func numberOr(text string, other int) int {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 {
		return other
	}
	return n
}

func filesOf(b shelf.Book) []fileRow {
	var out []fileRow
	for _, k := range parcel.Kinds() {
		row := fileRow{Name: parcel.Name(b, k), Words: k.Words(), Path: "/api/arenas/" + b.Document.ID + "/files/" + string(k) + "?version=" + strconv.Itoa(b.Version.Number)}
		if k == parcel.Outline {
			for _, hole := range b.Arena.Items("holes") {
				id := strings.TrimSuffix(strings.TrimPrefix(hole, "holes["), "]")
				row.Holes = append(row.Holes, fileRow{Name: id, Path: row.Path + "&hole=" + url.QueryEscape(id)})
			}
			if row.Holes == nil {
				continue
			}
		}
		out = append(out, row)
	}
	return out
}

// diffLines sets a unified diff without the names of its sides as lines with a kind each.
func diffLines(diff string) []diffLine {
	var out []diffLine
	for line := range strings.SplitSeq(strings.TrimSuffix(diff, "\n"), "\n") {
		switch {
		case line == "":
		case line[0] == '-':
			out = append(out, diffLine{"gone", line})
		case line[0] == '+':
			out = append(out, diffLine{"come", line})
		case line[0] == '@':
			out = append(out, diffLine{"place", line})
		default:
			out = append(out, diffLine{"", line})
		}
	}
	return out
}

// restore puts an older version on top.
func (d *Desk) restore(w http.ResponseWriter, r *http.Request) {
	id := r.PathValue("slug")
	base, version := numberOr(r.PostFormValue("base"), 0), numberOr(r.PostFormValue("version"), 0)
	old, err1 := d.shelf.Open(r.Context(), id, version)
	from, err2 := d.shelf.Open(r.Context(), id, base)
	if base == 0 || version == 0 || errors.Join(err1, err2) != nil {
		d.fail(w, r, http.StatusNotFound, "This arena has no such version.", "Go back and pick one of the list.")
		return
	}
	what := r.PostFormValue("what")
	switch act := r.PostFormValue("act"); {
	case act == "undo":
		what = shortened("undo: " + from.Version.What)
	case act == "redo":
		what = shortened("redo: " + old.Version.What)
	case what == "":
		what = "restore version " + strconv.Itoa(version)
	}
	d.saveOver(w, r, from, old.Version.Text, what, func(p *problemView, status int) {
		d.fail(w, r, status, "This version could not be put on top.", p.Text)
	})
}

// putAway takes an arena off the list, or puts it back.
func (d *Desk) putAway(w http.ResponseWriter, r *http.Request) {
	away := r.PostFormValue("away") == "yes"
	if !away && r.PostFormValue("away") != "no" {
		d.fail(w, r, http.StatusBadRequest, "This form is incomplete.", "Open the page again and try once more.")
		return
	}
	switch err := d.shelf.Keeper().SetAway(r.Context(), r.PathValue("slug"), away); {
	case errors.Is(err, revision.ErrNone):
		d.fail(w, r, http.StatusNotFound, "No arena has this address.", "Go back to the list of arenas and pick one.")
	case err != nil:
		d.broken(w, r, err)
	default:
		d.log.Info("desk", "arena", r.PathValue("slug"), "away", away, "who", door.Who(r.Context()))
		http.Redirect(w, r, "/", http.StatusSeeOther)
	}
}

// Beside returns where the plans of both versions stand side by side.
func (p versionsPage) Beside() string {
	return p.Address.beside("/compare", "left", p.ID+"@"+strconv.Itoa(p.From), "right", p.ID+"@"+strconv.Itoa(p.To))
}

// Look returns where a version is looked at.
func (p versionsPage) Look(number int) string {
	return p.Address.beside("/versions", "to", strconv.Itoa(number))
}

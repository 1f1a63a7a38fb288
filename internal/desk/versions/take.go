package versions

import (
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/desk/parcel"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
)

// takePage is all that can be taken away from a version, in one place.
type takePage struct {
	shell.Frame
	Way      string // which of the arena's pages this is
	Address  shell.Address
	Document revision.Document
	Version  revision.Version
	Mark     string
	Whole    fileRow // the one that most want
	Groups   []fileGroup
	Lack     string // what the drawings' fonts lack of it
}

type fileGroup struct {
	Name, For string
	Files     []fileRow
	Letter    bool // beside them: the page for the manager, which a choice makes
}

// fileRow is a file to take away, or one for each hole.
type fileRow struct {
	Name, Words, Path string
	Holes             []fileRow
}

// groups are the kinds as people look for them.
var groups = []struct {
	name, whom string
	letter     bool
	kinds      []parcel.Kind
}{
	{"For the shop", "who cuts the pane", false, []parcel.Kind{parcel.Cut, parcel.Outline}},
	{"To ask and to sign", "manager, operator, league", true, []parcel.Kind{parcel.Book, parcel.BookPage}},
	{"Pictures", "to look at and to mail", false, []parcel.Kind{parcel.Map, parcel.Strip}},
	{"Numbers", "a spreadsheet, a program", false, []parcel.Kind{parcel.Tables, parcel.PlanJSON}},
	{"To keep", "to open again, here or elsewhere", false, []parcel.Kind{parcel.Document, parcel.Archive}},
}

// takePage answers GET /arena/{slug}/take?version=N.
func (d area) takePage(w http.ResponseWriter, r *http.Request) error {
	at, err := shell.ReadAddress(r.PathValue("slug"), r.URL.Query())
	if err != nil {
		return err
	}
	b, err := d.Book(r, at.Slug, at.Version)
	if err != nil {
		return err
	}
	page := takePage{
		Frame: d.Frame(r, "Take "+b.Document.Name+" away"), Way: "take", Address: at.Shared(), Document: b.Document, Version: b.Version, Mark: b.Mark,
		Whole: rowOf(b, at, parcel.Folder), Lack: shell.Sentence(parcel.Lack(b)),
	}
	for _, g := range groups {
		made := fileGroup{Name: g.name, For: g.whom, Letter: g.letter}
		for _, k := range g.kinds {
			if row := rowOf(b, at, k); k != parcel.Outline || row.Holes != nil {
				made.Files = append(made.Files, row)
			}
		}
		page.Groups = append(page.Groups, made)
	}
	return d.Page(w, r, http.StatusOK, "take.tmpl", page)
}

// rowOf is a kind of a book as a row, in the units of an address.
func rowOf(b shelf.Book, at shell.Address, k parcel.Kind) fileRow {
	q := url.Values{"version": {strconv.Itoa(b.Version.Number)}}
	if at.System != "" {
		q.Set("units", at.System)
	}
	path := "/api/arenas/" + b.Document.ID + "/files/" + string(k) + "?"
	row := fileRow{Name: parcel.Name(b, k), Words: k.Words(), Path: path + q.Encode()}
	if k == parcel.Outline {
		for _, hole := range b.Arena.Items("holes") {
			id := strings.TrimSuffix(strings.TrimPrefix(hole, "holes["), "]")
			q.Set("hole", id)
			row.Holes = append(row.Holes, fileRow{Name: id, Path: path + q.Encode()})
		}
	}
	return row
}

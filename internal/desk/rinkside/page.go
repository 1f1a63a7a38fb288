package rinkside

import (
	"net/http"
	"strings"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

// servicePage is what the pages of an arena's holes in service have in common.
type servicePage struct {
	shell.Frame
	Way     string // which of the arena's pages this is
	Tab     string // which of these
	Address shell.Address
	Name    string     // of the arena
	ID      custody.ID // under which the page's form is told, once
	Minds   bool       // the visitor may mind covers
	Message string     // why something could not be done; ""
	book    shelf.Book
	record  record
}

// tabs are the pages of holes in service: what stands in the address, and the name.
var tabs = []struct{ Path, Name string }{
	{"covers", "Covers"}, {"inspections", "Inspections"}, {"approvals", "Approvals"},
	{"incidents", "Incidents"}, {"season", "Season"}, {"audit", "Who did what"},
}

// service opens an arena for one of its pages.
func (d area) service(r *http.Request, tab string) (servicePage, error) {
	b, at, err := d.Newest(r)
	if err != nil {
		return servicePage{}, err
	}
	rec, err := d.Records.Of(r.Context(), b.Document.ID)
	if err != nil {
		return servicePage{}, err
	}
	id, err := d.pen.id(d.Random)
	return servicePage{
		Frame: d.Frame(r, b.Document.Name+": "+tab), Way: "covers", Tab: tab, Address: at.Shared(), Name: b.Document.Name,
		ID: id, Minds: door.May(r.Context(), people.MindCovers), book: b, record: rec,
	}, err
}

// Tabs are the ways to the pages of holes in service.
func (p servicePage) Tabs() []shell.Option {
	out := make([]shell.Option, len(tabs))
	for i, t := range tabs {
		out[i] = shell.Option{Name: t.Name, URL: p.Address.Beside("/" + t.Path), Chosen: t.Path == p.Tab}
	}
	return out
}

// Plain writes a word of the record for people: "puck-through" is "puck through".
func (servicePage) Plain(word any) string {
	switch w := word.(type) {
	case custody.Mishap:
		return strings.ReplaceAll(string(w), "-", " ")
	case custody.Quantity:
		return strings.ReplaceAll(string(w), "-", " ")
	case string:
		return strings.ReplaceAll(w, "-", " ")
	}
	return ""
}

// holes lists the ids of the holes that the document has working.
func (p servicePage) holes() ([]string, error) {
	a, err := p.book.Arena.Check()
	if err != nil {
		return nil, err
	}
	var out []string
	for _, h := range a.Working() {
		out = append(out, h.ID)
	}
	return out, nil
}

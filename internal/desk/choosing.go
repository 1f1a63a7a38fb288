package desk

import (
	"embed"
	"io/fs"
	"net/http"

	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

// The pages where holes are chosen still stand beside the desk itself; what
// follows is how they see the shell.

//go:embed templates
var chooseTemplates embed.FS

type (
	frame   = shell.Frame
	address = shell.Address
)

var (
	readAddress = shell.ReadAddress
	sharedOf    = shell.SharedOf
	sentenceOf  = shell.SentenceOf
)

type fact struct{ Name, Value string }

type choice struct {
	Value, Name string
	Chosen      bool
}

const mapWidth = shell.MapWidth

func (d *Desk) choosing() shell.Area {
	files, _ := fs.Sub(chooseTemplates, "templates") // the folder is embedded
	plain := func(h http.HandlerFunc) shell.Answer {
		return func(w http.ResponseWriter, r *http.Request) error { h(w, r); return nil }
	}
	const page = "/arena/{slug}/choose"
	return shell.Area{Templates: files, Routes: []shell.Route{
		{Pattern: "GET " + page, Need: people.Read, Most: shell.Form, Answer: plain(d.showChoice), Samples: []string{"/arena/" + shell.SampleArena + "/choose"}},
		{Pattern: "POST " + page, Need: people.Plan, Most: shell.Form, Answer: plain(d.startChoice)},
		{Pattern: "GET " + page + "/{job}/events", Need: people.Read, Most: shell.Form, Answer: plain(d.choiceEvents)},
		{Pattern: "POST " + page + "/{job}/cancel", Need: people.Plan, Most: shell.Form, Answer: plain(d.cancelChoice)},
		{Pattern: "POST " + page + "/{job}/accept", Need: people.Plan, Most: shell.Form, Answer: plain(d.acceptChoice)},
	}}
}

func (d *Desk) frame(r *http.Request, title string) frame { return d.shell.Frame(r, title) }

func (d *Desk) fail(w http.ResponseWriter, r *http.Request, status int, what, cure string) {
	d.shell.Fail(w, r, shell.Refuse(status, what, cure))
}

func (d *Desk) broken(w http.ResponseWriter, r *http.Request, err error) { d.shell.Fail(w, r, err) }

func (d *Desk) refusePicture(w http.ResponseWriter, r *http.Request, err error) {
	d.shell.Fail(w, r, err)
}

func (d *Desk) nowhere(w http.ResponseWriter, r *http.Request) { d.shell.Fail(w, r, shell.ErrNowhere) }

func (d *Desk) show(w http.ResponseWriter, r *http.Request, status int, name string, page any) {
	if err := d.shell.Page(w, r, status, name, page); err != nil {
		d.shell.Fail(w, r, err)
	}
}

func (d *Desk) book(w http.ResponseWriter, r *http.Request, slug string, version int) (shelf.Book, bool) {
	b, err := d.shell.Book(r, slug, version)
	if err != nil {
		d.shell.Fail(w, r, err)
	}
	return b, err == nil
}

// Way names the page among the ways.
func (p choosePage) Way() string { return "choose" }

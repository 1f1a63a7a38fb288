// Package desk answers: what does a plan look like on a page of one's own
// machine? It serves the arenas it was given, each as a page: the plan map
// above the boards strip, the findings, and the tables of the hole picked.
//
//	GET /                       the demo for a newcomer, else the arenas
//	GET /arenas                 the arenas
//	GET /arena/{slug}           the plan, worked on with hands; ?hole=ID picks a hole
//	POST /arena/{slug}/holes    what hands do to a hole, saved as a version
//	POST /arena/{slug}/live     what follows while a hole is dragged, nothing saved
//	GET /arena/{slug}/survey    the document's parts as forms (package blank)
//	GET /arena/{slug}/compare   two plans side by side
//	GET /arena/{slug}/paper     everything for printing
//	GET /arena/{slug}/picture   through the lens (package finder)
//	GET /arena/{slug}/choose    choose the best holes, live (package bench)
//	POST /theme                 dim, light, or as the machine says
//	GET /sign-in                who are you? (package door)
//	GET /account                one's own password and sessions
//	GET /assets/{hash}/{name}   style sheets, modules, icon
//	/api/...                    the same engine as JSON (package api)
//
// The model: a page is a function of its address and of the versions on the
// shelf (package shelf). Whatever can be picked stands in the address, so that it
// can be bookmarked and mailed; HTML and drawings are made by Go from one
// [plan.Plan]; modules of JavaScript save a reload, add keys and drag. What is
// changed is changed by forms that work without a script, or over the API. Every address stands in one table, with who
// may ask for it: routes.go.
package desk

import (
	"html/template"
	"io"
	"log/slog"
	"net/http"
	"time"

	"github.com/danielgtaylor/huma/v2"

	"example.org/rinkpane/internal/desk/api"
	"example.org/rinkpane/internal/desk/bench"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/parcel"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/people"
)

// Options is what a desk needs.
type Options struct {
	Shelf    *shelf.Shelf
	Register people.Register
	// SignIn asks for sign-in even while nobody is set up: the desk can be
	// reached from other machines.
	SignIn  bool
	Code    string // what the first person set up on a page must know; see [door.Options]
	Version string // of the program
	Log     *slog.Logger
	Now     func() time.Time
	Random  io.Reader // for sessions: crypto/rand
}

// Desk serves the pages. Make one with New; it is safe for many requests at once.
type Desk struct {
	shelf     *shelf.Shelf
	register  people.Register
	door      *door.Door
	calls     *http.ServeMux // of the API
	spec      *huma.OpenAPI
	version   string
	templates *template.Template
	assets    assetSet
	darkroom  *darkroom
	bench     *bench.Bench[progress, chosen]
	choices   choices
	random    io.Reader
	log       *slog.Logger
}

// New makes a desk over a shelf of arenas.
func New(o Options) (*Desk, error) {
	d := &Desk{shelf: o.Shelf, register: o.Register, version: o.Version, darkroom: newDarkroom(), bench: bench.New[progress, chosen](), random: o.Random, log: o.Log}
	d.door = door.New(door.Options{
		Register: o.Register, Always: o.SignIn, Code: o.Code, Now: o.Now, Random: o.Random, Log: o.Log, Refuse: d.refuse,
	})
	d.calls = http.NewServeMux()
	d.spec = api.Mount(d.calls, api.Options{
		Shelf: d.shelf, Packer: parcel.New(d.shelf, "rinkpane "+d.version), Who: door.Who, Version: d.version, Log: d.log,
	})
	var err error
	if d.assets, err = loadAssets(); err != nil {
		return nil, err
	}
	if d.templates, err = loadTemplates(d.assets); err != nil {
		return nil, err
	}
	return d, nil
}

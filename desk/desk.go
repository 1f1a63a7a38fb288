// Package desk answers: what does a plan look like on a page of one's own
// machine? It serves the arenas it was given, each as a page: the plan map
// above the boards strip, the findings, and the tables of the hole picked.
//
//	GET /                       the arenas
//	GET /arena/{slug}           one arena; ?hole=ID picks a hole
//	POST /theme                 dim, light, or as the machine says
//	GET /assets/{hash}/{name}   style sheets, modules, icon
//
// The model: a page is a function of its address and of the versions on the
// shelf (package shelf). Whatever can be picked stands in the address, so that it
// can be bookmarked and mailed; HTML and drawings are made by Go from one
// [plan.Plan]; modules of JavaScript save a reload, add keys and drag. What is
// changed is changed over the API below /api (package api).
package desk

import (
	"html/template"
	"log/slog"
	"net/http"

	"example.org/rinkpane/desk/shelf"
)

// Options is what a desk needs.
type Options struct {
	Shelf   *shelf.Shelf
	Version string // of the program
	Log     *slog.Logger
}

// Desk serves the pages. Make one with New; it is safe for many requests at once.
type Desk struct {
	shelf     *shelf.Shelf
	version   string
	templates *template.Template
	assets    assetSet
	log       *slog.Logger
}

// New makes a desk over a shelf of arenas.
func New(o Options) (*Desk, error) {
	d := &Desk{shelf: o.Shelf, version: o.Version, log: o.Log}
	var err error
	if d.assets, err = loadAssets(); err != nil {
		return nil, err
	}
	if d.templates, err = loadTemplates(d.assets); err != nil {
		return nil, err
	}
	return d, nil
}

// Handler returns the desk's pages behind their guards.
func (d *Desk) Handler() http.Handler {
	return guard(d.routes())
}

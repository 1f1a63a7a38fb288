// Package desk answers: what does a plan look like on a page of one's own
// machine? It serves the arenas it was given, each as a page: the plan map
// above the boards strip, the findings, and the tables of the hole picked.
//
//	GET /                       the arenas
//	GET /arena/{slug}           one arena; ?hole=ID picks a hole
//	POST /theme                 dim, light, or as the machine says
//	GET /assets/{hash}/{name}   style sheets, modules, icon
//
// The model: a page is a function of its address. Whatever can be picked stands
// in the address, so that it can be bookmarked and mailed; HTML and drawings
// are made by Go from one [plan.Plan]; modules of JavaScript only save a
// reload and add keys. Nothing is stored.
//
// Limits: it reads and never writes; it answers on the loopback address only,
// since nobody signs in.
package desk

import (
	"context"
	"fmt"
	"html/template"
	"log/slog"
	"net/http"
	"sync"

	"example.org/rinkpane/arena"
	"example.org/rinkpane/plan"
)

// Source is one arena on the desk: its document and where it came from.
type Source struct {
	Slug     string // in the address: lower-case letters, digits, hyphens; unique
	Origin   string // for people: a file's name, or "example"
	Document *arena.Document
}

// Planner works out what the pages show; the command gives it kit and rules.
type Planner interface {
	// Prove surveys and checks: quick, for the list of arenas.
	Prove(doc *arena.Document) (plan.Proof, error)
	// Make plans every hole.
	Make(ctx context.Context, doc *arena.Document) (plan.Plan, error)
}

// Desk holds what the pages show. Make one with New; it is safe for many
// requests at once.
type Desk struct {
	shelves   []*shelf
	templates *template.Template
	assets    assetSet
	log       *slog.Logger
}

// shelf is one arena with what was worked out for it, each part when it is
// first looked at.
type shelf struct {
	Source
	prove func() (plan.Proof, error)
	make  func() (plan.Plan, error)
}

func newShelf(s Source, p Planner) *shelf {
	return &shelf{
		Source: s,
		prove:  sync.OnceValues(func() (plan.Proof, error) { return p.Prove(s.Document) }),
		// The plan outlives the request that first asked: another visitor may wait for it.
		make: sync.OnceValues(func() (plan.Plan, error) { return p.Make(context.Background(), s.Document) }),
	}
}

// New makes a desk of some arenas, at least one, in the order of their list.
func New(sources []Source, planner Planner, log *slog.Logger) (*Desk, error) {
	if len(sources) == 0 {
		return nil, fmt.Errorf("a desk needs at least one arena")
	}
	d := &Desk{log: log}
	seen := map[string]bool{}
	for _, s := range sources {
		if !validSlug(s.Slug) || seen[s.Slug] {
			return nil, fmt.Errorf("arena %q: an address needs lower-case letters, digits and hyphens, each arena its own", s.Slug)
		}
		seen[s.Slug] = true
		d.shelves = append(d.shelves, newShelf(s, planner))
	}
	var err error
	if d.assets, err = loadAssets(); err != nil {
		return nil, err
	}
	if d.templates, err = loadTemplates(d.assets); err != nil {
		return nil, err
	}
	return d, nil
}

func (d *Desk) shelf(slug string) (*shelf, bool) {
	for _, s := range d.shelves {
		if s.Slug == slug {
			return s, true
		}
	}
	return nil, false
}

func validSlug(s string) bool {
	for _, r := range s {
		if r != '-' && (r < 'a' || r > 'z') && (r < '0' || r > '9') {
			return false
		}
	}
	return s != ""
}

// Handler returns the desk's pages behind their guards.
func (d *Desk) Handler() http.Handler {
	return guard(d.routes())
}

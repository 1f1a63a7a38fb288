// Package desk answers: what does a plan look like on a page of one's own
// machine? It serves the arenas it was given, each as a page: the plan map
// above the boards strip, the findings, and the tables of the hole picked.
//
// The model: a page is a function of its address and of the versions on the
// shelf (package shelf). Whatever can be picked stands in the address, so that it
// can be bookmarked and mailed; HTML and drawings are made by Go from one
// [plan.Plan]; modules of JavaScript save a reload, add keys and drag. What is
// changed is changed by forms that work without a script, or over the API.
//
// The desk is a shell (package shell) and a folder for each area of it, with its
// addresses, handlers, views and templates: no area knows another. Whoever adds
// an area makes a folder and adds it to [New]; whoever adds a page adds a route
// with samples of its address, a file and a test.
package desk

import (
	"embed"
	"io"
	"io/fs"
	"log/slog"
	"net/http"
	"net/netip"
	"time"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/desk/access"
	"example.org/rinkpane/internal/desk/api"
	"example.org/rinkpane/internal/desk/arenas"
	"example.org/rinkpane/internal/desk/choosing"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/health"
	"example.org/rinkpane/internal/desk/holes"
	"example.org/rinkpane/internal/desk/jobs"
	"example.org/rinkpane/internal/desk/learn"
	"example.org/rinkpane/internal/desk/library"
	"example.org/rinkpane/internal/desk/night"
	"example.org/rinkpane/internal/desk/parcel"
	"example.org/rinkpane/internal/desk/picture"
	"example.org/rinkpane/internal/desk/results"
	"example.org/rinkpane/internal/desk/rinkside"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/desk/survey"
	"example.org/rinkpane/internal/desk/versions"
	"example.org/rinkpane/internal/keep/job"
	"example.org/rinkpane/internal/keep/people"
)

// Options is what a desk needs.
type Options struct {
	Shelf    *shelf.Shelf
	Register people.Register
	Covers   custody.Keeper // what happens to holes after they were cut
	// SignIn asks for sign-in even while nobody is set up: the desk can be
	// reached from other machines.
	SignIn  bool
	Code    string         // what the first person set up on a page must know; see [door.Options]
	Behind  []netip.Prefix // servers before the desk; see [door.Options]
	Version string         // of the program
	Log     *slog.Logger
	Now     func() time.Time
	Random  io.Reader         // for sessions: crypto/rand
	Close   func()            // closes the desk from a page; nil where that is not a page's to do
	Health  health.Options    // its clock is Now unless it has one
	Jobs    *jobs.Backlog     // where durable jobs wait; nil for none. The desk closes it
	Rules   []league.Document // the usual rule sets, as jobs are told them
	// Drain is how long the desk goes on answering after it was told to close and says
	// that it is not ready, so that a balancer sends visitors elsewhere first.
	Drain time.Duration
}

// Desk serves the pages. Make one with New; it is safe for many requests at once.
type Desk struct {
	shell   *shell.Shell
	door    *door.Door
	table   []shell.Route // every address
	handler http.Handler
	health  *health.Monitor
	drain   time.Duration

	jobs    choosing.Keeper // long work beside the requests
	backlog *jobs.Backlog   // of durable jobs; nil for none
}

//go:embed assets
var assetFiles embed.FS

// New makes a desk over a shelf of arenas.
func New(o Options) (*Desk, error) {
	files, err := fs.Sub(assetFiles, "assets")
	if err != nil {
		return nil, err
	}
	s, err := shell.New(o.Shelf, o.Log, files)
	if err != nil {
		return nil, err
	}
	s.Close = o.Close
	d := &Desk{shell: s, backlog: o.Jobs, jobs: job.InMemory[choosing.About, choosing.Progress, choose.Answer]()}
	d.door = door.New(door.Options{
		Register: o.Register, Always: o.SignIn, Behind: o.Behind, Code: o.Code, Now: o.Now, Random: o.Random, Log: o.Log, Refuse: access.Refuse(s),
	})
	records := shelf.NewRecords(o.Covers)
	for _, a := range []shell.Area{
		s.Own(),
		arenas.New(s),
		library.New(s),
		holes.New(s),
		survey.New(s),
		picture.New(s, o.Version),
		versions.New(s),
		choosing.New(s, d.jobs, o.Random, "rinkpane "+o.Version),
		rinkside.New(s, rinkside.Options{Keeper: o.Covers, Records: records, Door: d.door, Now: o.Now, Random: o.Random, Creator: "rinkpane " + o.Version}),
		results.New(s, results.Options{Records: records, Now: o.Now, Creator: "rinkpane " + o.Version}),
		night.New(s, night.Options{Door: d.door, Records: records, Now: o.Now, Creator: "rinkpane " + o.Version}),
		learn.New(s),
		jobs.New(s, jobs.Options{Backlog: o.Jobs, Rules: o.Rules, Now: o.Now}),
		access.New(s, d.door),
		api.New(s, api.Options{Shelf: o.Shelf, Packer: parcel.New(o.Shelf, o.Covers, "rinkpane "+o.Version), Who: door.Who, Version: o.Version, Log: o.Log}),
	} {
		routes, err := s.Add(a)
		if err != nil {
			return nil, err
		}
		d.table = append(d.table, routes...)
	}
	d.drain = o.Drain
	if o.Health.Now == nil {
		o.Health.Now = o.Now
	}
	d.health = health.New(o.Health)
	d.health.Gauge("rinkpane_heavy_at_work", func() float64 { atWork, _ := s.Turns(); return float64(atWork) })
	d.health.Gauge("rinkpane_heavy_waiting", func() float64 { _, waiting := s.Turns(); return float64(waiting) })
	d.handler = d.health.Front(d.door.Guard(s.Serve(d.table, d.door, d.health.Around)))
	return d, nil
}

// Health returns what watches the desk.
func (d *Desk) Health() *health.Monitor { return d.health }

// Handler returns the desk behind its door.
func (d *Desk) Handler() http.Handler { return d.handler }

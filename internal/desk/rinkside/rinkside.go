// Package rinkside is where covers are minded: on a phone at the glass, and on the
// board that everybody sees.
//
//	phone, desk --> events --> custody.Keeper --> record (history) --> board
//	    ^                                                                |
//	    '------------------------- live, as it changes ------------------'
//
// The model: whoever may mind covers has a [pass], by signing in or by a day link; a
// phone makes its events itself, keeps them until they are receipted, and shows the
// board that the desk folds from all of them. So two phones and a screen show one
// history, whoever was without a network meanwhile.
//
//	/phone/{slug}   the page at the glass for who signed in
//	/day/{token}    the same for a steward with a day link; it opens nothing else
package rinkside

import (
	"embed"
	"io"
	"net/http"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed *.tmpl
var templates embed.FS

// Options is what the area needs beside the shell.
type Options struct {
	Keeper custody.Keeper
	Door   *door.Door // whose secret signs day links
	Now    func() time.Time
	Random io.Reader
}

type area struct {
	*shell.Shell
	Options
	records *records
	watches *watches
}

// mostBatch is how much a phone may send at once, in bytes: [custody.MaxBatch] events
// with some words each.
const mostBatch = 512 << 10

// New returns the area.
func New(s *shell.Shell, o Options) shell.Area {
	d := area{s, o, newRecords(o.Keeper), &watches{all: map[string]*watch{}}}
	routes := []shell.Route{
		{Pattern: "GET /phone.js", Need: door.Open, Most: shell.Form, Answer: d.worker},
	}
	for _, way := range []struct {
		path   string
		need   people.Act
		enter  entrance
		sample string
	}{
		{"/phone/{slug}", people.MindCovers, d.signedIn, "/phone/" + shell.SampleArena},
		{"/day/{token}", door.Open, d.byLink, ""},
	} {
		row := func(method, below string, most int64, answer func(http.ResponseWriter, *http.Request, pass) error) shell.Route {
			return shell.Route{Pattern: method + " " + way.path + below, Need: way.need, Most: most, Answer: way.enter.to(answer)}
		}
		page := row("GET", "", shell.Form, d.phonePage)
		if way.sample != "" {
			page.Samples = []string{way.sample}
		}
		routes = append(routes, page,
			row("GET", "/board", shell.Form, d.board),
			row("GET", "/live", shell.Form, d.live),
			row("POST", "/events", mostBatch, d.events),
			row("GET", "/app.webmanifest", shell.Form, d.manifest),
		)
	}
	return shell.Area{Templates: templates, Routes: routes}
}

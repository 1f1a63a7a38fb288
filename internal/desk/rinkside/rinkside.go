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
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed *.tmpl
var templates embed.FS

// Options is what the area needs beside the shell.
type Options struct {
	Keeper custody.Keeper
	// Records are of what the keeper keeps.
	Records *shelf.Records
	Door    *door.Door // whose secret signs day links
	Now     func() time.Time
	Random  io.Reader
	// Creator stands in files as the program that made them.
	Creator string
}

// record is all that happened at an arena, up to an event.
type record = custody.Ledger

type area struct {
	*shell.Shell
	Options
	watches *watches
	pen     *pen
}

// mostBatch is how much a phone may send at once, in bytes: [custody.MaxBatch] events
// with some words each.
const mostBatch = 512 << 10

// New returns the area.
func New(s *shell.Shell, o Options) shell.Area {
	d := area{s, o, &watches{all: map[string]*watch{}}, &pen{}}
	routes := append(d.pages(), shell.Route{Pattern: "GET /phone.js", Need: door.Open, Most: shell.Form, Answer: d.worker})
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

// pages are the pages of holes in service, below their arena's.
func (d area) pages() []shell.Route {
	const arena, demo = "/arena/{slug}", "/arena/" + shell.SampleArena
	page := func(path string, answer shell.Answer) shell.Route {
		return shell.Route{Pattern: "GET " + arena + path, Need: people.Read, Most: shell.Form, Answer: answer, Samples: []string{demo + path}}
	}
	form := func(path string, need people.Act, answer shell.Answer) shell.Route {
		return shell.Route{Pattern: "POST " + arena + path, Need: need, Most: shell.Form, Answer: answer}
	}
	photo := func(path string, answer shell.Answer) shell.Route {
		return shell.Route{Pattern: "POST " + arena + path, Need: people.MindCovers, Most: mostPhoto, TooMuch: hugePhoto, Answer: answer}
	}
	return []shell.Route{
		page("/covers", d.coversPage),
		form("/covers", people.MindCovers, d.mark),
		{Pattern: "GET " + arena + "/covers/live", Need: people.Read, Most: shell.Form, Answer: entrance(d.signedIn).to(d.live)},
		withSample(page("/inspections", d.inspectionsPage), demo+"/inspections?hole=B1"),
		photo("/inspections", d.inspect),
		form("/inspections/take-over", people.Plan, d.takeOver),
		{Pattern: "GET " + arena + "/certificate.pdf", Need: people.Read, Most: shell.Form, Answer: d.certificate, Heavy: true},
		page("/approvals", d.approvalsPage),
		form("/approvals", people.Plan, d.putToApprovers),
		form("/approvals/answer", people.Read, d.answerApproval),
		page("/incidents", d.incidentsPage),
		photo("/incidents", d.tellIncident),
		{Pattern: "GET " + arena + "/replacement.pdf", Need: people.Read, Most: shell.Form, Answer: d.replacement, Heavy: true},
		{Pattern: "GET " + arena + "/photo", Need: people.Read, Most: shell.Form, Answer: d.showPhoto},
		page("/season", d.seasonPage),
		page("/audit", d.auditPage),
		{Pattern: "GET " + arena + "/labels.pdf", Need: people.Read, Most: shell.Form, Answer: d.labelSheet, Heavy: true},
		form("/links", people.Plan, d.giveLink),
		form("/links/revoke", people.Plan, d.revokeLink),
	}
}

func withSample(r shell.Route, more string) shell.Route {
	r.Samples = append(r.Samples, more)
	return r
}

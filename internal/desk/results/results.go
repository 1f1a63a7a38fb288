// Package results is what came of a game, on the desk: what was read of its frames, which
// hole gave what, in which light, and what that says about the plan.
//
//	readings.csv --upload--> shelf --recap--> tables, plots, PDF, CSV
//	                           ^                 |-- light --accept--> a version of the arena
//	   clocks, bodies: edits --'                 '-- learnt.yaml, the best set by it
//	   of the season's document
//
// The model: thousands of frames lie on a photographer's card and never come here; the
// command recap writes what it read of them, and that is kept in versions like any
// document. Everything is worked out when it is asked for, by the same packages as the
// command's answer.
package results

import (
	"embed"
	"net/http"
	"time"

	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed *.tmpl
var templates embed.FS

// Options is what the area needs beside the shell.
type Options struct {
	Records *shelf.Records // of covers: for how long holes were open
	Now     func() time.Time
	Creator string // stands in files as the program that made them
}

type area struct {
	*shell.Shell
	Options
}

// SampleSeason is the season on whose pages samples of addresses are taken.
const SampleSeason = "the-herons-at-home-november"

// New returns the area.
func New(s *shell.Shell, o Options) shell.Area {
	d := area{s, o}
	const at, sample = "/arena/{slug}/frames", "/arena/" + shell.SampleArena + "/frames?season=" + SampleSeason + "&game="
	get := func(path string, answer shell.Answer, samples ...string) shell.Route {
		return shell.Route{Pattern: "GET " + path, Need: people.Read, Most: shell.Form, Answer: answer, Heavy: true, Samples: samples}
	}
	post := func(path string, answer shell.Answer) shell.Route {
		return shell.Route{Pattern: "POST " + path, Need: people.Plan, Most: shell.Form, Answer: answer}
	}
	tooMuch := &shell.Refusal{Status: http.StatusRequestEntityTooLarge, What: "This file is too large.",
		Cure: "Nothing was saved. Readings of a game may have four megabytes; is it the right file?"}
	return shell.Area{Templates: templates, Routes: []shell.Route{
		get(at, d.page, sample+"nov-07", sample+"nov-07&best=on", sample+"nov-28"),
		{Pattern: "POST " + at, Need: people.Plan, Most: shell.Call, TooMuch: tooMuch, Answer: d.upload},
		post(at+"/clock", d.clock),
		post(at+"/unclock", d.unclock),
		post(at+"/body", d.body),
		post(at+"/light", d.light),
		get(at+".pdf", d.paper),
		get(at+".csv", d.tables),
		get(at+"/readings.csv", d.readings),
		get(at+"/learnt.yaml", d.learnt),
	}}
}

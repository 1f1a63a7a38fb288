// Package choosing answers: which holes does the desk propose, how far is the
// search, and how does its answer become part of the document?
//
//	form -> job (package job) -> events while it works -> answer -> accepted
//
// A choice is made beside the requests by [Keeper]; what is kept of it is the
// typed answer, which holds the very holes and the rule sets it was proved for.
package choosing

import (
	"embed"
	"fmt"
	"io"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/job"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed *.tmpl
var templates embed.FS

// Keeper keeps the choices that were asked for.
type Keeper = job.Keeper[About, Progress, choose.Answer]

// choice is a choice that was asked for.
type choice = job.Job[About, Progress, choose.Answer]

// About is what a choice was asked for.
type About struct {
	Arena   string // id
	Name    string // of the arena, for people
	Version int
	wishes  wishes
}

type area struct {
	*shell.Shell
	jobs   Keeper
	random io.Reader // for ids of jobs

	creator string // the program and its version, in files
}

// under returns the choice that is being worked out for an arena; for any, where
// the address names none.
func (d area) under(at shell.Address) (shell.Work, bool) {
	j, ok := d.jobs.Open(func(a About) bool { return at.Slug == "" || a.Arena == at.Slug })
	if !ok {
		return shell.Work{}, false
	}
	reports, _ := j.Reports()
	whose := ""
	if at.Slug == "" {
		at.Slug, whose = j.About.Arena, " for "+j.About.Name
	}
	return shell.Work{
		Words: fmt.Sprintf("A choice of holes is being worked out%s, %.0f %%", whose, 100*newsOf(reports).Whole),
		URL:   at.Beside("/choose", "job", j.ID),
	}, true
}

// New returns the area; creator stands in files as the program that made them.
func New(s *shell.Shell, jobs Keeper, random io.Reader, creator string) shell.Area {
	d := area{s, jobs, random, creator}
	s.Under = d.under
	const page = "/arena/{slug}/choose"
	row := func(pattern string, need people.Act, answer shell.Answer, samples ...string) shell.Route {
		return shell.Route{Pattern: pattern, Need: need, Most: shell.Form, Answer: answer, Samples: samples}
	}
	return shell.Area{Templates: templates, Routes: []shell.Route{
		row("GET "+page, people.Read, d.show, "/arena/"+shell.SampleArena+"/choose"),
		row("POST "+page, people.Plan, d.start),
		row("GET "+page+"/{job}/events", people.Read, d.events),
		{Pattern: "GET " + page + "/{job}/letter", Need: people.Read, Most: shell.Form, Answer: d.letter, Heavy: true},
		row("POST "+page+"/{job}/cancel", people.Plan, d.cancel),
		row("POST "+page+"/{job}/accept", people.Plan, d.accept),
	}}
}

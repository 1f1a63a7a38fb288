// Package holes is the page where holes are planned: the plan map above the
// boards strip, the hole picked with what it is good for, and the hands that move
// it; the same plan laid out on paper.
//
//	GET /arena/{slug}            the plan; ?hole=ID picks a hole
//	POST /arena/{slug}/holes     what hands do to a hole, saved as a version
//	POST /arena/{slug}/live      what follows while a hole is dragged, nothing saved
//	GET /arena/{slug}/reach.png  what a hole sees
//	GET /arena/{slug}/paper      everything for printing
//	GET /arena/{slug}/guard      what comes through the holes, and what to keep clear behind them
package holes

import (
	"embed"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed *.tmpl
var templates embed.FS

type area struct{ *shell.Shell }

// New returns the area.
func New(s *shell.Shell) shell.Area {
	d := area{s}
	const demo = "/arena/" + shell.SampleArena
	return shell.Area{Templates: templates, Routes: []shell.Route{
		{Pattern: "GET /arena/{slug}", Need: people.Read, Most: shell.Form, Answer: d.arenaPage,
			Samples: []string{demo, demo + "?hole=B2&heat=on&lens=24-70&units=metric", "/arena/brennholm", "/arena/sorrel-flats"}},
		{Pattern: "POST /arena/{slug}/holes", Need: people.Plan, Most: shell.Form, Answer: d.handsOn},
		{Pattern: "POST /arena/{slug}/live", Need: people.Read, Most: shell.Form, Answer: d.livePage},
		{Pattern: "GET /arena/{slug}/reach.png", Need: people.Read, Most: shell.Form, Answer: d.reachPicture, Heavy: true},
		{Pattern: "GET /arena/{slug}/paper", Need: people.Read, Most: shell.Form, Answer: d.paperPage, Heavy: true, Samples: []string{demo + "/paper"}},
		{Pattern: "GET /arena/{slug}/guard", Need: people.Read, Most: shell.Form, Answer: d.guardPage, Heavy: true, Samples: []string{demo + "/guard"}},
		{Pattern: "POST /tour", Need: people.Read, Most: shell.Form, Answer: d.closeTour},
	}}
}

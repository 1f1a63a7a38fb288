package survey

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
	const at = "/arena/" + shell.SampleArena + "/survey"
	return shell.Area{Templates: templates, Routes: []shell.Route{
		{Pattern: "GET /new", Need: people.Plan, Most: shell.Form, Answer: d.beginPage},
		{Pattern: "POST /new", Need: people.Plan, Most: shell.Document, Answer: d.begin},
		{Pattern: "GET /arena/{slug}/survey", Need: people.Read, Most: shell.Form, Answer: d.overview, Samples: []string{at}},
		{Pattern: "GET /arena/{slug}/survey/map", Need: people.Plan, Most: shell.Form, Answer: d.mapPage, Samples: []string{at + "/map"}},
		{Pattern: "GET /arena/{slug}/survey/{part}", Need: people.Read, Most: shell.Form, Answer: d.surveyPage,
			Samples: []string{at + "/panes", at + "/holes?item=holes%5BB1%5D", at + "/dispensations?item=new"}},
		{Pattern: "POST /arena/{slug}/survey/{part}", Need: people.Plan, Most: shell.Document, Answer: d.saveSurvey},
	}}
}

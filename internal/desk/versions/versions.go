// Package versions is an arena's history on the desk: every version, what changed
// between two, the text itself, and two plans side by side.
package versions

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
		{Pattern: "GET /arena/{slug}/versions", Need: people.Read, Most: shell.Form, Answer: d.versionsPage, Samples: []string{demo + "/versions"}},
		{Pattern: "GET /arena/{slug}/take", Need: people.Read, Most: shell.Form, Answer: d.takePage, Samples: []string{demo + "/take"}},
		{Pattern: "GET /arena/{slug}/saves", Need: people.Read, Most: shell.Form, Answer: d.saves},
		{Pattern: "POST /arena/{slug}/restore", Need: people.Plan, Most: shell.Form, Answer: d.restore},
		{Pattern: "GET /arena/{slug}/away", Need: people.Plan, Most: shell.Form, Answer: d.awayPage, Samples: []string{demo + "/away"}},
		{Pattern: "POST /arena/{slug}/away", Need: people.Plan, Most: shell.Form, Answer: d.putAway},
		{Pattern: "GET /arena/{slug}/text", Need: people.Plan, Most: shell.Form, Answer: d.textPage, Samples: []string{demo + "/text"}},
		{Pattern: "POST /arena/{slug}/text", Need: people.Plan, Most: shell.Document, Answer: d.saveText},
		{Pattern: "GET /arena/{slug}/compare", Need: people.Read, Most: shell.Form, Answer: d.comparePage,
			Samples: []string{demo + "/compare", demo + "/compare?left=quillhaven@1&right=brennholm@1"}},
	}}
}

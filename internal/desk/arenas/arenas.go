// Package arenas is the desk's list of rinks: which there are, and how another
// comes in.
package arenas

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
	return shell.Area{Templates: templates, Routes: []shell.Route{
		{Pattern: "GET /{$}", Need: people.Read, Most: shell.Form, Answer: d.firstPage},
		{Pattern: "GET /arenas", Need: people.Read, Most: shell.Form, Answer: d.listPage},
		{Pattern: "POST /demo", Need: people.Plan, Most: shell.Form, Answer: d.bringDemo},
		{Pattern: "GET /import", Need: people.Plan, Most: shell.Form, Answer: d.importPage},
		{Pattern: "POST /import", Need: people.Plan, Most: shell.Document, Answer: d.importArena},
	}}
}

package api

import (
	"embed"
	"net/http"
	"slices"
	"strings"

	"github.com/danielgtaylor/huma/v2"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed *.tmpl
var templates embed.FS

// area is the API on the desk: the calls, and the page that tells people of them.
type area struct {
	*shell.Shell
	spec *huma.OpenAPI
}

// New returns the API as an area of the desk: a route for every call that the
// specification describes.
func New(s *shell.Shell, o Options) shell.Area {
	calls := http.NewServeMux()
	d := area{s, Mount(calls, o)}
	answer := shell.Squeezed(calls.ServeHTTP)
	routes := []shell.Route{
		{Pattern: "GET /api", Need: people.Read, Most: shell.Form, Answer: d.apiPage},
		{Pattern: "GET /api/openapi.json", Need: people.Read, Most: shell.Call, Answer: answer},
	}
	for op, path := range operations(d.spec) {
		routes = append(routes, shell.Route{Pattern: op.Method + " " + path, Need: needOf(op), Most: shell.Call, Answer: answer, Heavy: heavy(op)})
	}
	return shell.Area{Templates: templates, Routes: routes}
}

// heavy reports whether a call may take seconds of the machine: trials, edits
// by the hundred, maps, plans, and files that are drawn.
func heavy(op *huma.Operation) bool {
	return strings.HasPrefix(op.OperationID, "try-") || slices.Contains([]string{"get-file", "plan-arena", "map-reach", "edit-arena", "diff-versions"}, op.OperationID)
}

// needOf returns what a call does: to ask, and to try without saving, is to read.
func needOf(op *huma.Operation) people.Act {
	if op.Method == http.MethodGet || strings.HasPrefix(op.OperationID, "try-") {
		return people.Read
	}
	return people.Plan
}

// Package library is where a desk keeps kits and rule sets of its own beside
// those that the program carries: to see, to add, to edit as text, to put away.
//
//	GET  /library                          both lists
//	GET  /library/{kind}                   a new one; ?from=ID begins with another's text
//	GET  /library/{kind}/{slug}            one of the desk's own, as text
//	POST /library/{kind}/{slug}/away       taken off the list, or put back
//
// An arena names what it is planned with in its fields kit and rules. What an
// arena names cannot be put away.
package library

import (
	"embed"
	"net/http"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/survey/kit"
)

//go:embed *.tmpl
var templates embed.FS

type area struct{ *shell.Shell }

// New returns the area.
func New(s *shell.Shell) shell.Area {
	d := area{s}
	const one = "/library/{kind}/{slug}"
	return shell.Area{Templates: templates, Routes: []shell.Route{
		{Pattern: "GET /library", Need: people.Read, Most: shell.Form, Answer: d.listPage},
		{Pattern: "GET /library/{kind}", Need: people.Plan, Most: shell.Form, Answer: d.newPage, Samples: []string{"/library/kit", "/library/rules?from=common-practice"}},
		{Pattern: "POST /library/{kind}", Need: people.Plan, Most: shell.Document, Answer: d.add},
		{Pattern: "GET " + one, Need: people.Read, Most: shell.Form, Answer: d.textPage, Samples: []string{"/library/kit/house-bag"}},
		{Pattern: "POST " + one, Need: people.Plan, Most: shell.Document, Answer: d.save},
		{Pattern: "POST " + one + "/away", Need: people.Plan, Most: shell.Form, Answer: d.putAway},
	}}
}

// A kind is one of the two that the library keeps.
type kind struct {
	Kind    revision.Kind
	Name    string // of one: "kit"
	Plural  string // of the list: "Kits"
	Lead    string
	Shipped []string // ids of those that the program carries
	text    func(id string) ([]byte, error)
}

// usualKit is the id of the kit that the program carries.
const usualKit = "usual"

// kinds are both, in the order of the page.
func kinds() []kind {
	return []kind{
		{revision.Kit, "kit", "Kits", "The bodies and lenses in a bag. An arena says which it is planned with: kit, in its document.", []string{usualKit},
			func(string) ([]byte, error) { return kit.DefaultYAML(), nil }},
		{revision.RuleSet, "rule set", "Rule sets", "What holes must keep: a league's, a building's, your own. An arena says which are in force: rules, in its document.", rules.Names(), rules.Document},
	}
}

// kindOf returns the kind that an address names.
func kindOf(r *http.Request) (kind, error) {
	for _, k := range kinds() {
		if string(k.Kind) == r.PathValue("kind") {
			return k, nil
		}
	}
	return kind{}, shell.ErrNowhere
}

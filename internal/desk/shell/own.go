package shell

import (
	"net/http"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/keep/people"
)

// Own is the shell as an area: theme, style sheets and modules, and what answers
// where nothing else does.
func (s *Shell) Own() Area {
	return Area{Routes: []Route{
		{Pattern: "POST /theme", Need: door.Open, Most: Form, Answer: s.setTheme},
		{Pattern: "GET /assets/{hash}/{name}", Need: door.Open, Most: Form, Answer: s.asset},
		{Pattern: "GET /favicon.ico", Need: door.Open, Most: Form, Answer: s.icon},
		{Pattern: "GET /close", Need: people.Plan, Most: Form, Samples: []string{"/close"}, Answer: s.askClose},
		{Pattern: "POST /close", Need: people.Plan, Most: Form, Answer: s.close},
		{Pattern: "/", Need: people.Read, Most: Form, Samples: []string{"/nothing"},
			Answer: func(http.ResponseWriter, *http.Request) error { return ErrNowhere }},
	}}
}

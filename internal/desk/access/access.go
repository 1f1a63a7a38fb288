// Package access is where people of the desk sign in, and where a planner says
// who may.
package access

import (
	"embed"
	"net/http"
	"net/url"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

//go:embed *.tmpl
var templates embed.FS

type area struct {
	*shell.Shell
	door *door.Door
}

// New returns the area.
func New(s *shell.Shell, at *door.Door) shell.Area {
	d := area{s, at}
	return shell.Area{Templates: templates, Routes: []shell.Route{
		{Pattern: "GET /people", Need: people.Plan, Most: shell.Form, Answer: d.peoplePage},
		{Pattern: "POST /people", Need: people.Plan, Most: shell.Form, Answer: d.addPerson},
		{Pattern: "POST /people/role", Need: people.Plan, Most: shell.Form, Answer: d.changeRole},
		{Pattern: "POST /people/remove", Need: people.Plan, Most: shell.Form, Answer: d.removePerson},
		{Pattern: "POST /people/sessions", Need: people.Plan, Most: shell.Form, Answer: d.endSessions},
		{Pattern: "GET /account", Need: people.Read, Most: shell.Form, Answer: d.accountPage},
		{Pattern: "POST /account", Need: people.Read, Most: shell.Form, Answer: d.changePassword},
		{Pattern: "POST /account/session", Need: people.Read, Most: shell.Form, Answer: d.endSession},
		{Pattern: "GET /sign-in", Need: door.Open, Most: shell.Form, Answer: d.signInPage},
		{Pattern: "POST /sign-in", Need: door.Open, Most: shell.Form, Answer: d.signIn},
		{Pattern: "POST /sign-out", Need: door.Open, Most: shell.Form, Answer: d.signOut},
	}}
}

// refusals are what and cure of each refusal at the door.
var refusals = map[int][2]string{
	http.StatusUnauthorized:       {"Please sign in first.", "Your session may have ended: sign in and try again."},
	http.StatusForbidden:          {"Your role does not allow this.", "Ask somebody who is a planner here."},
	http.StatusMisdirectedRequest: {"This desk answers on this machine only:", "open http://127.0.0.1 with the port it named. To reach it through another server, let a planner in first: rinkpane people add NAME --role planner."},
}

// Refuse returns what tells a visitor why the door stays shut.
func Refuse(s *shell.Shell) func(w http.ResponseWriter, r *http.Request, status int) {
	return func(w http.ResponseWriter, r *http.Request, status int) {
		words := refusals[status]
		switch {
		case status == http.StatusMisdirectedRequest:
			http.Error(w, words[0]+" "+words[1], status) // another's page: it gets no page of ours
		case status == http.StatusUnauthorized && r.Method == http.MethodGet && !shell.ForProgram(r):
			http.Redirect(w, r, "/sign-in?back="+url.QueryEscape(r.URL.RequestURI()), http.StatusSeeOther)
		default:
			s.Fail(w, r, shell.Refuse(status, words[0], words[1]))
		}
	}
}

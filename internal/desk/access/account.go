package access

import (
	"errors"
	"net/http"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

// accountPage is where somebody who is signed in minds their own password and sessions.
type accountPage struct {
	shell.Frame
	Problem  string
	Done     bool
	Sessions []door.Session // the newest first
}

func (d area) accountPage(w http.ResponseWriter, r *http.Request) error {
	return d.showAccount(w, r, http.StatusOK, accountPage{Done: r.FormValue("done") != ""})
}

func (d area) showAccount(w http.ResponseWriter, r *http.Request, status int, page accountPage) error {
	page.Frame = d.Frame(r, "Your sign-in")
	var err error
	if page.Sessions, err = d.door.Sessions(r); err != nil {
		return err
	}
	return d.Page(w, r, status, "account.tmpl", page)
}

// errRepeat answers a new password that was typed in two ways.
var errRepeat = errors.New("the two new passwords differ; nothing was changed")

func (d area) changePassword(w http.ResponseWriter, r *http.Request) error {
	again := func(status int, words string) error {
		return d.showAccount(w, r, status, accountPage{Problem: words})
	}
	fresh := r.PostFormValue("fresh")
	err := people.CheckPassword(fresh)
	if err == nil && fresh != r.PostFormValue("again") {
		err = errRepeat
	}
	if err != nil {
		return again(http.StatusUnprocessableEntity, shell.SentenceOf(err))
	}
	if err := d.door.ChangePassword(w, r, r.PostFormValue("password"), fresh); err != nil {
		return signProblem(w, err, again)
	}
	return d.Goto(w, r, "/account?done=yes")
}

// endSession signs one of the visitor's browsers out.
func (d area) endSession(w http.ResponseWriter, r *http.Request) error {
	if err := d.door.EndSession(r, r.PostFormValue("session")); err != nil {
		return err
	}
	return d.Goto(w, r, "/account")
}

// endSessions signs somebody else out everywhere.
func (d area) endSessions(w http.ResponseWriter, r *http.Request) error {
	return d.afterPeople(w, r, peoplePage{As: people.Viewer}, d.door.EndSessions(r, r.PostFormValue("name")))
}

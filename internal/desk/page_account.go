package desk

import (
	"errors"
	"net/http"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/keep/people"
)

// accountPage is where somebody who is signed in minds their own password and sessions.
type accountPage struct {
	frame
	Problem string
	Done    bool
}

func (d *Desk) accountPage(w http.ResponseWriter, r *http.Request) {
	d.showAccount(w, r, http.StatusOK, accountPage{Done: r.FormValue("done") != ""})
}

func (d *Desk) showAccount(w http.ResponseWriter, r *http.Request, status int, page accountPage) {
	if _, in := door.Person(r.Context()); !in {
		d.nowhere(w, r)
		return
	}
	page.frame = d.frame(r, "Your sign-in")
	d.show(w, r, status, "account.tmpl", page)
}

// errRepeat answers a new password that was typed in two ways.
var errRepeat = errors.New("the two new passwords differ; nothing was changed")

func (d *Desk) changePassword(w http.ResponseWriter, r *http.Request) {
	fresh := r.PostFormValue("fresh")
	err := people.CheckPassword(fresh)
	if err == nil && fresh != r.PostFormValue("again") {
		err = errRepeat
	}
	if err != nil {
		d.showAccount(w, r, http.StatusUnprocessableEntity, accountPage{Problem: sentenceOf(err)})
		return
	}
	if err := d.door.ChangePassword(w, r, r.PostFormValue("password"), fresh); err != nil {
		d.signProblem(w, r, err, func(status int, words string) {
			d.showAccount(w, r, status, accountPage{Problem: words})
		})
		return
	}
	http.Redirect(w, r, "/account?done=yes", http.StatusSeeOther)
}

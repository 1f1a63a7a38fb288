package access

import (
	"errors"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/revision"
)

// signInView is where somebody says who they are.
type signInView struct {
	shell.Frame
	Name    string // as typed before
	Problem string
	Back    string // where to go afterwards
}

func (d area) signInPage(w http.ResponseWriter, r *http.Request) error {
	return d.Page(w, r, http.StatusOK, "signin.tmpl", signInView{Frame: d.Frame(r, "Sign in"), Back: shell.OwnPath(r.FormValue("back"))})
}

func (d area) signIn(w http.ResponseWriter, r *http.Request) error {
	name, back := strings.TrimSpace(r.PostFormValue("name")), shell.OwnPath(r.PostFormValue("back"))
	if err := d.door.SignIn(w, r, name, r.PostFormValue("password")); err != nil {
		return signProblem(w, err, func(status int, words string) error {
			return d.Page(w, r, status, "signin.tmpl", signInView{d.Frame(r, "Sign in"), name, words, back})
		})
	}
	return d.Goto(w, r, back)
}

// signStatuses is the status for each answer to what was typed about people and passwords.
var signStatuses = []struct {
	is     error
	status int
}{
	{door.ErrWrong, http.StatusUnauthorized},
	{door.ErrOften, http.StatusTooManyRequests},
	{door.ErrBusy, http.StatusServiceUnavailable},
	{door.ErrCode, http.StatusForbidden},
	{people.ErrNone, http.StatusNotFound},
	{people.ErrTaken, http.StatusUnprocessableEntity},
	{people.ErrFirst, http.StatusUnprocessableEntity},
	{people.ErrLast, http.StatusUnprocessableEntity},
	{revision.ErrFull, http.StatusInsufficientStorage},
	{revision.ErrDown, http.StatusServiceUnavailable},
}

// signProblem shows the form again with what was wrong about people or passwords.
func signProblem(w http.ResponseWriter, err error, show func(status int, words string) error) error {
	for _, s := range signStatuses {
		if !errors.Is(err, s.is) {
			continue
		}
		if s.status == http.StatusTooManyRequests || s.status == http.StatusServiceUnavailable {
			w.Header().Set("Retry-After", "60")
		}
		if s.status != http.StatusUnprocessableEntity { // which may name somebody
			err = s.is
		}
		return show(s.status, shell.SentenceOf(err))
	}
	return err
}

func (d area) signOut(w http.ResponseWriter, r *http.Request) error {
	if err := d.door.SignOut(w, r, r.PostFormValue("everywhere") == "yes"); err != nil {
		return err
	}
	return d.Goto(w, r, "/sign-in")
}

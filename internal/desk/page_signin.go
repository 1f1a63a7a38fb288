package desk

import (
	"errors"
	"net/http"
	"net/url"
	"strings"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/revision"
)

// signInPage is where somebody says who they are.
type signInView struct {
	frame
	Name    string // as typed before
	Problem string
	Back    string // where to go afterwards
}

func (d *Desk) signInPage(w http.ResponseWriter, r *http.Request) {
	d.show(w, r, http.StatusOK, "signin.tmpl", signInView{frame: d.frame(r, "Sign in"), Back: ownPath(r.FormValue("back"))})
}

func (d *Desk) signIn(w http.ResponseWriter, r *http.Request) {
	name, back := strings.TrimSpace(r.PostFormValue("name")), ownPath(r.PostFormValue("back"))
	if err := d.door.SignIn(w, r, name, r.PostFormValue("password")); err != nil {
		d.signProblem(w, r, err, func(status int, words string) {
			d.show(w, r, status, "signin.tmpl", signInView{d.frame(r, "Sign in"), name, words, back})
		})
		return
	}
	http.Redirect(w, r, back, http.StatusSeeOther)
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
func (d *Desk) signProblem(w http.ResponseWriter, r *http.Request, err error, show func(status int, words string)) {
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
		show(s.status, sentenceOf(err))
		return
	}
	d.broken(w, r, err)
}

func (d *Desk) signOut(w http.ResponseWriter, r *http.Request) {
	if err := d.door.SignOut(w, r, r.PostFormValue("everywhere") == "yes"); err != nil {
		d.broken(w, r, err)
		return
	}
	http.Redirect(w, r, "/sign-in", http.StatusSeeOther)
}

// refuse tells a visitor why the door stays shut: programs in JSON, people on a page.
func (d *Desk) refuse(w http.ResponseWriter, r *http.Request, status int) {
	words := refusals[status]
	switch {
	case strings.HasPrefix(r.URL.Path, "/api/"):
		d.problem(w, r, status, words[0]+" "+words[1])
	case status == http.StatusMisdirectedRequest:
		http.Error(w, words[0]+" "+words[1], status) // another's page: it gets no page of ours
	case status == http.StatusUnauthorized && r.Method == http.MethodGet:
		http.Redirect(w, r, "/sign-in?back="+url.QueryEscape(r.URL.RequestURI()), http.StatusSeeOther)
	default:
		d.fail(w, r, status, words[0], words[1])
	}
}

// refusals are what and cure of each refusal.
var refusals = map[int][2]string{
	http.StatusUnauthorized:       {"Please sign in first.", "Your session may have ended: sign in and try again."},
	http.StatusForbidden:          {"Your role does not allow this.", "Ask somebody who is a planner here."},
	http.StatusMisdirectedRequest: {"This desk answers on this machine only:", "open http://127.0.0.1 with the port it named. To reach it through another server, let a planner in first: rinkpane people add NAME --role planner."},
}

// sentenceOf makes an error a sentence for a page.
func sentenceOf(err error) string {
	text := err.Error()
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

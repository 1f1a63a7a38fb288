package desk

import (
	"errors"
	"net/http"
	"net/url"
	"strings"

	"example.org/rinkpane/internal/desk/door"
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
	err := d.door.SignIn(w, r, name, r.PostFormValue("password"))
	status := http.StatusUnauthorized
	switch {
	case err == nil:
		http.Redirect(w, r, back, http.StatusSeeOther)
		return
	case errors.Is(err, door.ErrOften):
		status = http.StatusTooManyRequests
		w.Header().Set("Retry-After", "60")
	case errors.Is(err, door.ErrBusy):
		status = http.StatusServiceUnavailable
	case !errors.Is(err, door.ErrWrong):
		d.broken(w, r, err)
		return
	}
	d.show(w, r, status, "signin.tmpl", signInView{d.frame(r, "Sign in"), name, sentenceOf(err), back})
}

func (d *Desk) signOut(w http.ResponseWriter, r *http.Request) {
	if err := d.door.SignOut(w, r); err != nil {
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
	http.StatusMisdirectedRequest: {"This desk answers on this machine only:", "open http://127.0.0.1 with the port it named."},
}

// sentenceOf makes an error a sentence for a page.
func sentenceOf(err error) string {
	text := err.Error()
	return strings.ToUpper(text[:1]) + text[1:] + "."
}

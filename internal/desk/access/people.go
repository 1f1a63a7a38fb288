package access

import (
	"errors"
	"net/http"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

// peoplePage is who may sign in, for planners.
type peoplePage struct {
	shell.Frame
	People  []people.Person
	Log     []people.Entry // the newest first
	Roles   []people.Role
	Name    string      // as typed
	As      people.Role // of who is let in
	Problem string
}

// mostEntries is how many entries of the log the page shows.
const mostEntries = 50

func (d area) peoplePage(w http.ResponseWriter, r *http.Request) error {
	return d.showPeople(w, r, http.StatusOK, peoplePage{As: people.Viewer})
}

func (d area) showPeople(w http.ResponseWriter, r *http.Request, status int, page peoplePage) error {
	var err1, err2 error
	page.Frame, page.Roles = d.Frame(r, "People"), people.Roles()
	page.People, err1 = d.door.Register.People(r.Context())
	page.Log, err2 = d.door.Register.Log(r.Context(), mostEntries)
	if err := errors.Join(err1, err2); err != nil {
		return err
	}
	if len(page.People) == 0 && page.Name == "" {
		page.As = people.Planner // the first can be nothing else
	}
	return d.Page(w, r, status, "people.tmpl", page)
}

// addPerson lets somebody sign in.
func (d area) addPerson(w http.ResponseWriter, r *http.Request) error {
	page := peoplePage{Name: people.Tidy(r.PostFormValue("name")), As: people.Role(r.PostFormValue("role"))}
	password := r.PostFormValue("password")
	role, err := people.ParseRole(string(page.As))
	if err == nil {
		err = errors.Join(people.CheckName(page.Name), people.CheckPassword(password))
	}
	if err != nil {
		page.Problem = shell.SentenceOf(err)
		return d.showPeople(w, r, http.StatusUnprocessableEntity, page)
	}
	return d.afterPeople(w, r, page, d.door.Admit(r, page.Name, role, password, r.PostFormValue("code")))
}

// changeRole gives somebody another role.
func (d area) changeRole(w http.ResponseWriter, r *http.Request) error {
	page := peoplePage{As: people.Viewer}
	role, err := people.ParseRole(r.PostFormValue("role"))
	if err != nil {
		page.Problem = shell.SentenceOf(err)
		return d.showPeople(w, r, http.StatusUnprocessableEntity, page)
	}
	return d.afterPeople(w, r, page, d.door.Appoint(r, r.PostFormValue("name"), role))
}

// leavingPage asks whether somebody shall no longer sign in.
type leavingPage struct {
	shell.Frame
	Name string
}

// removePerson asks first, and takes the person off when the page that asks says so.
func (d area) removePerson(w http.ResponseWriter, r *http.Request) error {
	if name := r.PostFormValue("name"); r.PostFormValue("sure") != "yes" {
		return d.Page(w, r, http.StatusOK, "leaving.tmpl", leavingPage{d.Frame(r, "Remove "+name), name})
	}
	return d.afterPeople(w, r, peoplePage{As: people.Viewer}, d.door.Dismiss(r, r.PostFormValue("name")))
}

// afterPeople shows the people as they are now, or what kept them as they were.
func (d area) afterPeople(w http.ResponseWriter, r *http.Request, page peoplePage, err error) error {
	if err == nil {
		return d.Goto(w, r, "/people")
	}
	return signProblem(w, err, func(status int, words string) error {
		page.Problem = words
		return d.showPeople(w, r, status, page)
	})
}

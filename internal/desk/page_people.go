package desk

import (
	"errors"
	"net/http"

	"example.org/rinkpane/internal/keep/people"
)

// peoplePage is who may sign in, for planners.
type peoplePage struct {
	frame
	People  []personRow
	Log     []entryRow // the newest first
	Roles   []people.Role
	Name    string // as typed
	Role    people.Role
	Problem string
}

type personRow struct {
	Name  string
	Role  people.Role
	Since string
}

type entryRow struct{ When, Who, What, From string }

// mostEntries is how many entries of the log the page shows.
const mostEntries = 50

func (d *Desk) peoplePage(w http.ResponseWriter, r *http.Request) {
	d.showPeople(w, r, http.StatusOK, peoplePage{Role: people.Viewer})
}

func (d *Desk) showPeople(w http.ResponseWriter, r *http.Request, status int, page peoplePage) {
	all, err := d.register.People(r.Context())
	var log []people.Entry
	if err == nil {
		log, err = d.register.Log(r.Context(), mostEntries)
	}
	if err != nil {
		d.broken(w, r, err)
		return
	}
	for _, e := range log {
		page.Log = append(page.Log, entryRow{e.At.Format("2 Jan 2006, 15:04 MST"), e.Who, e.What, e.From})
	}
	page.frame, page.Roles = d.frame(r, "People"), people.Roles()
	for _, p := range all {
		page.People = append(page.People, personRow{p.Name, p.Role, p.Since.Format("2 Jan 2006")})
	}
	d.show(w, r, status, "people.tmpl", page)
}

// addPerson lets somebody sign in.
func (d *Desk) addPerson(w http.ResponseWriter, r *http.Request) {
	page := peoplePage{Name: people.Tidy(r.PostFormValue("name")), Role: people.Role(r.PostFormValue("role"))}
	password := r.PostFormValue("password")
	role, err := people.ParseRole(string(page.Role))
	if err == nil {
		err = errors.Join(people.CheckName(page.Name), people.CheckPassword(password))
	}
	if err != nil {
		page.Problem = sentenceOf(err)
		d.showPeople(w, r, http.StatusUnprocessableEntity, page)
		return
	}
	d.afterPeople(w, r, page, d.door.Admit(r, page.Name, role, password, r.PostFormValue("code")))
}

func (d *Desk) removePerson(w http.ResponseWriter, r *http.Request) {
	d.afterPeople(w, r, peoplePage{Role: people.Viewer}, d.door.Dismiss(r, r.PostFormValue("name")))
}

// afterPeople shows the people as they are now, or what kept them as they were.
func (d *Desk) afterPeople(w http.ResponseWriter, r *http.Request, page peoplePage, err error) {
	if err == nil {
		http.Redirect(w, r, "/people", http.StatusSeeOther)
		return
	}
	d.signProblem(w, r, err, func(status int, words string) {
		page.Problem = words
		d.showPeople(w, r, status, page)
	})
}

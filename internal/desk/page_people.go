package desk

import (
	"errors"
	"net/http"

	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/revision"
)

// peoplePage is who may sign in, for planners.
type peoplePage struct {
	frame
	People  []personRow
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

func (d *Desk) peoplePage(w http.ResponseWriter, r *http.Request) {
	d.showPeople(w, r, http.StatusOK, peoplePage{Role: people.Viewer})
}

func (d *Desk) showPeople(w http.ResponseWriter, r *http.Request, status int, page peoplePage) {
	all, err := d.register.People(r.Context())
	if err != nil {
		d.broken(w, r, err)
		return
	}
	page.frame, page.Roles = d.frame(r, "People"), people.Roles()
	for _, p := range all {
		page.People = append(page.People, personRow{p.Name, p.Role, p.Since.Format("2 Jan 2006")})
	}
	d.show(w, r, status, "people.tmpl", page)
}

// addPerson lets somebody sign in. The first must be a planner: nobody else
// could let more in.
func (d *Desk) addPerson(w http.ResponseWriter, r *http.Request) {
	page := peoplePage{Name: r.PostFormValue("name"), Role: people.Role(r.PostFormValue("role"))}
	if err := d.takeIn(r, page.Name, string(page.Role), r.PostFormValue("password")); err != nil {
		status := http.StatusUnprocessableEntity
		switch {
		case errors.Is(err, people.ErrTaken):
			err = people.ErrTaken
		case errors.Is(err, revision.ErrFull):
			err, status = revision.ErrFull, http.StatusInsufficientStorage
		}
		page.Problem = sentenceOf(err)
		d.showPeople(w, r, status, page)
		return
	}
	http.Redirect(w, r, "/people", http.StatusSeeOther)
}

// errFirst answers an attempt to lock everybody out of the people page.
var errFirst = errors.New("the first must be a planner: nobody else could let more in")

func (d *Desk) takeIn(r *http.Request, name, role, password string) error {
	as, err := people.ParseRole(role)
	if err != nil {
		return err
	}
	if err := errors.Join(people.CheckName(name), people.CheckPassword(password)); err != nil {
		return err
	}
	all, err := d.register.People(r.Context())
	if err != nil {
		return err
	}
	if len(all) == 0 && as != people.Planner {
		return errFirst
	}
	return d.door.Admit(r.Context(), name, as, password)
}

// errLast answers an attempt to leave others without a planner.
var errLast = errors.New("this is the last planner, without whom nobody could let anybody in: let another planner in first")

func (d *Desk) removePerson(w http.ResponseWriter, r *http.Request) {
	name := r.PostFormValue("name")
	err := d.mayGo(r, name)
	if err == nil {
		err = d.register.RemovePerson(r.Context(), name)
	}
	switch {
	case errors.Is(err, errLast):
		d.showPeople(w, r, http.StatusUnprocessableEntity, peoplePage{Role: people.Planner, Problem: sentenceOf(err)})
	case errors.Is(err, people.ErrNone):
		d.showPeople(w, r, http.StatusNotFound, peoplePage{Role: people.Viewer, Problem: "Nobody of this name is set up."})
	case err != nil:
		d.broken(w, r, err)
	default:
		http.Redirect(w, r, "/people", http.StatusSeeOther)
	}
}

// mayGo returns errLast for the last planner, as long as anybody needs one. On
// this machine alone the last person may go: then everybody may do everything.
func (d *Desk) mayGo(r *http.Request, name string) error {
	all, err := d.register.People(r.Context())
	if err != nil || len(all) == 1 && !d.door.Always {
		return err
	}
	last := false
	for _, p := range all {
		if p.Role == people.Planner && p.Name != name {
			return nil
		}
		last = last || p.Name == name && p.Role == people.Planner
	}
	if last {
		return errLast
	}
	return nil
}

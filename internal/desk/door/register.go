package door

import (
	"crypto/subtle"
	"errors"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/keep/people"
)

// ErrCode answers a first sign-up without the code that the terminal shows.
var ErrCode = errors.New("the first sign-up needs the code that the terminal of the desk shows")

// firstUp limits how often the code may be tried.
var firstUp = []limit{{"the code", perPair}}

// checkCode lets the first sign-up pass only with the code: while nobody is set
// up, the desk cannot tell who sits at its own machine from who comes through a
// server before it.
func (d *Door) checkCode(r *http.Request, code string) error {
	if _, in := Person(r.Context()); in {
		return nil
	}
	if !d.tries.all(firstUp) {
		return ErrOften
	}
	given := strings.ToUpper(strings.TrimSpace(code))
	if d.Code == "" || subtle.ConstantTimeCompare([]byte(given), []byte(d.Code)) != 1 {
		d.tries.take(firstUp)
		d.Log.WarnContext(r.Context(), "door: a first sign-up on the page People", "from", d.addressOf(r), "needs code", d.Code)
		return ErrCode
	}
	return nil
}

// Admit lets a person in; the first must be a planner, and knows the code.
// Errors: ErrCode, ErrOften, ErrBusy, and those of the register and its edits.
func (d *Door) Admit(r *http.Request, name string, role people.Role, password, code string) error {
	if err := d.checkCode(r, code); err != nil {
		return err
	}
	hash, err := d.hash(r, password)
	if err != nil {
		return err
	}
	add := people.Adding(people.Person{Name: name, Role: role, Password: hash, Since: d.Now()})
	return d.alter(r, add.KeepingPlanner(d.Always), "let "+name+" in as "+string(role))
}

// Appoint gives a person another role, unless nobody else would be a planner; the
// person's sessions end.
func (d *Door) Appoint(r *http.Request, name string, role people.Role) error {
	change := people.Changing(name, func(p *people.Person) { p.Role = role })
	return d.alter(r, change.KeepingPlanner(d.Always), "made "+name+" a "+string(role))
}

// Dismiss lets a person sign in no more, unless others would be left without a planner.
func (d *Door) Dismiss(r *http.Request, name string) error {
	return d.alter(r, people.Removing(name).KeepingPlanner(d.Always), "removed "+name)
}

// ChangePassword gives the visitor a new password, when the old one is right. All
// sessions of the person end but this browser's. Errors: those of SignIn.
func (d *Door) ChangePassword(w http.ResponseWriter, r *http.Request, old, password string) error {
	p, in := Person(r.Context())
	if !in {
		return people.ErrNone
	}
	if err := d.check(r, p, p.Name, old); err != nil {
		return err
	}
	hash, err := d.hash(r, password)
	if err != nil {
		return err
	}
	if err := d.alter(r, people.Changing(p.Name, func(p *people.Person) { p.Password = hash }), "set a new password of their own"); err != nil {
		return err
	}
	p.Password = hash
	return d.enter(w, r, p, "signed in with the new password")
}

func (d *Door) hash(r *http.Request, password string) (string, error) {
	free, err := d.queue.turn(r.Context(), true, "")
	if err != nil {
		return "", err
	}
	defer free()
	return people.Hash(password, d.Random)
}

func (d *Door) alter(r *http.Request, e people.Edit, what string) error {
	note := people.Entry{At: d.Now(), Kind: people.Altered, Who: Who(r.Context()), What: what, From: d.addressOf(r)}
	return d.Register.Alter(r.Context(), e, note)
}

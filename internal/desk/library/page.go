package library

import (
	"errors"
	"fmt"
	"net/http"
	"strconv"

	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
)

// listPage is both lists.
type listPage struct {
	shell.Frame
	Lists []list
}

type list struct {
	kind
	Own []revision.Document // those put away last
}

func (d area) listPage(w http.ResponseWriter, r *http.Request) error {
	page := listPage{Frame: d.Frame(r, "Kits and rules")}
	for _, k := range kinds() {
		own, err := d.Shelf.Keeper().Documents(r.Context(), k.Kind, true)
		if err != nil {
			return err
		}
		page.Lists = append(page.Lists, list{k, own})
	}
	return d.Page(w, r, http.StatusOK, "library.tmpl", page)
}

// ownPage is a kit or a rule set as text: a new one, or one of the desk's own.
type ownPage struct {
	shell.Frame
	kind
	shelf.OwnPage // zero for a new one
	Base          int
	Text          string
	What          string
	Problem       *shell.Problem
}

// Action is where the form goes to.
func (p ownPage) Action() string {
	to := "/library/" + string(p.Kind)
	if p.Document.ID != "" {
		to += "/" + p.Document.ID
	}
	return to
}

// newPage begins with the text of one that is there, where the address names it.
func (d area) newPage(w http.ResponseWriter, r *http.Request) error {
	k, err := kindOf(r)
	if err != nil {
		return err
	}
	page := ownPage{Frame: d.Frame(r, "A new "+k.Name), kind: k}
	if from := r.FormValue("from"); from != "" {
		text, err := k.text(from)
		if err != nil {
			return shell.Because(http.StatusNotFound, "There is no such "+k.Name+".", err)
		}
		page.Text = string(text)
	}
	return d.Page(w, r, http.StatusOK, "own.tmpl", page)
}

func (d area) add(w http.ResponseWriter, r *http.Request) error {
	k, err := kindOf(r)
	if err != nil {
		return err
	}
	text, err := shell.SentDocument(r)
	if err != nil {
		return err
	}
	shown := text
	if !shell.IsText(text) {
		shown = "" // nobody reads a picture's bytes
	}
	v, err := d.Shelf.AddOwn(r.Context(), k.Kind, text, door.Who(r.Context()), "")
	if err != nil {
		return d.Again(r, err, text, func(p *shell.Problem) error {
			return d.Page(w, r, p.Status, "own.tmpl", ownPage{Frame: d.Frame(r, "A new "+k.Name), kind: k, Text: shown, Problem: p})
		})
	}
	return d.Goto(w, r, "/library/"+string(k.Kind)+"/"+v.Document)
}

// one opens the kit or rule set of an address.
func (d area) one(r *http.Request) (ownPage, error) {
	k, err := kindOf(r)
	if err != nil {
		return ownPage{}, err
	}
	o, err := d.Shelf.OwnPage(r.Context(), k.Kind, r.PathValue("slug"))
	if errors.Is(err, revision.ErrNone) {
		err = shell.Refuse(http.StatusNotFound, "This desk keeps no such "+k.Name+".", "Look at the list of kits and rules.")
	}
	return ownPage{Frame: d.Frame(r, o.Document.Name), kind: k, OwnPage: o, Base: o.Version.Number, Text: o.Version.Text}, err
}

func (d area) textPage(w http.ResponseWriter, r *http.Request) error {
	page, err := d.one(r)
	if err != nil {
		return err
	}
	return d.Page(w, r, http.StatusOK, "own.tmpl", page)
}

// save puts a text on top. Where somebody was quicker, both are joined in the
// form, to be looked at and saved again.
func (d area) save(w http.ResponseWriter, r *http.Request) error {
	page, err := d.one(r)
	if err != nil {
		return err
	}
	text, err := shell.SentDocument(r)
	base, err2 := strconv.Atoi(r.PostFormValue("base"))
	if errors.Join(err, err2) != nil || base < 1 {
		return shell.ErrIncomplete
	}
	page.Text, page.What, page.Base = text, r.PostFormValue("what"), base
	_, err = d.Shelf.SaveOwn(r.Context(), page.Kind, page.Document.ID, base, text, door.Who(r.Context()), page.What)
	var late *shelf.Late
	if errors.As(err, &late) {
		page.Text, _, _ = late.Merged()
		page.Base = late.Head.Number
		page.Problem = &shell.Problem{Text: fmt.Sprintf("%s has saved version %d meanwhile (%s). Both are joined below, yours where both changed the same lines: look at it, and save it again.",
			door.Named(late.Head.Who), late.Head.Number, late.Head.What)}
		return d.Page(w, r, http.StatusConflict, "own.tmpl", page)
	}
	if errors.Is(err, revision.ErrNone) {
		return shell.ErrNoVersion
	}
	if err != nil {
		return d.Again(r, err, text, func(p *shell.Problem) error {
			page.Problem = p
			return d.Page(w, r, p.Status, "own.tmpl", page)
		})
	}
	return d.Goto(w, r, page.Action())
}

// putAway takes a kit or rule set off the list, or puts it back.
func (d area) putAway(w http.ResponseWriter, r *http.Request) error {
	page, err := d.one(r)
	if err != nil {
		return err
	}
	away, err := shell.YesOrNo(r, "away")
	if err == nil {
		err = d.Shelf.PutOwnAway(r.Context(), page.Kind, page.Document.ID, away)
	}
	var used *shelf.InUse
	switch {
	case errors.As(err, &used):
		page.Problem = &shell.Problem{Text: shell.SentenceOf(used)}
		return d.Page(w, r, http.StatusConflict, "own.tmpl", page)
	case err != nil:
		return err
	}
	return d.Goto(w, r, "/library")
}

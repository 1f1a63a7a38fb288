package rinkside

import (
	"errors"
	"net/http"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
)

// pass is whose covers a visitor minds, and in whose name.
type pass struct {
	Arena string // id
	Name  string // of the arena, for people
	Who   string
	Link  *custody.Link // nil for who signed in
	Base  string        // path of the page; its calls are below
}

// entrance finds out what pass a visitor has.
type entrance func(r *http.Request) (pass, error)

func (in entrance) to(answer func(http.ResponseWriter, *http.Request, pass) error) shell.Answer {
	return func(w http.ResponseWriter, r *http.Request) error {
		p, err := in(r)
		if err != nil {
			return err
		}
		return answer(w, r, p)
	}
}

func (d area) signedIn(r *http.Request) (pass, error) {
	slug := r.PathValue("slug")
	return d.passTo(r, pass{Arena: slug, Who: door.Who(r.Context()), Base: "/phone/" + slug})
}

// passTo fills in the name of a pass's arena, if there is one.
func (d area) passTo(r *http.Request, p pass) (pass, error) {
	if revision.CheckID(p.Arena) != nil {
		return p, revision.ErrNone
	}
	doc, err := d.Shelf.Keeper().Document(r.Context(), p.Arena)
	if err == nil && doc.Kind != revision.Arena {
		err = revision.ErrNone
	}
	p.Name = doc.Name
	return p, err
}

// byLink opens a day link. Whatever is wrong with one is said in a line, and nothing
// of the arena with it.
func (d area) byLink(r *http.Request) (pass, error) {
	token := r.PathValue("token")
	secret, err := d.Door.Secret(r.Context())
	if err != nil {
		return pass{}, err
	}
	link, err := custody.OpenLink(token, secret, d.Now())
	if err != nil {
		return pass{}, refused(err)
	}
	if d.Now().Before(link.From) {
		return pass{}, shell.Refuse(http.StatusForbidden, "This link opens on "+link.Day+".", "It is for that day only: from four in the morning.")
	}
	rec, err := d.Records.Of(r.Context(), link.Arena)
	if err != nil {
		return pass{}, err
	}
	if rec.History.Revoked(link) {
		return pass{}, refused(custody.ErrLinkRevoked)
	}
	return d.passTo(r, pass{Arena: link.Arena, Who: "guest " + link.Name, Link: &link, Base: "/day/" + token})
}

// refused tells why a link opens nothing.
func refused(why error) error {
	for _, known := range []error{custody.ErrLinkForged, custody.ErrLinkEnded, custody.ErrLinkRevoked} {
		if errors.Is(why, known) {
			return shell.Refuse(http.StatusForbidden, "This link opens nothing.", shell.Sentence(why.Error()))
		}
	}
	return why
}

// until is when a pass ends; zero for one that lasts as long as its session.
func (p pass) until() time.Time {
	if p.Link == nil {
		return time.Time{}
	}
	return p.Link.Until
}

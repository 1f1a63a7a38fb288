package door

import (
	"cmp"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/keep/people"
)

// deviceOf returns what a browser says that it runs on. Phones say "Mobi"
// (MDN, "Browser detection using the user agent string").
func deviceOf(r *http.Request) people.Device {
	switch agent := r.UserAgent(); {
	case strings.Contains(agent, "Mobi"):
		return people.Phone
	case agent == "":
		return ""
	}
	return people.Computer
}

// Session is one of the visitor's sessions.
type Session struct {
	people.Session
	Here bool // the one that asks
}

// Sessions lists the visitor's sessions, the newest first; none while nobody is set up.
func (d *Door) Sessions(r *http.Request) ([]Session, error) {
	p, in := Person(r.Context())
	if !in {
		return nil, nil
	}
	open, err := d.Register.Sessions(r.Context(), p.Name, d.Now())
	own := sessionKey(r)
	all := make([]Session, len(open))
	for i, s := range open {
		all[i] = Session{s, s.Key == own}
	}
	return all, err
}

// EndSession ends one of the visitor's own sessions, by its key; of one that has
// ended, or is another's, it does nothing.
func (d *Door) EndSession(r *http.Request, key string) error {
	all, err := d.Sessions(r)
	if err != nil {
		return err
	}
	for _, s := range all {
		if s.Key != key {
			continue
		}
		if err := d.Register.CloseSession(r.Context(), key); err != nil {
			return err
		}
		d.write(r, people.Entry{Kind: people.SignedIn, Who: s.Person, What: "signed out a " + cmp.Or(string(s.Device), "machine")})
	}
	return nil
}

// EndSessions signs somebody else out everywhere; the visitor minds the people.
func (d *Door) EndSessions(r *http.Request, name string) error {
	if _, err := d.Register.Person(r.Context(), name); err != nil {
		return err
	}
	if err := d.Register.CloseSessions(r.Context(), name); err != nil {
		return err
	}
	d.write(r, people.Entry{Kind: people.SignedIn, Who: Who(r.Context()), What: "signed " + name + " out everywhere"})
	return nil
}

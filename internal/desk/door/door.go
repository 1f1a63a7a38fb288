// Package door answers: who stands at the door of the desk, and may they do
// what they ask?
//
//	request -> headers -> our host? -> our own page? -> whose session? -> may this role? -> desk
//	                        421          403              401, sign-in       403
//
// The model: as long as nobody is set up, a desk on its own machine's address
// lets everybody who reaches it do everything, and answers to that machine's
// names only and to nothing that came through another server, so that a page
// elsewhere cannot point its name at it. The first who is set up on a page must
// know a code that only the terminal shows. Once
// somebody is set up, everything but what is marked [Open] wants a session; its
// cookie is bound to the host, so the host's name no longer matters.
//
// Assumptions: TLS, where it is wanted, ends in a server before this one, which
// says so in X-Forwarded-Proto. Limits: a session ends after
// [people.SessionLength]; it is not bound to an address.
package door

import (
	"context"
	"encoding/base32"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"net/netip"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

// Open marks what needs no sign-in: the sign-in page and its assets.
const Open people.Act = -1

// Options is what a door needs.
type Options struct {
	Register people.Register
	// Always asks for sign-in even when nobody is set up: the desk can be
	// reached from other machines.
	Always bool
	Now    func() time.Time
	Random io.Reader // for tokens: crypto/rand
	// Code is what the first who is set up on a page must know, and only the
	// terminal shows; see [NewCode]. Without one there is no such first.
	Code string
	Log  *slog.Logger
	// Behind are the servers before the desk, besides those of its own machine, whose
	// word about a visitor's address counts.
	Behind []netip.Prefix
	// Refuse shows a page that says why not: 401 asks to sign in, 403 says
	// that the role does not allow it, 421 that the host is not ours.
	Refuse func(w http.ResponseWriter, r *http.Request, status int)
}

// Door guards a desk. Make one with New.
type Door struct {
	Options
	tries  *tries // wrong passwords
	visits *tries // requests
	queue  *queue
	secret secret
	decoy  string // what is checked for a name that nobody has
}

// New makes a door.
func New(o Options) *Door {
	t := newTries(o.Now)
	wrong := func(address string) float64 { return perAddress.burst - t.left(limit{"at " + address, perAddress}) }
	return &Door{Options: o, tries: t, visits: newTries(o.Now), queue: &queue{wrong: wrong}, decoy: decoy}
}

// NewCode returns a code of eight letters and digits (40 bits from random), in two
// halves: "QX3L-7WPB".
func NewCode(random io.Reader) (string, error) {
	raw := make([]byte, 5)
	if _, err := io.ReadFull(random, raw); err != nil {
		return "", fmt.Errorf("code: %w", err)
	}
	code := base32.StdEncoding.EncodeToString(raw)
	return code[:4] + "-" + code[4:], nil
}

// visitor is who asks, as the guard found out.
type visitor struct {
	person people.Person // zero while nobody is set up
	in     bool          // may enter: signed in, or nobody is set up
	again  func() (visitor, error)
}

type visitorKey struct{}

// Who returns the name to put on what a visitor changes: "desk" while nobody is
// set up.
func Who(ctx context.Context) string {
	if p, ok := Person(ctx); ok {
		return p.Name
	}
	return nobody
}

// nobody stands for the name of a visitor while nobody is set up.
const nobody = "desk"

// Named returns what a sentence to people calls whoever changed something.
func Named(who string) string {
	if who == nobody {
		return "Somebody at this desk"
	}
	return who
}

// Person returns the person who signed in; ok is false while nobody is set up.
func Person(ctx context.Context) (people.Person, bool) {
	v, _ := ctx.Value(visitorKey{}).(visitor)
	return v.person, v.person.Name != ""
}

// May reports whether the visitor of a request may do something.
func May(ctx context.Context, a people.Act) bool {
	v, _ := ctx.Value(visitorKey{}).(visitor)
	if a == Open {
		return true
	}
	return v.in && (v.person.Name == "" || v.person.Role.May(a))
}

// Still reports whether who entered with a request may stay: their session is open, or
// there is nobody set up yet. One who needed none stays, and so does everybody while the
// register does not answer.
func Still(ctx context.Context) bool {
	v, _ := ctx.Value(visitorKey{}).(visitor)
	if !v.in {
		return true
	}
	now, err := v.again()
	return err != nil || now.in
}

// Guard puts a handler behind the door, whose routes are behind [Door.Need].
func (d *Door) Guard(next http.Handler) http.Handler {
	origin := http.NewCrossOriginProtection()
	origin.SetDenyHandler(http.HandlerFunc(refuseElsewhere))
	return withHeaders(origin.Handler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if d.tooFast(w, r) {
			return
		}
		v, guests, err := d.look(r)
		if err != nil {
			d.Log.ErrorContext(r.Context(), "door", "error", err)
			w.Header().Set("Retry-After", "5")
			http.Error(w, "The desk cannot tell who you are at this moment. Wait a little and try again; the terminal that runs it shows why.", http.StatusServiceUnavailable)
			return
		}
		if guests && (!LoopbackHost(r.Host) || forwarded(r)) {
			d.Refuse(w, r, http.StatusMisdirectedRequest)
			return
		}
		v.again = func() (visitor, error) {
			v, _, err := d.look(r)
			return v, err
		}
		next.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), visitorKey{}, v)))
	})))
}

// refuseElsewhere answers what another site's page sent: it gets no page of ours.
func refuseElsewhere(w http.ResponseWriter, _ *http.Request) {
	http.Error(w, "This came from a page of another site, so nothing was done: open the desk's own page and send it from there. "+
		"A server before the desk must pass the Host header on.", http.StatusForbidden)
}

// look finds out who asks; guests says that nobody is set up and everybody may enter.
func (d *Door) look(r *http.Request) (v visitor, guests bool, err error) {
	if key := sessionKey(r); key != "" {
		p, err := d.Register.Session(r.Context(), key, d.Now())
		if err == nil {
			return visitor{person: p, in: true}, false, nil
		}
		if !errors.Is(err, people.ErrNone) {
			return visitor{}, false, err
		}
	}
	if d.Always {
		return visitor{}, false, nil
	}
	all, err := d.Register.People(r.Context())
	if err != nil {
		return visitor{}, false, err
	}
	guests = len(all) == 0
	return visitor{in: guests}, guests, nil
}

// Need lets those through who may do something, and refuses others. It stands
// behind [Door.Guard].
func (d *Door) Need(a people.Act, next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		v, _ := r.Context().Value(visitorKey{}).(visitor)
		switch {
		case May(r.Context(), a):
			next.ServeHTTP(w, r)
		case !v.in:
			d.Refuse(w, r, http.StatusUnauthorized)
		default:
			d.Refuse(w, r, http.StatusForbidden)
		}
	})
}

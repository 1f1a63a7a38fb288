package door

import (
	"cmp"
	"context"
	"errors"
	"net/http"
	"strings"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

// sessionCookie holds a session's token.
const sessionCookie = "session"

// cookieName returns the whole name of one of our cookies. Over TLS it has the
// prefix that makes a browser refuse it from anywhere but this host (RFC 6265bis,
// section 4.1.3).
func cookieName(r *http.Request, name string) string {
	if Secure(r) {
		return "__Host-rinkpane-" + name
	}
	return "rinkpane-" + name
}

// Secure reports whether the visitor came over TLS, here or at a server before
// this one. Who lies about it only harms the own cookie.
func Secure(r *http.Request) bool {
	return r.TLS != nil || strings.EqualFold(r.Header.Get("X-Forwarded-Proto"), "https")
}

// cookie makes a cookie; a life below zero takes it back.
func cookie(r *http.Request, name, value string, life time.Duration) *http.Cookie {
	return &http.Cookie{
		Name: cookieName(r, name), Value: value, Path: "/", MaxAge: int(life / time.Second),
		HttpOnly: true, Secure: Secure(r), SameSite: http.SameSiteLaxMode,
	}
}

// sessionKey returns the key of the session that a browser is in; "" without one.
func sessionKey(r *http.Request) string {
	c, err := r.Cookie(cookieName(r, sessionCookie))
	if err != nil || c.Value == "" {
		return ""
	}
	return people.KeyOf(c.Value)
}

// The answers to a name and a password that open no session, with ErrBusy.
var (
	// ErrWrong does not say which of both is wrong.
	ErrWrong = errors.New("name and password do not belong together")
	// ErrOften says that there were too many wrong ones.
	ErrOften = errors.New("too many wrong passwords: wait a minute and try again")
)

// decoy is checked for a name that nobody has, so that the time an answer takes
// does not tell which names there are. Nobody knows a password of it.
const decoy = "$argon2id$v=19$m=65536,t=3,p=2$AAAAAAAAAAAAAAAAAAAAAA$AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"

// nobodys stands for all names that nobody may have, when wrong ones are counted.
const nobodys = "?"

// apostrophes turns one into the other: telephones set the one for which people
// type the other, and no two names differ by it (see [people.Alike]).
var apostrophes = strings.NewReplacer("'", "’", "’", "'")

// SignIn checks a name and a password and opens a session, whose cookie goes
// into w; the session that the browser was in ends. Errors: ErrWrong, ErrOften,
// ErrBusy, and those of the register.
func (d *Door) SignIn(w http.ResponseWriter, r *http.Request, name, password string) error {
	name = people.Tidy(name)
	p, err := d.Register.Person(r.Context(), name)
	if errors.Is(err, people.ErrNone) {
		p, err = d.Register.Person(r.Context(), apostrophes.Replace(name))
	}
	if errors.Is(err, people.ErrNone) {
		p, err = people.Person{Password: d.decoy}, nil
		if people.CheckName(name) != nil {
			name = nobodys
		}
	}
	if err == nil {
		err = d.check(r, p, name, password)
	}
	if err != nil {
		return err
	}
	return d.enter(w, r, p, "signed in")
}

// check checks a password in its turn, unless there were too many wrong ones for
// the name as it was typed, and writes down one that is wrong.
func (d *Door) check(r *http.Request, p people.Person, name, password string) error {
	known, err := d.knownBrowser(r, p)
	if err != nil {
		return err
	}
	at := networkOf(d.addressOf(r))
	keep := limits(name, at, known)
	if known != "" && !d.tries.all(keep) { // a cookie that was taken away, perhaps
		known, keep = "", limits(name, at, "")
	}
	if !d.tries.all(keep) {
		return d.refused(r, p, ErrOften)
	}
	free, err := d.queue.turn(r.Context(), known != "", at)
	if err != nil {
		return err
	}
	defer free()
	if !d.tries.all(keep) { // others were wrong meanwhile
		return d.refused(r, p, ErrOften)
	}
	right, err := people.Matches(p.Password, password)
	if err != nil {
		return err
	}
	if !right || p.Name == "" {
		d.tries.take(keep)
		return d.refused(r, p, ErrWrong)
	}
	d.tries.forget(keep[0].key)
	return nil
}

// refused writes a sign-in down that did not succeed, and returns why. Of too
// many from one address one a minute is told: each entry is a write to the disk.
func (d *Door) refused(r *http.Request, p people.Person, why error) error {
	who, what := cmp.Or(p.Name, people.Unnamed), "wrong password"
	if errors.Is(why, ErrOften) {
		what = "too many wrong passwords"
		told := []limit{{"told of " + networkOf(d.addressOf(r)), pace{1, time.Minute}}}
		if !d.tries.all(told) {
			return why
		}
		d.tries.take(told)
	}
	d.write(r, people.Entry{Kind: people.Failed, Who: who, What: what})
	return why
}

// write writes into the log what may go on without it.
func (d *Door) write(r *http.Request, e people.Entry) {
	e.At, e.From = d.Now(), d.addressOf(r)
	if err := d.Register.Write(context.WithoutCancel(r.Context()), e); err != nil {
		d.Log.ErrorContext(r.Context(), "door", "entry", e.What, "who", e.Who, "error", err)
	}
}

// enter opens a session in place of the browser's former one.
func (d *Door) enter(w http.ResponseWriter, r *http.Request, p people.Person, what string) error {
	token, key, err := people.Token(d.Random)
	if err != nil {
		return err
	}
	now := d.Now()
	open := people.Session{Key: key, Person: p.Name, Since: now, Expires: now.Add(people.SessionLength), From: d.addressOf(r), Device: deviceOf(r)}
	note := people.Entry{At: now, Kind: people.SignedIn, Who: p.Name, What: what, From: open.From}
	if err := d.Register.OpenSession(r.Context(), open, sessionKey(r), note); err != nil {
		return err
	}
	if err := d.rememberBrowser(w, r, p); err != nil {
		return err
	}
	http.SetCookie(w, cookie(r, sessionCookie, token, people.SessionLength))
	return nil
}

// SignOut closes the visitor's session, or all of the person's when everywhere is
// set, and takes the cookie back.
func (d *Door) SignOut(w http.ResponseWriter, r *http.Request, everywhere bool) error {
	http.SetCookie(w, cookie(r, sessionCookie, "", -time.Second))
	p, in := Person(r.Context())
	what, err := "signed out", error(nil)
	if everywhere && in {
		what, err = "signed out everywhere", d.Register.CloseSessions(r.Context(), p.Name)
	} else if key := sessionKey(r); key != "" {
		err = d.Register.CloseSession(r.Context(), key)
	}
	if err == nil && in {
		d.write(r, people.Entry{Kind: people.SignedIn, Who: p.Name, What: what})
	}
	return err
}

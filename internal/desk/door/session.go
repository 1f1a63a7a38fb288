package door

import (
	"context"
	"errors"
	"net"
	"net/http"
	"strings"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

// The session's cookie. Over TLS its name has the prefix that makes a browser
// refuse it from anywhere but this host (RFC 6265bis, section 4.1.3).
const (
	plainCookie  = "rinkpane-session"
	secureCookie = "__Host-rinkpane-session"
)

// secure reports whether the visitor came over TLS, here or at a server before
// this one. Who lies about it only harms the own cookie.
func secure(r *http.Request) bool {
	return r.TLS != nil || strings.EqualFold(r.Header.Get("X-Forwarded-Proto"), "https")
}

func cookie(r *http.Request, value string, age int) *http.Cookie {
	name := plainCookie
	if secure(r) {
		name = secureCookie
	}
	return &http.Cookie{
		Name: name, Value: value, Path: "/", MaxAge: age,
		HttpOnly: true, Secure: secure(r), SameSite: http.SameSiteLaxMode,
	}
}

func sessionKey(r *http.Request) (string, bool) {
	name := plainCookie
	if secure(r) {
		name = secureCookie
	}
	c, err := r.Cookie(name)
	if err != nil || c.Value == "" {
		return "", false
	}
	return people.KeyOf(c.Value), true
}

// The answers to a name and a password that open no session.
var (
	// ErrWrong does not say which of both is wrong.
	ErrWrong = errors.New("name and password do not belong together")
	// ErrOften says that there were too many tries.
	ErrOften = errors.New("too many tries: wait a minute and try again")
	// ErrBusy says that too many sign in at this moment.
	ErrBusy = errors.New("too many sign in at this moment; try again")
)

// checkPatience is how long a sign-in waits for those before it.
const checkPatience = 10 * time.Second

// decoy is checked for a name that nobody has, so that the time an answer takes
// does not tell which names there are. Nobody knows a password of it.
const decoy = "$argon2id$v=19$m=65536,t=3,p=2$AAAAAAAAAAAAAAAAAAAAAA$AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA"

// SignIn checks a name and a password and opens a session, whose cookie goes
// into w. Errors: ErrWrong, ErrOften, ErrBusy, and those of the register.
func (d *Door) SignIn(w http.ResponseWriter, r *http.Request, name, password string) error {
	now := d.Now()
	if people.CheckName(name) != nil {
		name = "?" // nobody's: checked and counted like another, and short
	}
	if !d.tries.allow(now, "at "+addressOf(r), perAddress) || !d.tries.allow(now, "as "+name, perName) {
		return ErrOften
	}
	if err := d.check(r.Context(), name, password); err != nil {
		return err
	}
	token, key, err := people.Token(d.Random)
	if err != nil {
		return err
	}
	open := people.Session{Key: key, Person: name, Expires: now.Add(people.SessionLength)}
	if err := d.Register.OpenSession(r.Context(), open, now); err != nil {
		return err
	}
	d.tries.forget("as " + name)
	http.SetCookie(w, cookie(r, token, int(people.SessionLength/time.Second)))
	return nil
}

func (d *Door) check(ctx context.Context, name, password string) error {
	p, err := d.Register.Person(ctx, name)
	hash := p.Password
	switch {
	case errors.Is(err, people.ErrNone):
		hash = decoy
	case err != nil:
		return err
	}
	free, err := d.turn(ctx)
	if err != nil {
		return err
	}
	defer free()
	ok, err := people.Matches(hash, password)
	if err != nil {
		return err
	}
	if !ok || hash == decoy {
		return ErrWrong
	}
	return nil
}

// SignOut closes the visitor's session and takes the cookie back.
func (d *Door) SignOut(w http.ResponseWriter, r *http.Request) error {
	http.SetCookie(w, cookie(r, "", -1))
	key, ok := sessionKey(r)
	if !ok {
		return nil
	}
	return d.Register.CloseSession(r.Context(), key)
}

// addressOf returns the address a request comes from. A server before this one
// on the same machine is believed when it names another.
func addressOf(r *http.Request) string {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		host = r.RemoteAddr
	}
	if ahead := r.Header.Get("X-Forwarded-For"); ahead != "" && LoopbackHost(host) {
		last := strings.TrimSpace(ahead[strings.LastIndexByte(ahead, ',')+1:])
		if ip := net.ParseIP(last); ip != nil {
			return ip.String()
		}
	}
	return host
}

// Admit sets up a person. Errors: [people.ErrTaken], ErrBusy, and those of the register.
func (d *Door) Admit(ctx context.Context, name string, role people.Role, password string) error {
	free, err := d.turn(ctx)
	if err != nil {
		return err
	}
	defer free()
	hash, err := people.Hash(password, d.Random)
	if err != nil {
		return err
	}
	return d.Register.AddPerson(ctx, people.Person{Name: name, Role: role, Password: hash, Since: d.Now()})
}

// turn waits until no other password is being hashed; free ends the own turn.
func (d *Door) turn(ctx context.Context) (free func(), err error) {
	wait := time.NewTimer(checkPatience)
	defer wait.Stop()
	select {
	case d.hashes <- struct{}{}:
		return func() { <-d.hashes }, nil
	case <-ctx.Done():
		return nil, ctx.Err()
	case <-wait.C:
		return nil, ErrBusy
	}
}

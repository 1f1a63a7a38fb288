package door

import (
	"context"
	"crypto/hmac"
	"crypto/sha256"
	"encoding/base64"
	"net/http"
	"strings"
	"sync"
	"time"

	"example.org/rinkpane/internal/keep/people"
)

// A browser in which somebody has signed in carries a proof of it, so that wrong
// passwords from elsewhere do not keep its owner out. The proof opens nothing: it
// only lets a password be tried. It is a random number with a signature over it,
// the name and the kept password, by the store's secret; a new password ends it.
//
//	proof = number "." HMAC-SHA256(secret, number, name, hash)
//
// Several people may use one browser: it keeps the latest few.

const (
	browserCookie = "browser"
	browserLife   = 180 * 24 * time.Hour
	mostProofs    = 4
	proofsApart   = "~" // neither base64 nor a dot
)

// knownBrowser returns the proof with which a browser is this person's; "" without one.
func (d *Door) knownBrowser(r *http.Request, p people.Person) (string, error) {
	c, err := r.Cookie(cookieName(r, browserCookie))
	if err != nil || p.Name == "" {
		return "", nil
	}
	for _, proof := range proofsOf(c.Value) {
		number, _, _ := strings.Cut(proof, ".")
		is, err := d.proof(r.Context(), number, p)
		if err != nil {
			return "", err
		}
		if hmac.Equal([]byte(is), []byte(proof)) {
			return proof, nil
		}
	}
	return "", nil
}

// rememberBrowser gives the browser a proof for this person, beside those it has.
func (d *Door) rememberBrowser(w http.ResponseWriter, r *http.Request, p people.Person) error {
	number, _, err := people.Token(d.Random)
	if err != nil {
		return err
	}
	proof, err := d.proof(r.Context(), number, p)
	if err != nil {
		return err
	}
	proofs := []string{proof}
	if c, err := r.Cookie(cookieName(r, browserCookie)); err == nil {
		old, err := d.knownBrowser(r, p)
		if err != nil {
			return err
		}
		for _, other := range proofsOf(c.Value) {
			if other != old && len(proofs) < mostProofs {
				proofs = append(proofs, other)
			}
		}
	}
	http.SetCookie(w, cookie(r, browserCookie, strings.Join(proofs, proofsApart), browserLife))
	return nil
}

func proofsOf(cookie string) []string {
	proofs := strings.Split(cookie, proofsApart)
	return proofs[:min(len(proofs), mostProofs)]
}

// proof signs a number for a person.
func (d *Door) proof(ctx context.Context, number string, p people.Person) (string, error) {
	key, err := d.secret.get(ctx, d)
	if err != nil {
		return "", err
	}
	mac := hmac.New(sha256.New, []byte(key))
	mac.Write([]byte(strings.Join([]string{number, p.Name, p.Password}, "\x00")))
	return number + "." + base64.RawURLEncoding.EncodeToString(mac.Sum(nil)), nil
}

// Secret returns the register's secret, which signs what the desk gives away; each use
// signs with words of its own before what it signs.
func (d *Door) Secret(ctx context.Context) (string, error) { return d.secret.get(ctx, d) }

// secret is the register's secret, asked for once.
type secret struct {
	mu  sync.Mutex
	key string
}

func (s *secret) get(ctx context.Context, d *Door) (string, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.key != "" {
		return s.key, nil
	}
	fresh, _, err := people.Token(d.Random)
	if err == nil {
		s.key, err = d.Register.Secret(ctx, fresh)
	}
	return s.key, err
}

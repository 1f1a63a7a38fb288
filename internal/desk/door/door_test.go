package door

import (
	"crypto/rand"
	"errors"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/store"
)

// clock is a clock that a test moves.
type clock struct{ at time.Time }

func (c *clock) now() time.Time { return c.at }

const word = "correct horse battery"

// lightHash is the hash of word with the least work that Argon2 knows, so that
// tests of who waits for whom do not measure the machine.
const lightHash = "$argon2id$v=19$m=64,t=1,p=1$bm90IHJhbmRvbSBhdCBhbA$oJvADn2WJF54ak0EQnGYqbsEdtt4kcoLKdzABqnsZ6g"

// testDoor is a door on a store of its own, with some people.
func testDoor(t *testing.T, always bool, roles map[string]people.Role) (*Door, *clock, *store.Store) {
	t.Helper()
	s, err := store.OpenFolder(t.Context(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	for name, role := range roles {
		add := people.Adding(people.Person{Name: name, Role: role, Password: lightHash, Since: time.Now()})
		if err := s.Alter(t.Context(), add, people.Entry{}); err != nil {
			t.Fatal(err)
		}
	}
	c := &clock{time.Date(2027, 1, 9, 12, 0, 0, 0, time.UTC)}
	d := New(Options{
		Register: s, Always: always, Now: c.now, Random: rand.Reader, Log: slog.New(slog.NewTextHandler(os.Stderr, nil)),
		Refuse: func(w http.ResponseWriter, _ *http.Request, status int) { w.WriteHeader(status) },
	})
	d.decoy = strings.Replace(lightHash, "oJ", "AA", 1)
	return d, c, s
}

// acts are all acts, the open one first.
var acts = []people.Act{Open, people.Read, people.Ask, people.MindCovers, people.Plan}

// may asks for each act in turn and returns the statuses.
func may(d *Door, cookies []*http.Cookie, host string) []int {
	var out []int
	for _, a := range acts {
		r := httptest.NewRequest("GET", "/", nil)
		r.Host = host
		for _, c := range cookies {
			r.AddCookie(c)
		}
		w := httptest.NewRecorder()
		d.Guard(d.Need(a, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			w.Header().Set("Who", Who(r.Context()))
		}))).ServeHTTP(w, r)
		out = append(out, w.Code)
	}
	return out
}

func same(a, b []int) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i] != b[i] {
			return false
		}
	}
	return true
}

func signIn(t *testing.T, d *Door, name, password string) ([]*http.Cookie, error) {
	t.Helper()
	r := httptest.NewRequest("POST", "/sign-in", nil)
	w := httptest.NewRecorder()
	err := d.SignIn(w, r, name, password)
	return w.Result().Cookies(), err
}

func TestEverybodyEntersWhileNobodyIsSetUp(t *testing.T) {
	d, _, _ := testDoor(t, false, nil)
	if got := may(d, nil, "127.0.0.1:8417"); !same(got, []int{200, 200, 200, 200, 200}) {
		t.Errorf("on this machine: %v", got)
	}
	if got := may(d, nil, "evil.example"); !same(got, []int{421, 421, 421, 421, 421}) {
		t.Errorf("by another name: %v", got)
	}
	reached, _, _ := testDoor(t, true, nil)
	if got := may(reached, nil, "127.0.0.1:8417"); !same(got, []int{200, 401, 401, 401, 401}) {
		t.Errorf("on an address that others reach: %v", got)
	}
}

func TestRolesOpenWhatTheyShould(t *testing.T) {
	d, _, _ := testDoor(t, false, map[string]people.Role{
		"Vi": people.Viewer, "Pho": people.Photographer, "Ste": people.Steward, "Pla": people.Planner})
	if got := may(d, nil, "desk.example"); !same(got, []int{200, 401, 401, 401, 401}) {
		t.Errorf("nobody: %v", got)
	}
	for name, want := range map[string][]int{
		"Vi":  {200, 200, 403, 403, 403},
		"Pho": {200, 200, 200, 403, 403},
		"Ste": {200, 200, 200, 200, 403},
		"Pla": {200, 200, 200, 200, 200},
	} {
		cookies, err := signIn(t, d, name, word)
		if err != nil || len(cookies) != 2 {
			t.Fatalf("%s: %v, %d cookies", name, err, len(cookies))
		}
		if got := may(d, cookies, "desk.example"); !same(got, want) {
			t.Errorf("%s: %v, expected %v", name, got, want)
		}
		forged := []*http.Cookie{{Name: cookies[1].Name, Value: cookies[1].Value[1:] + "A"}}
		if got := may(d, forged, "desk.example"); got[1] != 401 {
			t.Errorf("%s with a forged token: %v", name, got)
		}
	}
}

func TestSessionsEnd(t *testing.T) {
	d, c, s := testDoor(t, true, map[string]people.Role{"Ada": people.Planner})
	cookies, err := signIn(t, d, "Ada", word)
	if err != nil {
		t.Fatal(err)
	}
	if got := may(d, cookies, "h"); got[4] != 200 {
		t.Fatalf("signed in: %v", got)
	}
	c.at = c.at.Add(people.SessionLength + time.Second)
	if got := may(d, cookies, "h"); got[1] != 401 {
		t.Errorf("after the session's length: %v", got)
	}
	cookies, err = signIn(t, d, "Ada", word)
	if err != nil {
		t.Fatal(err)
	}
	r := httptest.NewRequest("POST", "/sign-out", nil)
	r.AddCookie(cookies[1])
	w := httptest.NewRecorder()
	if err := d.SignOut(w, r, false); err != nil {
		t.Fatal(err)
	}
	if gone := w.Result().Cookies(); len(gone) != 1 || gone[0].MaxAge >= 0 {
		t.Errorf("the cookie stays: %v", gone)
	}
	if got := may(d, cookies, "h"); got[1] != 401 {
		t.Errorf("after signing out: %v", got)
	}
	cookies, err = signIn(t, d, "Ada", word)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Alter(t.Context(), people.Removing("Ada"), people.Entry{}); err != nil {
		t.Fatal(err)
	}
	if got := may(d, cookies, "h"); got[1] != 401 {
		t.Errorf("after being removed: %v", got)
	}
}

func TestCookieIsGuarded(t *testing.T) {
	d, _, _ := testDoor(t, true, map[string]people.Role{"Ada": people.Viewer})
	plain, err := signIn(t, d, "Ada", word)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range plain {
		if !c.HttpOnly || c.Secure || c.SameSite != http.SameSiteLaxMode || c.Path != "/" || c.Domain != "" {
			t.Errorf("plain: %+v", c)
		}
	}
	r := httptest.NewRequest("POST", "/sign-in", nil)
	r.Header.Set("X-Forwarded-Proto", "https")
	w := httptest.NewRecorder()
	if err := d.SignIn(w, r, "Ada", word); err != nil {
		t.Fatal(err)
	}
	for _, c := range w.Result().Cookies() {
		if !c.Secure || !strings.HasPrefix(c.Name, "__Host-") || !c.HttpOnly {
			t.Errorf("over TLS: %+v", c)
		}
	}
}

func TestWrongPasswordsSayNothing(t *testing.T) {
	d, _, _ := testDoor(t, true, map[string]people.Role{"Ada": people.Viewer})
	for _, try := range [][2]string{{"Ada", "wrong horse battery"}, {"Ada", ""}, {"nobody", word}, {"", ""}, {"Ada\x00", word}, {"ada", word}} {
		cookies, err := signIn(t, d, try[0], try[1])
		if !errors.Is(err, ErrWrong) || len(cookies) != 0 {
			t.Errorf("%q: %v, %d cookies", try, err, len(cookies))
		}
	}
	if !strings.Contains(decoy, "argon2id") {
		t.Fatal("the decoy is no hash")
	}
	if ok, err := people.Matches(decoy, word); ok || err != nil {
		t.Errorf("the decoy: %v, %v: it must be read like another", ok, err)
	}
}

// TestAnApostropheIsOne signs in from a telephone that sets another apostrophe.
func TestAnApostropheIsOne(t *testing.T) {
	d, _, _ := testDoor(t, true, map[string]people.Role{"O'Neil": people.Viewer, "D’Arc": people.Viewer})
	for _, name := range []string{"O'Neil", "O’Neil", "D'Arc", "D’Arc", " D’Arc "} {
		if _, err := signIn(t, d, name, word); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestFormsFromElsewhereAreRefused(t *testing.T) {
	d, _, _ := testDoor(t, false, nil)
	r := httptest.NewRequest("POST", "http://127.0.0.1:8417/", nil)
	r.Header.Set("Sec-Fetch-Site", "cross-site")
	w := httptest.NewRecorder()
	d.Guard(http.NotFoundHandler()).ServeHTTP(w, r)
	if w.Code != http.StatusForbidden {
		t.Errorf("%d, expected 403", w.Code)
	}
}

// TestBehindAServerNobodyIsAtHome sends what a server before the desk sends, Host
// rewritten to the desk's own: while nobody is set up it gets nothing, and on the
// page People nobody becomes the first planner without the code.
func TestBehindAServerNobodyIsAtHome(t *testing.T) {
	d, _, _ := testDoor(t, false, nil)
	for _, header := range forwarders {
		r := httptest.NewRequest("POST", "http://127.0.0.1:8417/people", nil)
		r.Header.Set(header, "203.0.113.7")
		w := httptest.NewRecorder()
		d.Guard(http.NotFoundHandler()).ServeHTTP(w, r)
		if w.Code != http.StatusMisdirectedRequest {
			t.Errorf("%s: %d, expected 421", header, w.Code)
		}
	}
	quiet := from("127.0.0.1") // a server that adds nothing
	if err := d.Admit(quiet, "Eve", people.Planner, word, ""); !errors.Is(err, ErrCode) {
		t.Errorf("a desk without a code: %v, expected ErrCode", err)
	}
	d.Code = "QX3L-7WPB"
	for range int(perPair.burst) - 1 {
		if err := d.Admit(quiet, "Eve", people.Planner, word, "AAAA-AAAA"); !errors.Is(err, ErrCode) {
			t.Fatalf("a wrong code: %v, expected ErrCode", err)
		}
	}
	if err := d.Admit(quiet, "Eve", people.Planner, word, d.Code); !errors.Is(err, ErrOften) {
		t.Errorf("after many wrong ones: %v, expected ErrOften", err)
	}
	d, _, s := testDoor(t, false, nil)
	d.Code = "QX3L-7WPB"
	if err := d.Admit(quiet, "Ada", people.Planner, word, "qx3l-7wpb "); err != nil {
		t.Errorf("with the code: %v", err)
	}
	if all, err := s.People(t.Context()); len(all) != 1 || err != nil {
		t.Errorf("%d people, %v", len(all), err)
	}
}

package desk

import (
	"crypto/rand"
	"net/http"
	"net/http/httptest"
	"net/url"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
)

// firstCode is the code of the tests' desks for the first sign-up.
const firstCode = "QX3L-7WPB"

// TestLastPlannerStays lets a planner go only while another one is there: the
// others could let nobody in.
func TestLastPlannerStays(t *testing.T) {
	muchComputed(t)
	h, _, s := ownDesk(t, true)
	hash, err := people.Hash("long enough word", rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	for name, role := range map[string]people.Role{"Ada": people.Planner, "Bo": people.Planner, "Vi": people.Viewer} {
		if err := s.Alter(t.Context(), people.Adding(people.Person{Name: name, Role: role, Password: hash, Since: time.Now()}), people.Entry{}); err != nil {
			t.Fatal(err)
		}
	}
	in := ask(t, h, "POST", "/sign-in", "name=Ada&password=long+enough+word").Result().Cookies()
	if len(in) != 2 {
		t.Fatal("Ada cannot sign in")
	}
	for _, c := range []struct {
		name   string
		status int
	}{{"Nobody", 404}, {"Bo", 303}, {"Ada", 422}, {"Vi", 303}, {"Ada", 422}} {
		remove := func(sure string) *httptest.ResponseRecorder {
			r := httptest.NewRequest("POST", "http://127.0.0.1:8417/people/remove", strings.NewReader(url.Values{"name": {c.name}, "sure": {sure}}.Encode()))
			r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
			r.AddCookie(in[1])
			w := httptest.NewRecorder()
			h.ServeHTTP(w, r)
			return w
		}
		says(t, remove(""), 200, "Remove "+c.name+"?", "Leave "+c.name+" in") // asked first, and nothing done
		w := remove("yes")
		says(t, w, c.status)
		if c.status == 422 {
			says(t, w, 422, "last planner")
		}
	}
}

// TestOwnPassword changes a password on the desk: the old one opens nothing, nor do
// the sessions that it opened, and what was done is in the log.
func TestOwnPassword(t *testing.T) {
	muchComputed(t)
	h, _, s := ownDesk(t, true)
	hash, err := people.Hash("long enough word", rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Alter(t.Context(), people.Adding(people.Person{Name: "Ada", Role: people.Planner, Password: hash, Since: time.Now()}), people.Entry{}); err != nil {
		t.Fatal(err)
	}
	signIn := func(password string) []*http.Cookie {
		return ask(t, h, "POST", "/sign-in", url.Values{"name": {"Ada"}, "password": {password}}.Encode()).Result().Cookies()
	}
	here, phone := signIn("long enough word"), signIn("long enough word")
	as := func(who []*http.Cookie, method, path, body string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(method, "http://127.0.0.1:8417"+path, strings.NewReader(body))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		for _, c := range who {
			r.AddCookie(c)
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w
	}
	says(t, as(here, "GET", "/account", ""), 200, "Ada, planner", "Sign out everywhere")
	for body, want := range map[string]struct {
		status int
		says   string
	}{
		"password=wrong+wrong&fresh=another+long+word&again=another+long+word":      {401, "do not belong together"},
		"password=long+enough+word&fresh=short&again=short":                         {422, "10 to 200"},
		"password=long+enough+word&fresh=another+long+word&again=another+long+wort": {422, "differ"},
	} {
		says(t, as(here, "POST", "/account", body), want.status, want.says)
	}
	done := as(here, "POST", "/account", "password=long+enough+word&fresh=another+long+word&again=another+long+word")
	says(t, done, 303)
	here = done.Result().Cookies()
	says(t, as(here, "GET", "/account?done=yes", ""), 200, "password is changed")
	says(t, as(phone, "GET", "/arenas", ""), 303) // to sign in
	if old := signIn("long enough word"); len(old) != 0 {
		t.Error("the old password opens the door")
	}
	phone = signIn("another long word")
	says(t, as(phone, "GET", "/people", ""), 200, `Ada</a>, planner`, "set a new password", "wrong password", "signed in", "192.0.2.1")
	again := as(phone, "POST", "/sign-in", "name=Ada&password=another+long+word").Result().Cookies()
	says(t, as(phone, "GET", "/arenas", ""), 303) // the browser signed in anew
	says(t, as(here, "POST", "/sign-out", "everywhere=yes"), 303)
	says(t, as(again, "GET", "/arenas", ""), 303)
}

// TestSessionsAreListed signs out one browser of two from the list, never another
// person's, and lets a planner sign somebody out everywhere.
func TestSessionsAreListed(t *testing.T) {
	muchComputed(t)
	h, _, s := ownDesk(t, true)
	hash, err := people.Hash("long enough word", rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	for name, role := range map[string]people.Role{"Ada": people.Planner, "Vi": people.Viewer} {
		if err := s.Alter(t.Context(), people.Adding(people.Person{Name: name, Role: role, Password: hash, Since: time.Now()}), people.Entry{}); err != nil {
			t.Fatal(err)
		}
	}
	as := func(who []*http.Cookie, agent, method, path, body string) *httptest.ResponseRecorder {
		r := httptest.NewRequest(method, "http://127.0.0.1:8417"+path, strings.NewReader(body))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("User-Agent", agent)
		for _, c := range who {
			r.AddCookie(c)
		}
		w := httptest.NewRecorder()
		h.ServeHTTP(w, r)
		return w
	}
	signIn := func(name, agent string) []*http.Cookie {
		return as(nil, agent, "POST", "/sign-in", "name="+name+"&password=long+enough+word").Result().Cookies()
	}
	here, phone, viewer := signIn("Ada", "X (desktop)"), signIn("Ada", "X Mobile"), signIn("Vi", "")
	says(t, as(here, "", "GET", "/account", ""), 200, "computer", "phone", "192.0.2.1", "this browser")
	keys := func(name string) (all []string) {
		open, err := s.Sessions(t.Context(), name, time.Now())
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range open {
			all = append(all, o.Key)
		}
		return all
	}
	says(t, as(here, "", "POST", "/account/session", "session="+keys("Vi")[0]), 303)
	says(t, as(viewer, "", "GET", "/account", ""), 200, "unknown")
	says(t, as(here, "", "POST", "/account/session", "session="+people.KeyOf(phone[1].Value)), 303)
	says(t, as(phone, "", "GET", "/account", ""), 303) // to sign in
	says(t, as(here, "", "GET", "/account", ""), 200, "this browser")
	says(t, as(viewer, "", "POST", "/people/sessions", "name=Ada"), 403)
	says(t, as(here, "", "POST", "/people/sessions", "name=Nobody"), 404)
	says(t, as(here, "", "POST", "/people/sessions", "name=Vi"), 303)
	says(t, as(viewer, "", "GET", "/account", ""), 303)
	says(t, as(here, "", "GET", "/people", ""), 200, "signed Vi out everywhere", "signed out a phone")
}

// TestOwnPath keeps a form from sending a visitor elsewhere.
func TestOwnPath(t *testing.T) {
	for _, p := range []string{"/arenas", "/arena/east?hole=B2"} {
		if got := shell.OwnPath(p); got != p {
			t.Errorf("%q became %q", p, got)
		}
	}
	for _, p := range []string{"", "arenas", "//evil.example", "/\\evil.example", "/\t/evil.example", "\t//evil.example", "/\n/evil.example", "https://evil.example"} {
		if got := shell.OwnPath(p); got != "/" {
			t.Errorf("%q became %q", p, got)
		}
	}
}

package main

import (
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os/exec"
	"strings"
	"testing"

	"example.org/rinkpane/internal/keep/store/cluster"
)

// TestTwoDesksOnOneDatabase opens two desks on one PostgreSQL: each sees what
// the other saves, the second save from one base is told, and people set up
// there must sign in at both.
func TestTwoDesksOnOneDatabase(t *testing.T) {
	server := cluster.Alone(t)
	dsn := server.Database(t)
	first, second := startDesk(t, "--db", dsn), startDesk(t, "--db", dsn)
	if s, err := first.save(1); err != nil || s.Version.Number != 2 {
		t.Fatalf("%+v, %v", s, err)
	}
	if head := get[struct{ Head int }](t, second.url+crashArena).Head; head != 2 {
		t.Errorf("the other desk sees version %d", head)
	}
	if _, err := second.save(1); err == nil || !strings.Contains(err.Error(), "status 409") {
		t.Errorf("a second save from version 1: %v, expected 409", err)
	}
	if s, err := second.save(2); err != nil || s.Version.Number != 3 {
		t.Errorf("%+v, %v", s, err)
	}
	add := exec.Command("rinkpane", "people", "add", "Ada", "--role", "planner", "--db", dsn)
	add.Stdin = strings.NewReader("a long secret\n")
	if out, err := add.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	for _, d := range []deskProcess{first, second} {
		answer, err := http.Get(d.url + crashArena)
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		if answer.StatusCode != http.StatusUnauthorized {
			t.Errorf("%s answers %d to a stranger", d.url, answer.StatusCode)
		}
	}
	signedOutAtBoth(t, first, second, dsn)
}

// signedOutAtBoth signs Ada in at the first desk; the second knows her, and when she signs
// out everywhere there, the first does not let her in. Both stand in the log.
func signedOutAtBoth(t *testing.T, first, second deskProcess, dsn string) {
	t.Helper()
	jar, err := cookiejar.New(nil) // which does not tell ports apart
	if err != nil {
		t.Fatal(err)
	}
	browser := &http.Client{Jar: jar}
	post := func(url string, fields url.Values) {
		t.Helper()
		answer, err := browser.PostForm(url, fields)
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
	}
	cookies := func(d deskProcess) []*http.Cookie {
		at, err := url.Parse(d.url)
		if err != nil {
			t.Fatal(err)
		}
		return jar.Cookies(at)
	}
	status := func(d deskProcess, with []*http.Cookie) int {
		t.Helper()
		r, err := http.NewRequestWithContext(t.Context(), http.MethodGet, d.url+crashArena, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range with {
			r.AddCookie(c)
		}
		answer, err := http.DefaultClient.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		answer.Body.Close()
		return answer.StatusCode
	}
	post(first.url+"sign-in", url.Values{"name": {"Ada"}, "password": {"a long secret"}})
	in := cookies(first)
	if at1, at2 := status(first, in), status(second, in); at1 != http.StatusOK || at2 != http.StatusOK {
		t.Errorf("signed in: %d and %d", at1, at2)
	}
	post(second.url+"sign-out", url.Values{"everywhere": {"yes"}})
	if at1, at2 := status(first, in), status(second, in); at1 != http.StatusUnauthorized || at2 != http.StatusUnauthorized {
		t.Errorf("signed out everywhere at the second: %d and %d", at1, at2)
	}
	out, err := exec.Command("rinkpane", "people", "log", "--db", dsn).CombinedOutput()
	if log := string(out); err != nil || !strings.Contains(log, "Ada: signed in") || !strings.Contains(log, "Ada: signed out everywhere") {
		t.Errorf("the log says %s, %v", log, err)
	}
}

// TestADatabaseThatRestarts takes the database away under a desk: pages and calls
// answer 503 and say what to do, and once it is back they answer as before.
func TestADatabaseThatRestarts(t *testing.T) {
	server := cluster.Alone(t)
	dsn := server.Database(t)
	d := startDesk(t, "--db", dsn)
	expect := func(want int) {
		t.Helper()
		for _, path := range []string{crashArena, crashArena + "/versions", "arenas", "arena/sorrel-flats/versions"} {
			answer, err := http.Get(d.url + path)
			if err != nil {
				t.Fatal(err)
			}
			answer.Body.Close()
			if answer.StatusCode != want {
				t.Errorf("%s: %d, expected %d", path, answer.StatusCode, want)
			}
		}
		for path, status := range map[string]int{crashArena + "/versions/3000000000000": 404, "api/arenas/sorrel%00flats": 404} {
			if answer, err := http.Get(d.url + path); err != nil {
				t.Fatal(err)
			} else if answer.Body.Close(); want == http.StatusOK && answer.StatusCode != status {
				t.Errorf("%s: %d, expected %d", path, answer.StatusCode, status)
			}
		}
	}
	expect(http.StatusOK)
	if err := server.Down(); err != nil {
		t.Fatal(err)
	}
	expect(http.StatusServiceUnavailable)
	if err := server.Up(); err != nil {
		t.Fatal(err)
	}
	expect(http.StatusOK)
}

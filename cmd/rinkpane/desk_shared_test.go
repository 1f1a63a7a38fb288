package main

import (
	"net/http"
	"os/exec"
	"strings"
	"testing"

	"example.org/rinkpane/internal/keep/store/cluster"
)

// TestTwoDesksOnOneDatabase opens two desks on one PostgreSQL: each sees what
// the other saves, the second save from one base is told, and people set up
// there must sign in at both.
func TestTwoDesksOnOneDatabase(t *testing.T) {
	if testing.Short() {
		t.Skip("asks a PostgreSQL; make test does, make quick does not")
	}
	server, err := cluster.Start()
	if err != nil {
		t.Fatal(err)
	}
	defer server.Stop()
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
}

// TestADatabaseThatRestarts takes the database away under a desk: pages and calls
// answer 503 and say what to do, and once it is back they answer as before.
func TestADatabaseThatRestarts(t *testing.T) {
	if testing.Short() {
		t.Skip("asks a PostgreSQL; make test does, make quick does not")
	}
	server, err := cluster.Start()
	if err != nil {
		t.Fatal(err)
	}
	defer server.Stop()
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

package store

import (
	"errors"
	"testing"

	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/revision"
)

// TestAServerThatRestarts takes PostgreSQL down under an open store: every call
// says that the database does not answer, and after the restart all is as before.
func TestAServerThatRestarts(t *testing.T) {
	s, err := OpenDSN(t.Context(), server.Database(t))
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	mustAdd(t, s, "east")
	ctx := t.Context()
	calls := map[string]func() error{
		"document": func() error { _, err := s.Document(ctx, "east"); return err },
		"list":     func() error { _, err := s.Documents(ctx, revision.Arena, false); return err },
		"save":     func() error { _, err := s.Save(ctx, "east", "", 1, draft("x", "x")); return err },
		"add":      func() error { _, err := s.Add(ctx, revision.Arena, "west", "West", draft("x", "x")); return err },
		"away":     func() error { return s.SetAway(ctx, "east", false) },
		"people":   func() error { _, err := s.People(ctx); return err },
		"let in":   func() error { return s.Alter(ctx, people.Adding(people.Person{Name: "Ada"}), people.Entry{}) },
		"session":  func() error { _, err := s.Session(ctx, "k", noon); return err },
		"sign out": func() error { return s.CloseSession(ctx, "k") },
		"log":      func() error { return s.Write(ctx, people.Entry{}) },
	}
	if err := server.Down(); err != nil {
		t.Fatal(err)
	}
	for name, call := range calls {
		if err := call(); !errors.Is(err, revision.ErrDown) {
			t.Errorf("%s: %v, expected ErrDown", name, err)
		}
	}
	if err := server.Up(); err != nil {
		t.Fatal(err)
	}
	if v, err := s.Save(ctx, "east", "", 1, draft("after", "y")); err != nil || v.Number != 2 {
		t.Errorf("after the restart: %+v, %v", v, err)
	}
}

package store

import (
	"errors"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/rinkpane/internal/keep/people"
)

func TestPeopleAndSessions(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		ada := people.Person{Name: "Ada", Role: people.Planner, Password: "hash 1", Since: noon}
		bo := people.Person{Name: "Bo", Role: people.Viewer, Password: "hash 2", Since: noon}
		for _, p := range []people.Person{bo, ada} {
			if err := s.AddPerson(ctx, p); err != nil {
				t.Fatal(err)
			}
		}
		if err := s.AddPerson(ctx, ada); !errors.Is(err, people.ErrTaken) {
			t.Errorf("adding twice: %v", err)
		}
		all, err := s.People(ctx)
		if d := cmp.Diff([]people.Person{ada, bo}, all); d != "" || err != nil {
			t.Errorf("%v\n%s", err, d)
		}
		open := people.Session{Key: "k1", Person: "Ada", Expires: noon.Add(time.Hour)}
		if err := s.OpenSession(ctx, open, noon); err != nil {
			t.Fatal(err)
		}
		got, err := s.Session(ctx, "k1", noon.Add(59*time.Minute))
		if d := cmp.Diff(ada, got); d != "" || err != nil {
			t.Errorf("%v\n%s", err, d)
		}
		wantNone(t, s, "k1", noon.Add(time.Hour), "an expired session")
		wantNone(t, s, "k2", noon, "a forged key")

		ada.Role, ada.Password = people.Viewer, "hash 3"
		if err := s.ChangePerson(ctx, ada); err != nil {
			t.Fatal(err)
		}
		wantNone(t, s, "k1", noon, "a session from before a change of password")
		if p, err := s.Person(ctx, "Ada"); err != nil || p != ada {
			t.Errorf("person %+v, %v", p, err)
		}
	})
}

func TestSessionsEnd(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		if err := s.AddPerson(ctx, people.Person{Name: "Ada", Role: people.Planner, Since: noon}); err != nil {
			t.Fatal(err)
		}
		for _, key := range []string{"a", "b"} {
			if err := s.OpenSession(ctx, people.Session{Key: key, Person: "Ada", Expires: noon.Add(time.Hour)}, noon); err != nil {
				t.Fatal(err)
			}
		}
		if err := errors.Join(s.CloseSession(ctx, "a"), s.CloseSession(ctx, "a")); err != nil {
			t.Errorf("signing out twice: %v", err)
		}
		wantNone(t, s, "a", noon, "a closed session")
		if err := s.RemovePerson(ctx, "Ada"); err != nil {
			t.Fatal(err)
		}
		wantNone(t, s, "b", noon, "a session of somebody removed")
		for name, err := range map[string]error{
			"remove": s.RemovePerson(ctx, "Ada"),
			"change": s.ChangePerson(ctx, people.Person{Name: "Ada", Role: people.Viewer}),
			"open":   s.OpenSession(ctx, people.Session{Key: "c", Person: "Ada", Expires: noon}, noon),
		} {
			if !errors.Is(err, people.ErrNone) {
				t.Errorf("%s: got %v, want ErrNone", name, err)
			}
		}
	})
}

func wantNone(t *testing.T, s *Store, key string, now time.Time, what string) {
	t.Helper()
	if p, err := s.Session(t.Context(), key, now); !errors.Is(err, people.ErrNone) {
		t.Errorf("%s opens the door for %+v (%v)", what, p, err)
	}
}

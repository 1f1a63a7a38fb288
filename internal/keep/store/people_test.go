package store

import (
	"database/sql"
	"errors"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/rinkpane/internal/keep/people"
)

func mustAlter(t *testing.T, s *Store, e people.Edit) {
	t.Helper()
	if err := s.Alter(t.Context(), e, people.Entry{At: noon, Kind: people.Altered}); err != nil {
		t.Fatal(err)
	}
}

func mustOpen(t *testing.T, s *Store, key, name, before string) {
	t.Helper()
	open := people.Session{Key: key, Person: name, Expires: noon.Add(time.Hour)}
	if err := s.OpenSession(t.Context(), open, before, people.Entry{At: noon, Kind: people.SignedIn}); err != nil {
		t.Fatal(err)
	}
}

func TestPeopleAndSessions(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		ada := people.Person{Name: "Ada", Role: people.Planner, Password: "hash 1", Since: noon}
		bo := people.Person{Name: "Bo", Role: people.Viewer, Password: "hash 2", Since: noon}
		mustAlter(t, s, people.Adding(bo))
		mustAlter(t, s, people.Adding(ada))
		if err := s.Alter(ctx, people.Adding(ada), people.Entry{}); !errors.Is(err, people.ErrTaken) {
			t.Errorf("adding twice: %v", err)
		}
		all, err := s.People(ctx)
		if d := cmp.Diff([]people.Person{ada, bo}, all); d != "" || err != nil {
			t.Errorf("%v\n%s", err, d)
		}
		mustOpen(t, s, "k1", "Ada", "")
		mustOpen(t, s, "k3", "Bo", "")
		got, err := s.Session(ctx, "k1", noon.Add(59*time.Minute))
		if d := cmp.Diff(ada, got); d != "" || err != nil {
			t.Errorf("%v\n%s", err, d)
		}
		wantNone(t, s, "k1", noon.Add(time.Hour), "an expired session")
		wantNone(t, s, "k2", noon, "a forged key")

		ada.Role, ada.Password = people.Viewer, "hash 3"
		mustAlter(t, s, people.Changing("Ada", func(p *people.Person) { *p = ada }))
		wantNone(t, s, "k1", noon, "a session from before a change of password")
		if p, err := s.Person(ctx, "Ada"); err != nil || p != ada {
			t.Errorf("person %+v, %v", p, err)
		}
		if p, err := s.Session(ctx, "k3", noon); err != nil || p != bo {
			t.Errorf("somebody else's session: %+v, %v", p, err)
		}
	})
}

func TestSessionsEnd(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		mustAlter(t, s, people.Adding(people.Person{Name: "Ada", Role: people.Planner, Since: noon}))
		mustOpen(t, s, "a", "Ada", "")
		mustOpen(t, s, "b", "Ada", "")
		if err := errors.Join(s.CloseSession(ctx, "a"), s.CloseSession(ctx, "a")); err != nil {
			t.Errorf("signing out twice: %v", err)
		}
		wantNone(t, s, "a", noon, "a closed session")
		mustOpen(t, s, "c", "Ada", "b")
		wantNone(t, s, "b", noon, "a session of a browser that signed in anew")
		mustOpen(t, s, "d", "Ada", "")
		if err := s.CloseSessions(ctx, "Ada"); err != nil {
			t.Error(err)
		}
		wantNone(t, s, "c", noon, "a session after signing out everywhere")
		wantNone(t, s, "d", noon, "another one")
		mustOpen(t, s, "e", "Ada", "")
		mustAlter(t, s, people.Removing("Ada"))
		wantNone(t, s, "e", noon, "a session of somebody removed")
		for name, err := range map[string]error{
			"remove": s.Alter(ctx, people.Removing("Ada"), people.Entry{}),
			"change": s.Alter(ctx, people.Changing("Ada", func(*people.Person) {}), people.Entry{}),
			"open":   s.OpenSession(ctx, people.Session{Key: "c", Person: "Ada", Expires: noon}, "", people.Entry{At: noon}),
		} {
			if !errors.Is(err, people.ErrNone) {
				t.Errorf("%s: got %v, want ErrNone", name, err)
			}
		}
		for _, odd := range []string{"A\x00", "\xff"} {
			if _, err := s.Person(ctx, odd); !errors.Is(err, people.ErrNone) {
				t.Errorf("Person(%q): %v", odd, err)
			}
		}
	})
}

// TestSessionsAreListed lists a person's live sessions, the newest first, with what
// an earlier program did not write told as unknown.
func TestSessionsAreListed(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		for _, name := range []string{"Ada", "Bo"} {
			mustAlter(t, s, people.Adding(people.Person{Name: name, Role: people.Viewer, Since: noon}))
		}
		first := people.Session{Key: "a", Person: "Ada", Since: noon, Expires: noon.Add(time.Hour), From: "192.0.2.7", Device: people.Phone}
		next := people.Session{Key: "b", Person: "Ada", Since: noon.Add(time.Minute), Expires: noon.Add(2 * time.Hour), Device: people.Computer}
		old := people.Session{Key: "o", Person: "Ada", Expires: noon.Add(time.Hour)}
		for _, open := range []people.Session{first, next, {Key: "c", Person: "Bo", Since: noon, Expires: noon.Add(time.Hour)}} {
			if err := s.OpenSession(t.Context(), open, "", people.Entry{At: noon}); err != nil {
				t.Fatal(err)
			}
		}
		if err := s.do(t.Context(), `INSERT INTO session (token_key, person, expires_us) VALUES ('o', 'Ada', $1)`, old.Expires.UnixMicro()); err != nil {
			t.Fatal(err)
		}
		for at, want := range map[time.Duration][]people.Session{0: {next, first, old}, time.Hour: {next}, 2 * time.Hour: nil} {
			got, err := s.Sessions(t.Context(), "Ada", noon.Add(at))
			if d := cmp.Diff(want, got); d != "" || err != nil {
				t.Errorf("after %v: %v\n%s", at, err, d)
			}
		}
	})
}

// TestTwoPlannersCannotRemoveEachOther lets planners remove each other at once, on
// two connections: one of them stays.
func TestTwoPlannersCannotRemoveEachOther(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		const rounds = 5
		for round := range rounds {
			for _, name := range []string{"Ada", "Bo"} {
				err := s.Alter(t.Context(), people.Adding(people.Person{Name: name, Role: people.Planner, Since: noon}), people.Entry{At: noon})
				if err != nil && !errors.Is(err, people.ErrTaken) {
					t.Fatal(err)
				}
			}
			var both sync.WaitGroup
			var refused atomic.Int64
			for _, name := range []string{"Ada", "Bo"} {
				both.Go(func() {
					slow := func(all []people.Person) ([]people.Person, error) { // so that both look before either acts
						time.Sleep(20 * time.Millisecond)
						return people.Removing(name).KeepingPlanner(true)(all)
					}
					err := s.Alter(t.Context(), slow, people.Entry{At: noon})
					if errors.Is(err, people.ErrLast) {
						refused.Add(1)
					} else if err != nil {
						t.Error(err)
					}
				})
			}
			both.Wait()
			left, err := s.People(t.Context())
			if err != nil || len(left) != 1 || refused.Load() != 1 {
				t.Fatalf("round %d: %d are left, %d were refused, %v", round, len(left), refused.Load(), err)
			}
		}
	})
}

// TestTheLogIsBounded fills one kind of entry up: the oldest go, those of other
// kinds stay, and an act that fails leaves no entry.
func TestTheLogIsBounded(t *testing.T) {
	if testing.Short() {
		t.Skip("writes many rows one after another; make test runs it without the race detector")
	}
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		first := people.Entry{At: noon, Kind: people.Altered, Who: "terminal", What: "let Ada in as planner", From: "root"}
		ada := people.Person{Name: "Ada", Role: people.Planner, Since: noon}
		if err := s.Alter(ctx, people.Adding(ada), first); err != nil {
			t.Fatal(err)
		}
		if err := s.Alter(ctx, people.Adding(ada), people.Entry{At: noon, What: "not done"}); err == nil {
			t.Error("added twice")
		}
		err := s.inTx(ctx, func(tx *sql.Tx) error { // one transaction: each entry alone waits for the disk
			for i := range people.LogLength + 20 {
				e := people.Entry{At: noon.Add(time.Duration(i/2) * time.Second), Kind: people.Failed, Who: "Ada", What: strconv.Itoa(i)}
				if err := writeEntry(ctx, tx, e); err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
		all, err := s.Log(ctx, 2*people.LogLength)
		if err != nil || len(all) > people.LogLength+1 || len(all) < people.LogLength-1 {
			t.Fatalf("%d entries, %v", len(all), err)
		}
		if newest, oldest := all[0], all[len(all)-1]; newest.At.Before(oldest.At) || oldest != first {
			t.Errorf("newest %+v, oldest %+v", newest, oldest)
		}
		if few, err := s.Log(ctx, 3); len(few) != 3 || err != nil {
			t.Errorf("%d of three, %v", len(few), err)
		}
	})
}

func TestTheSecretStays(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		for range 2 {
			for _, fresh := range []string{"one", "two"} {
				if got, err := s.Secret(t.Context(), fresh); got != "one" || err != nil {
					t.Errorf("%q, %v", got, err)
				}
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

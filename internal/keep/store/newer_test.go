package store

import (
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"example.org/rinkpane/internal/keep/revision"
)

// TestANewerStoreIsLeftAlone opens tables that a newer program has brought
// further: they are refused in one line, with both versions and the cure.
func TestANewerStoreIsLeftAlone(t *testing.T) {
	folder, dsn := t.TempDir(), server.Database(t)
	files, err := migrations.ReadDir("migrations")
	if err != nil {
		t.Fatal(err)
	}
	for name, open := range map[string]func() (*Store, error){
		"SQLite":     func() (*Store, error) { return OpenFolder(t.Context(), folder) },
		"PostgreSQL": func() (*Store, error) { return OpenDSN(t.Context(), dsn) },
	} {
		t.Run(name, func(t *testing.T) {
			s, err := open()
			if err != nil {
				t.Fatal(err)
			}
			if _, err := s.db.ExecContext(t.Context(), `INSERT INTO goose_db_version (version_id, is_applied) VALUES (99, `+s.yes()+`)`); err != nil {
				t.Fatal(err)
			}
			s.Close()
			s, err = open()
			if err == nil {
				s.Close()
				t.Fatal("a newer store was opened")
			}
			for _, word := range []string{"newer rinkpane", "version 99", fmt.Sprintf("knows %d)", len(files)), "another store"} {
				if !strings.Contains(err.Error(), word) || strings.Contains(err.Error(), "\n") {
					t.Errorf("%v: expected %q in one line", err, word)
				}
			}
		})
	}
}

func (s *Store) yes() string {
	if s.sqlite {
		return "1"
	}
	return "true"
}

// TestACopyOfTheFileIsWhole copies the database file as the README says: after the
// desk has closed, and while it is open, by SQLite's own statement.
func TestACopyOfTheFileIsWhole(t *testing.T) {
	folder, closed, open := t.TempDir(), t.TempDir(), t.TempDir()
	s, err := OpenFolder(t.Context(), folder)
	if err != nil {
		t.Fatal(err)
	}
	want := mustAdd(t, s, "east")
	db, err := sql.Open("sqlite", filepath.Join(folder, FileName))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := db.ExecContext(t.Context(), `VACUUM INTO '`+filepath.Join(open, FileName)+`'`); err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(db.Close(), s.Close()); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(folder, FileName))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(closed, FileName), text, 0o600); err != nil {
		t.Fatal(err)
	}
	for what, copied := range map[string]string{"after closing": closed, "while open": open} {
		s, err := OpenFolder(t.Context(), copied)
		if err != nil {
			t.Fatal(err)
		}
		if got, err := s.Version(t.Context(), "east", 0); !reflect.DeepEqual(got, want) || err != nil {
			t.Errorf("%s: %+v, %v", what, got, err)
		}
		s.Close()
	}
}

// TestOddAddressesAreNobodys asks both stores for what neither can hold.
func TestOddAddressesAreNobodys(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		mustAdd(t, s, "east")
		for _, n := range []int{3_000_000_000_000, 2, -1} {
			if _, err := s.Version(ctx, "east", n); !errors.Is(err, revision.ErrNone) {
				t.Errorf("version %d: %v", n, err)
			}
		}
		for _, id := range []string{"east\x00", "\xff", ""} {
			_, err1 := s.Version(ctx, id, 0)
			_, err2 := s.Document(ctx, id)
			_, err3 := s.Save(ctx, id, "", 1, draft("x", "x"))
			for i, err := range []error{err1, err2, err3, s.SetAway(ctx, id, true)} {
				if !errors.Is(err, revision.ErrNone) {
					t.Errorf("%q, call %d: %v", id, i, err)
				}
			}
			if all, err := s.History(ctx, id, 10); len(all) != 0 || err != nil {
				t.Errorf("history of %q: %d, %v", id, len(all), err)
			}
		}
	})
}

// TestNotesAreOneLine saves notes that a list of versions could not show.
func TestNotesAreOneLine(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		for i, c := range []struct{ note, want string }{
			{strings.Repeat("穴", 180), strings.Repeat("穴", 180)},
			{strings.Repeat("穴", 400), strings.Repeat("穴", 249) + "…"},
			{"a\x00b\x1b[31m\u202ec\nd\te\u2028f", "ab[31mc d e f"},
		} {
			v, err := s.Add(t.Context(), revision.Arena, "hall-"+string(rune('a'+i)), "Hall", draft(c.note, "x"))
			if err != nil {
				t.Fatal(err)
			}
			kept, err := s.Version(t.Context(), v.Document, 1)
			if err != nil || kept.What != c.want || v.What != c.want {
				t.Errorf("%.40q: kept as %q, %v", c.note, kept.What, err)
			}
		}
	})
}

package store

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/revision"
)

// A backup taken while events come is one moment of the store; it restores into either
// database, to the last event, photo, person and version, and into none that has anything.
func TestBackupAndRestore(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		want := mustAdd(t, s, "east")
		photo := custody.Photo{Kind: "image/png", Data: []byte("\x89PNG\x00\xff")}
		err1 := s.Alter(ctx, people.Adding(people.Person{Name: "Ada", Since: noon}), people.Entry{At: noon, Who: "terminal", What: "let Ada in"})
		if err := errors.Join(err1, s.KeepPhoto(ctx, noon, "east", "Ada", photo)); err != nil {
			t.Fatal(err)
		}
		var busy sync.WaitGroup
		stop := make(chan struct{})
		busy.Go(func() {
			for n := 0; ; n++ {
				select {
				case <-stop:
					return
				default:
				}
				if _, err := s.Append(ctx, noon, []custody.Event{coverEvent(0, n)}); err != nil {
					t.Error(err)
					return
				}
			}
		})
		if err := s.Await(ctx, "east", 5); err != nil {
			t.Fatal(err)
		}
		var file bytes.Buffer
		err := s.Backup(ctx, t.TempDir(), &file)
		close(stop)
		busy.Wait()
		if err != nil {
			t.Fatal(err)
		}
		eachStore(t, func(t *testing.T, to *Store) {
			from, err := Unpack(ctx, bytes.NewReader(file.Bytes()), t.TempDir())
			if err != nil {
				t.Fatal(err)
			}
			defer from.Close()
			if err := to.Restore(ctx, from); err != nil {
				t.Fatal(err)
			}
			sameKept(t, s, to)
			if v, err := to.Version(ctx, "east", 0); err != nil || v.Text != want.Text {
				t.Errorf("version %+v, %v", v, err)
			}
			if p, err := to.Photo(ctx, "east", photo.Key()); err != nil || !bytes.Equal(p.Data, photo.Data) {
				t.Errorf("photo %+v, %v", p, err)
			}
			if all, err := to.People(ctx); err != nil || len(all) != 1 || all[0].Name != "Ada" {
				t.Errorf("people %+v, %v", all, err)
			}
			if err := to.Restore(ctx, from); !errors.Is(err, ErrNotEmpty) {
				t.Errorf("restored twice: %v", err)
			}
			if got, err := to.Append(ctx, noon, []custody.Event{coverEvent(5, 1)}); err != nil || got[0].Refused != nil {
				t.Errorf("the restored store keeps no event: %+v, %v", got, err)
			}
		})
	})
}

// sameKept holds the events of a backup to be the first ones of its store, without a gap.
func sameKept(t *testing.T, s, restored *Store) {
	t.Helper()
	was, err1 := s.Since(t.Context(), "east", 0, 1_000_000)
	is, err2 := restored.Since(t.Context(), "east", 0, 1_000_000)
	if err1 != nil || err2 != nil || len(is) < 5 || len(is) > len(was) {
		t.Fatalf("%d of %d events, %v, %v", len(is), len(was), err1, err2)
	}
	for i := range is {
		if is[i].Seq != int64(i+1) || !is[i].Same(was[i]) || is[i].Who != was[i].Who {
			t.Fatalf("event %d is %+v, was %+v", i, is[i], was[i])
		}
	}
}

func TestSpoiltBackups(t *testing.T) {
	s, err := OpenFolder(t.Context(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	mustAdd(t, s, "east")
	var file bytes.Buffer
	if err := s.Backup(t.Context(), t.TempDir(), &file); err != nil {
		t.Fatal(err)
	}
	whole := file.String()
	for name, c := range map[string]struct {
		file string
		want error
	}{
		"one bit":      {whole[:5000] + string(whole[5000]^1) + whole[5001:], ErrSpoilt},
		"cut short":    {whole[:len(whole)-1], ErrSpoilt},
		"longer":       {whole + "x", ErrSpoilt},
		"another hash": {fmt.Sprintf(backupLine, strings.Repeat("0", 64)) + whole[strings.Index(whole, "\n")+1:], ErrSpoilt},
		"no backup":    {"PK\x03\x04", ErrNoBackup},
		"empty":        {"", ErrNoBackup},
	} {
		if got, err := Unpack(t.Context(), strings.NewReader(c.file), t.TempDir()); !errors.Is(err, c.want) || got != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := s.Document(t.Context(), "east"); errors.Is(err, revision.ErrNone) {
		t.Error("the store itself was touched")
	}
}

// What a backup copies from database to database is every table there is.
func TestBackupsHoldEveryTable(t *testing.T) {
	s, err := OpenFolder(t.Context(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	all, err := list(t.Context(), s.db, scanText, `SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE 'goose_%' ORDER BY name`)
	if err != nil || !slices.Equal(all, slices.Sorted(slices.Values(tables()))) {
		t.Errorf("tables %v, copied %v, %v", all, tables(), err)
	}
}

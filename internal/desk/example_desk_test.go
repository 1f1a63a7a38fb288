package desk

import (
	"context"
	"crypto/rand"
	"io/fs"
	"log/slog"
	"os"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/jobs"
	"example.org/rinkpane/internal/desk/results"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/queue"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/keep/work"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// exampleMaker plans with what the program carries.
func exampleMaker(t testing.TB) plan.Maker {
	t.Helper()
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	return plan.Maker{Kit: k, Rules: sets}
}

// exampleIDs are the ids of the example arenas: their files' names.
func exampleIDs(t testing.TB) []string {
	t.Helper()
	names, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("examples: %v, %v", names, err)
	}
	for i := range names {
		names[i] = strings.TrimSuffix(names[i], ".yaml")
	}
	return names
}

// exampleShelf is a shelf with the example arenas in a store of its own.
func exampleShelf(t testing.TB, folder string) (*shelf.Shelf, *store.Store) {
	t.Helper()
	s, err := store.OpenFolder(t.Context(), folder)
	if err != nil {
		t.Fatal(err)
	}
	on := shelf.New(s, exampleMaker(t), time.Now)
	for _, id := range exampleIDs(t) {
		f, err := examples.Files.Open(id + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		doc, err := arena.Read(id, f)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := on.Add(t.Context(), id, doc, "desk", "an example"); err != nil {
			t.Fatal(err)
		}
	}
	bag := strings.Replace(string(kit.DefaultYAML()), "name: Lenses and bodies by class", "name: House bag", 1)
	if _, err := on.AddOwn(t.Context(), revision.Kit, bag, "desk", "an example"); err != nil {
		t.Fatal(err)
	}
	if _, err := on.AddGames(t.Context(), "quillhaven", exampleGames, "desk", "an example"); err != nil {
		t.Fatal(err)
	}
	return on, s
}

// sharedDesk is one desk for all tests, since every plan on it is made once.
var sharedDesk struct {
	once   sync.Once
	folder string
	desk   *Desk
	err    error
}

func exampleDesk(t testing.TB) *Desk {
	t.Helper()
	sharedDesk.once.Do(func() {
		if sharedDesk.folder, sharedDesk.err = os.MkdirTemp("", "rinkpane-desk"); sharedDesk.err != nil {
			return
		}
		on, s := exampleShelf(t, sharedDesk.folder)
		if !testing.Short() { // whose tests do without the page of a game's frames
			if sharedDesk.err = on.InventFrames(t.Context(), results.SampleSeason, "nov-07", "desk"); sharedDesk.err != nil {
				return
			}
		}
		if _, sharedDesk.err = s.Append(t.Context(), time.Now(), inService(time.Now())); sharedDesk.err != nil {
			return
		}
		sharedDesk.desk, sharedDesk.err = New(Options{
			Shelf: on, Register: s, Covers: s, Version: "test", Log: slog.New(slog.NewTextHandler(os.Stderr, nil)),
			Now: time.Now, Random: rand.Reader, Close: func() {},
			Jobs: &jobs.Backlog{Log: slog.Default(), Open: func(ctx context.Context) (*queue.Queue, error) {
				return queue.OpenFolder(ctx, sharedDesk.folder, queue.Options{Program: "test"})
			}},
		})
		if sharedDesk.err == nil { // a job that waits, for the page of jobs
			var q *queue.Queue
			if q, sharedDesk.err = sharedDesk.desk.backlog.Queue(t.Context()); sharedDesk.err == nil {
				_, sharedDesk.err = work.Choose().Ask(t.Context(), q, queue.Asker{Owner: "ada"}, "Far Rink", league.Question{})
			}
		}
	})
	if sharedDesk.err != nil {
		t.Fatal(sharedDesk.err)
	}
	return sharedDesk.desk
}

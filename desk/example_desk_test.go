package desk

import (
	"io/fs"
	"log/slog"
	"os"
	"strings"
	"sync"
	"testing"

	"example.org/rinkpane/arena"
	"example.org/rinkpane/examples"
	"example.org/rinkpane/kit"
	"example.org/rinkpane/plan"
	"example.org/rinkpane/rules"
)

// exampleMaker plans with what the program carries.
func exampleMaker(t *testing.T) plan.Maker {
	t.Helper()
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		t.Fatal(err)
	}
	return plan.Maker{Kit: k, Rules: rules.Sets{set}}
}

// exampleSources are the example arenas, their slugs the files' names.
func exampleSources(t *testing.T) []Source {
	t.Helper()
	names, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil || len(names) == 0 {
		t.Fatalf("examples: %v, %v", names, err)
	}
	var out []Source
	for _, name := range names {
		f, err := examples.Files.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := arena.Read(name, f)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, Source{strings.TrimSuffix(name, ".yaml"), "example", doc})
	}
	return out
}

// sharedDesk is one desk for all tests, since every plan on it is made once.
var sharedDesk struct {
	once sync.Once
	desk *Desk
	err  error
}

func exampleDesk(t *testing.T) *Desk {
	t.Helper()
	sharedDesk.once.Do(func() {
		sharedDesk.desk, sharedDesk.err = New(exampleSources(t), exampleMaker(t), slog.New(slog.NewTextHandler(os.Stderr, nil)))
	})
	if sharedDesk.err != nil {
		t.Fatal(sharedDesk.err)
	}
	return sharedDesk.desk
}

package desk

import (
	"io/fs"
	"log/slog"
	"strings"
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

func exampleDesk(t *testing.T) *Desk {
	t.Helper()
	d, err := New(exampleSources(t), exampleMaker(t), slog.New(slog.NewTextHandler(t.Output(), nil)))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

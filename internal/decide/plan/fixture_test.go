package plan

import (
	"io/fs"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

// fewestExamples is how many arenas the program must carry.
const fewestExamples = 3

func maker(t testing.TB) Maker {
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
	return Maker{Kit: k, Rules: sets}
}

func document(t testing.TB, name string) *arena.Document {
	t.Helper()
	f, err := examples.Files.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	doc, err := arena.Read(name, f)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func exampleNames(t testing.TB) []string {
	t.Helper()
	names, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil || len(names) < fewestExamples {
		t.Fatalf("examples: %v, %v", names, err)
	}
	return names
}

func planOf(t testing.TB, name string) Plan {
	t.Helper()
	p, err := maker(t).Make(t.Context(), document(t, name))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

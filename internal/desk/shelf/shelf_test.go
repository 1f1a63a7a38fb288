package shelf_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/keep/store"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/kit"
)

func fresh(t *testing.T) *shelf.Shelf { return under(t, rules.Default) }

// under is an empty shelf with a shipped rule set in force.
func under(t *testing.T, id string) *shelf.Shelf {
	t.Helper()
	s, err := store.OpenFolder(t.Context(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	set, err := rules.Shipped(id)
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	return shelf.New(s, plan.Maker{Kit: k, Rules: sets}, time.Now)
}

func document(t *testing.T, change ...string) *arena.Document {
	t.Helper()
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(change...).Replace(string(doc.Bytes()))
	if doc, err = arena.Read("my.yaml", strings.NewReader(text)); err != nil {
		t.Fatal(err)
	}
	return doc
}

// TestImportNeverTakesTheDeskBack: a file that the desk knows already changes
// nothing, however often it is named; a changed one goes on top.
func TestImportNeverTakesTheDeskBack(t *testing.T) {
	s, ctx := fresh(t), t.Context()
	first := document(t)
	for i, want := range []string{"new arena rink", "is version 1 of 1", "is version 1 of 1"} {
		said, err := s.Import(ctx, "rink", first, "desk", "import")
		if err != nil || !strings.Contains(said, want) {
			t.Errorf("import %d: %q, %v", i, said, err)
		}
	}
	b, err := s.Open(ctx, "rink", 0)
	if err != nil {
		t.Fatal(err)
	}
	doc, what, err := s.Edited(b, []edit.Edit{{Do: edit.Set, Path: "boards.ledge", Value: edit.One("10 in")}})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Save(ctx, "rink", 1, doc, "Ada", what); err != nil {
		t.Fatal(err)
	}
	if said, err := s.Import(ctx, "rink", first, "desk", "import"); err != nil || !strings.Contains(said, "is version 1 of 2") {
		t.Errorf("the old file: %q, %v", said, err)
	}
	said, err := s.Import(ctx, "rink", document(t, "ledge: 9 in", "ledge: 11 in"), "desk", "import")
	if err != nil || !strings.Contains(said, "version 3") {
		t.Errorf("a changed file: %q, %v", said, err)
	}
}

func TestOnlySoundArenasAreKept(t *testing.T) {
	s, ctx := fresh(t), t.Context()
	unsound := document(t, "height: 58 in", "height: 158 in")
	var at *form.Problem
	if _, err := s.Add(ctx, "", unsound, "Ada", "x"); !errors.As(err, &at) {
		t.Errorf("adding: %v", err)
	}
	if _, err := s.Add(ctx, "rink", document(t), "Ada", "x"); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Save(ctx, "rink", 1, unsound, "Ada", "x"); !errors.As(err, &at) || at.Line == 0 {
		t.Errorf("saving: %v", err)
	}
	for _, id := range []string{"", "../rink", "RINK", "nowhere", "rink\x00"} {
		if _, err := s.Open(ctx, id, 0); !errors.Is(err, revision.ErrNone) {
			t.Errorf("%q: %v", id, err)
		}
	}
	if _, err := s.Open(ctx, "rink", -1); !errors.Is(err, revision.ErrNone) {
		t.Errorf("version -1: %v", err)
	}
}

func TestSavingRenames(t *testing.T) {
	s, ctx := fresh(t), t.Context()
	for _, want := range []string{"tidewater-pavilion", "tidewater-pavilion-2", "tidewater-pavilion-3"} {
		v, err := s.Add(ctx, "", document(t), "Ada", "x")
		if err != nil || v.Document != want {
			t.Errorf("%s, %v, expected %s", v.Document, err, want)
		}
	}
	if _, err := s.Save(ctx, "tidewater-pavilion", 1, document(t, "name: Tidewater Pavilion", "name: Harbour Hall"), "Ada", "rename"); err != nil {
		t.Fatal(err)
	}
	if d, err := s.Keeper().Document(ctx, "tidewater-pavilion"); err != nil || d.Name != "Harbour Hall" {
		t.Errorf("%+v, %v", d, err)
	}
}

// TestDispensationsEndOnTheDesk: the desk asks about an arena on its own day, before
// and after edits, as the commands do.
func TestDispensationsEndOnTheDesk(t *testing.T) {
	for until, ended := range map[string]bool{"2001-01-01": true, "2199-01-01": false} {
		s, ctx := under(t, "international-2014"), t.Context()
		doc := document(t, "\nzones:", "\ndispensations:\n  - {rule: no-opening, by: an invented league, reference: L-1, date: 2000-01-01, until: "+until+"}\nzones:")
		if _, err := s.Add(ctx, "rink", doc, "Ada", "new"); err != nil {
			t.Fatal(err)
		}
		b, err := s.Open(ctx, "rink", 0)
		if err != nil {
			t.Fatal(err)
		}
		proof, err := s.Proof(ctx, b)
		if err != nil {
			t.Fatal(err)
		}
		edited, _, err := s.Edited(b, []edit.Edit{{Do: edit.Set, Path: "boards.ledge", Value: edit.One("10 in")}})
		if err != nil {
			t.Fatal(err)
		}
		tried, err := b.Maker.Prove(edited)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range []plan.Proof{proof, tried} {
			if told := strings.Contains(strings.Join(p.Notes, " "), "ended on "+until); told != ended {
				t.Errorf("until %s: told as ended %v", until, told)
			}
		}
	}
}

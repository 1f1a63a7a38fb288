package edit_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// dispensed is the demo with a dispensation that names two holes.
func dispensed(t *testing.T) *arena.Document {
	t.Helper()
	text := string(demo(t).Bytes()) + `
dispensations:
  - {rule: most-in-all, holes: [B1, B2], by: the league, reference: letter 7, date: 2026-01-31}
`
	doc, err := arena.Read("my.yaml", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// TestRenameFollowsEveryMention: the hole and the dispensations that name it, by
// the verb and by setting its id; nothing else changes.
func TestRenameFollowsEveryMention(t *testing.T) {
	before := string(dispensed(t).Bytes())
	want := strings.NewReplacer("id: B1", "id: Corner", "[B1, B2]", "[Corner, B2]").Replace(before)
	for _, edits := range []string{`{"do":"rename","hole":"B1","as":"Corner"}`, `{"do":"set","path":"holes[B1].id","value":"Corner"}`} {
		doc, what := apply(t, dispensed(t), edits)
		if string(doc.Bytes()) != want || what != "rename B1 to Corner" {
			t.Errorf("%s: %q, and another text than expected", edits, what)
		}
	}
	swap := `{"do":"rename","hole":"B1","as":"X"},{"do":"rename","hole":"B2","as":"B1"},{"do":"rename","hole":"X","as":"B2"}`
	doc, _ := apply(t, dispensed(t), swap)
	if !strings.Contains(string(doc.Bytes()), "[B2, B1]") {
		t.Error("two that change names are not told apart in the dispensation")
	}
}

func TestRenameRefuses(t *testing.T) {
	for edits, says := range map[string]string{
		`{"do":"rename","hole":"B1","as":"B2"}`:   "is there already",
		`{"do":"rename","hole":"none","as":"B9"}`: "no hole",
		`{"do":"rename","hole":"B1"}`:             "write the new id",
	} {
		var row []edit.Edit
		if err := json.Unmarshal([]byte("["+edits+"]"), &row); err != nil {
			t.Fatal(err)
		}
		if _, _, err := (edit.Editor{}).Apply(demo(t), row); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v", edits, err)
		}
	}
}

// TestRenamings reads rows of edits as what they come to.
func TestRenamings(t *testing.T) {
	r := func(hole, as string) edit.Edit { return edit.Edit{Do: edit.Rename, Hole: hole, As: as} }
	for _, c := range []struct {
		edits []edit.Edit
		want  []edit.Renaming
	}{
		{nil, nil},
		{[]edit.Edit{{Do: edit.Delete, Hole: "A"}, r("B", "C")}, []edit.Renaming{{"B", "C"}}},
		{[]edit.Edit{r("A", "B"), r("B", "C")}, []edit.Renaming{{"A", "C"}}},
		{[]edit.Edit{r("A", "B"), r("B", "A")}, nil},
		{[]edit.Edit{r("A", "X"), r("B", "A"), r("X", "B")}, []edit.Renaming{{"A", "B"}, {"B", "A"}}},
		{[]edit.Edit{{Do: edit.Add, As: "N"}, r("N", "M"), r("A", "N")}, []edit.Renaming{{"A", "N"}}},
	} {
		if got := edit.Renamings(c.edits); !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, expected %v", c.edits, got, c.want)
		}
	}
}

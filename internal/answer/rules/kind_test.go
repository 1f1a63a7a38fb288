package rules

import (
	"flag"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the table of kinds into docs/rule-sets.md")

// row is a kind as docs/rule-sets.md tells it.
func (k kind) row() string {
	fields := "-"
	if len(k.fields) > 0 {
		fields = "`" + strings.Join(k.fields, "` `") + "`"
	}
	return "| `" + k.name + "` | " + fields + " | " + k.asks + " | " + [...]string{"no", "where asked", "yes"}[k.windows] + " |"
}

// TestDocumentTellsTheKinds compares the document's table with the program's,
// and the package's own comment with the kinds there are.
func TestDocumentTellsTheKinds(t *testing.T) {
	const path = "../../../docs/rule-sets.md"
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	head := "| kind | fields | asks that | low windows |\n| --- | --- | --- | --- |\n"
	var rows []string
	for _, k := range kinds() {
		rows = append(rows, k.row())
	}
	want := head + strings.Join(rows, "\n") + "\n"
	got := regexp.MustCompile(`\| kind \|(.*\n)+?(\n|$)`).FindString(string(text))
	if *update {
		if err := os.WriteFile(path, []byte(strings.Replace(string(text), got, want+"\n", 1)), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if strings.TrimSpace(got) != strings.TrimSpace(want) {
		t.Errorf("%s has\n%s\nthe program\n%s\nrun go test ./internal/answer/rules -update", path, got, want)
	}
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range kinds() {
		if !regexp.MustCompile(`[\s(]` + k.name + `[\s,]`).Match(doc) {
			t.Errorf("the package's comment does not name kind %s", k.name)
		}
	}
}

// TestKindsAreWhole: each kind has a name of its own and a line that says what it asks.
func TestKindsAreWhole(t *testing.T) {
	names := Kinds()
	if len(names) < 20 || len(slices.Compact(slices.Sorted(slices.Values(names)))) != len(names) {
		t.Errorf("kinds %v", names)
	}
	for _, k := range kinds() {
		if k.asks == "" || strings.Contains(k.asks, "\n") || k.read == nil {
			t.Errorf("%s: %+v", k.name, k)
		}
	}
}

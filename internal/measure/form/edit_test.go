package form_test

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/form"
)

const survey = `# The survey
name: Old barn   # by the river

boards:
  height: 42 in   # measured
  ledge:          # not measured

holes:
  # the first one
  - id: H1
    size: 5.5 in x 4.5 in  # as drilled
    place: {corner: A-bench, offset: -3 ft}

  # the second one
  - id: H2
    size: "4 in x 4 in"
    place:
      corner: B-box
      offset: 1 ft
    note: |
      two
      lines

panes:
- {id: P1, width: 4 ft}
- {id: P2, width: 4 ft, gate: bench}  # left of the bench
zones: []
more:
  story: |
    one

    two
  spot:   # where
    x: 1 m
    y: 2 m  # far
  last: x
lenses: [24-70, 70-200]
# the end
`

func fields(pairs ...string) form.Entry {
	var f []form.Field
	for i := 0; i < len(pairs); i += 2 {
		f = append(f, form.Field{Name: pairs[i], Value: form.Text(pairs[i+1])})
	}
	return form.Fields(f...)
}

// edits is what each edit must do to the survey: the text old becomes new,
// and nothing else changes.
var edits = []struct {
	name     string
	do       func(*form.Document) (*form.Document, error)
	old, new string
}{
	{"set a value", set("boards.height", form.Text("41 1/2 in")), "height: 42 in   #", "height: 41 1/2 in   #"},
	{"set a value not given", set("boards.ledge", form.Text("9 in")), "ledge:          #", "ledge: 9 in          #"},
	{"set in an item by id", set("holes[H1].size", form.Text("5 in x 4 in")), "5.5 in x 4.5 in  #", "5 in x 4 in  #"},
	{"set in an item by number", set("holes[#2].size", form.Text("5 in x 4 in")), `"4 in x 4 in"`, `5 in x 4 in`},
	{"set within brackets", set("holes[H1].place.offset", form.Text("-4 ft")), "offset: -3 ft}", "offset: -4 ft}"},
	{"set a whole bracket", set("holes[H1].place", fields("corner", "A-box")), "{corner: A-bench, offset: -3 ft}", "{corner: A-box}"},
	{"set lines to a bracket", set("holes[H2].place", fields("corner", "A-box")), "place:\n      corner: B-box\n      offset: 1 ft\n", "place: {corner: A-box}\n"},
	{"set lines of text in the middle", set("more.story", form.Text("short")), "|\n    one\n\n    two\n", "short\n"},
	{"set lines under a comment", set("more.spot", fields("x", "3 m")), "spot:   # where\n    x: 1 m\n    y: 2 m  # far\n", "spot: {x: 3 m}   # where  # far\n"},
	{"remove the last of some fields", remove("more.spot"), "  spot:   # where\n    x: 1 m\n    y: 2 m  # far\n", ""},
	{"write null as text", set("more.last", form.Text("null")), "last: x", `last: "null"`},
	{"set text of several lines", set("holes[H2].note", form.Text("one: line")), "note: |\n      two\n      lines\n", "note: \"one: line\"\n"},
	{"add a field", set("boards.setback", form.Text("1 in")), "# not measured\n", "# not measured\n  setback: 1 in\n"},
	{"add a field after lines of text", set("holes[H2].state", form.Text("cut")), "      lines\n", "      lines\n    state: cut\n"},
	{"add a field within brackets", set("panes[P1].gate", form.Text("bench")), "{id: P1, width: 4 ft}", "{id: P1, width: 4 ft, gate: bench}"},
	{"add a field at the end", set("units", form.Text("metric")), "lenses: [24-70, 70-200]\n", "lenses: [24-70, 70-200]\nunits: metric\n"},
	{"replace an item", set("holes[H1]", fields("id", "H9", "size", "1 in x 1 in")), "id: H1\n    size: 5.5 in x 4.5 in  # as drilled\n    place: {corner: A-bench, offset: -3 ft}", "id: H9\n    size: 1 in x 1 in"},
	{"replace an item in brackets", set("panes[P2]", fields("id", "P3")), "{id: P2, width: 4 ft, gate: bench}", "{id: P3}"},
	{"replace a word in a list", set("lenses[#1]", form.Text("85-1.8")), "[24-70,", "[85-1.8,"},
	{"remove a field", remove("holes[H1].size"), "    size: 5.5 in x 4.5 in  # as drilled\n", ""},
	{"remove a field of lines", remove("holes[H2].place"), "    place:\n      corner: B-box\n      offset: 1 ft\n", ""},
	{"remove the first field", remove("holes[H1].id"), "id: H1\n    size", "size"},
	{"remove a field of no value", remove("boards.ledge"), "  ledge:          # not measured\n", ""},
	{"remove within brackets", remove("panes[P2].width"), "width: 4 ft, gate", "gate"},
	{"remove last within brackets", remove("panes[P2].gate"), ", gate: bench}", "}"},
	{"remove an item", remove("holes[H1]"), "  - id: H1\n    size: 5.5 in x 4.5 in  # as drilled\n    place: {corner: A-bench, offset: -3 ft}\n", ""},
	{"remove an item in brackets", remove("panes[P1]"), "- {id: P1, width: 4 ft}\n", ""},
	{"remove a word of a list", remove("lenses[#1]"), "[24-70, 70-200]", "[70-200]"},
	{"append an item", add("holes", fields("id", "H3", "size", "5 in x 4 in")), "      lines\n", "      lines\n\n  - id: H3\n    size: 5 in x 4 in\n"},
	{"append in brackets", add("panes", fields("id", "P3", "width", "4 ft")), "# left of the bench\n", "# left of the bench\n- {id: P3, width: 4 ft}\n"},
	{"append a word", add("lenses", form.Text("85-1.8")), "70-200]", "70-200, 85-1.8]"},
	{"begin an empty list", add("zones", fields("id", "Z1", "kind", "gate")), "zones: []\n", "zones:\n  - id: Z1\n    kind: gate\n"},
	{"begin a missing list", add("windows", fields("id", "W1", "kind", "opening")), "lenses: [24-70, 70-200]\n", "lenses: [24-70, 70-200]\nwindows:\n  - id: W1\n    kind: opening\n"},
	{"quote what would be read otherwise", set("name", form.Text("Barn # 2")), "Old barn ", "\"Barn # 2\" "},
	{"quote a colon", set("name", form.Text("a: b")), "Old barn ", "\"a: b\" "},
	{"keep feet and inches plain", set("boards.height", form.Text(`3' 6"`)), "height: 42 in", `height: 3' 6"`},
}

func set(path string, e form.Entry) func(*form.Document) (*form.Document, error) {
	return func(d *form.Document) (*form.Document, error) { return d.Set(path, e) }
}

func add(path string, e form.Entry) func(*form.Document) (*form.Document, error) {
	return func(d *form.Document) (*form.Document, error) { return d.Append(path, e) }
}

func remove(path string) func(*form.Document) (*form.Document, error) {
	return func(d *form.Document) (*form.Document, error) { return d.Remove(path) }
}

func TestEditsTouchNothingElse(t *testing.T) {
	ends := map[string]func(string) string{
		"LF":   func(s string) string { return s },
		"CRLF": func(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") },
		"BOM":  func(s string) string { return "\ufeff" + s },
	}
	for ending, as := range ends {
		for _, e := range edits {
			t.Run(ending+"/"+e.name, func(t *testing.T) {
				if strings.Count(survey, e.old) != 1 {
					t.Fatalf("%q stands in the survey %d times", e.old, strings.Count(survey, e.old))
				}
				want := as(strings.Replace(survey, e.old, e.new, 1))
				d, err := form.Read("s.yaml", strings.NewReader(as(survey)), 1<<20)
				if err != nil {
					t.Fatal(err)
				}
				got, err := e.do(d)
				if err != nil {
					t.Fatal(err)
				}
				if string(got.Text()) != want {
					t.Errorf("got\n%s\nwant\n%s", got.Text(), want)
				}
				if string(d.Text()) != as(survey) {
					t.Error("the document edited has changed")
				}
			})
		}
	}
}

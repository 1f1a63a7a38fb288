package form_test

import (
	"errors"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/form"
)

// read reads a small document with two known fields, one of them a list of
// mappings, and returns the first problem's text.
func read(text string) error {
	doc, err := form.Read("my.yaml", strings.NewReader(text), 1000)
	if err != nil {
		return err
	}
	m := doc.Root().Map("name", "colour", "count", "holes")
	m.At("name").Text()
	m.At("colour").Choice("green", "blue")
	m.At("count").Int(1, 9)
	for _, h := range m.At("holes").List(2) {
		h.Map("id", "open").At("open").Bool()
	}
	return doc.Err()
}

const sound = "name: a\ncolour: green\ncount: 3\nholes:\n  - id: h1\n    open: true\n"

func TestSoundDocumentHasNoProblem(t *testing.T) {
	if err := read(sound); err != nil {
		t.Error(err)
	}
}

func TestProblemsNamePlaceValueAndCure(t *testing.T) {
	swap := func(old, with string) string {
		if !strings.Contains(sound, old) {
			t.Fatalf("the sound document lacks %q", old)
		}
		return strings.Replace(sound, old, with, 1)
	}
	cases := []struct{ name, text, want string }{
		{"unknown field", swap("colour:", "color:"), `my.yaml:2:1: unknown field "color"; did you mean "colour"?`},
		{"unknown field, nothing near", swap("colour:", "weight:"), `my.yaml:2:1: unknown field "weight"; known here: name, colour, count, holes`},
		{"nested unknown field", swap("open:", "opem:"), `my.yaml:6:5: holes[h1]: unknown field "opem"; did you mean "open"?`},
		{"written twice", sound + "name: b\n", `my.yaml:7:1: name: is written twice; keep one`},
		{"missing", swap("count: 3\n", ""), `my.yaml:1:1: count: is missing`},
		{"blank", swap("name: a", "name: ' '"), `my.yaml:1:7: name: is blank`},
		{"null counts as missing", swap("name: a", "name:"), `my.yaml:1:6: name: is missing`},
		{"near word", swap("green", "gren"), `my.yaml:2:9: colour: "gren"; did you mean "green"?`},
		{"other word", swap("green", "red"), `my.yaml:2:9: colour: "red"; write green or blue`},
		{"number", swap("count: 3", "count: 3.5"), `my.yaml:3:8: count: "3.5"; write a whole number from 1 to 9`},
		{"boolean", swap("open: true", "open: yes"), `my.yaml:6:11: holes[h1].open: "yes"; write true or false`},
		{"list due", "name: a\ncolour: blue\ncount: 1\nholes: 3\n", `my.yaml:4:8: holes: must be a list: one line with - for each`},
		{"too many", sound + "  - {open: true}\n  - {open: true}\n", `my.yaml:5:3: holes: has 3 entries; at most 2 are read`},
		{"alias", "name: &a x\ncolour: *a\n", `my.yaml:2:9: colour: is an alias (*name); write the value out`},
		{"merge key", "<<: {name: a}\n", `my.yaml:1:1: unknown field "<<"; known here: name, colour, count, holes`},
		{"two documents", sound + "---\nname: b\n", `my.yaml:7:1: holds more than one YAML document; keep one, and drop the line with ---`},
		{"empty", "", `my.yaml: is empty`},
		{"binary", "name: a\x00\n", `my.yaml:1:8: byte 0x00 is not UTF-8 text; is it the right file?`},
		{"UTF-16 with its mark", "\xff\xfen\x00a\x00", `my.yaml: is not UTF-8 text but UTF-16; save it as UTF-8`},
		{"UTF-16, the other order", "\xfe\xff\x00n\x00a", `my.yaml: is not UTF-8 text but UTF-16; save it as UTF-8`},
		{"UTF-16 without a mark", "n\x00a\x00", `my.yaml: is not UTF-8 text but UTF-16; save it as UTF-8`},
		{"too large", sound + strings.Repeat("#", 1000), `my.yaml: is larger than 1 kB, which is more than such a file may hold; is it the right file?`},
		{"syntax", "name: a\n colour: [\n", `my.yaml:2:2: not valid YAML: mapping values are not allowed in this context; indent the line like those around it, or put a value that holds a colon in quotes`},
		{"control characters", swap("green", `"\x1b[2J"`), `my.yaml:2:9: colour: "\x1b[2J" holds a control character, which is not seen in print; remove it`},
		{"turned writing", swap("green", "gre\u202een"), `my.yaml:2:9: colour: "gre\u202een" holds a control character, which is not seen in print; remove it`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			err := read(c.text)
			if err == nil || err.Error() != c.want {
				t.Errorf("got  %v\nwant %s", err, c.want)
			}
			var p *form.Problem
			if !errors.As(err, &p) || p.File != "my.yaml" {
				t.Errorf("error %T is not a Problem of my.yaml", err)
			}
		})
	}
}

func TestNearest(t *testing.T) {
	known := []string{"stretches", "least", "most", "tolerance"}
	for s, want := range map[string]string{"strech": "stretches", "MOST": "most", "tolerence": "tolerance", "xyz": "", "leest": "least"} {
		if got := form.Nearest(s, known); got != want {
			t.Errorf("Nearest(%q) = %q, want %q", s, got, want)
		}
	}
	if got := form.Nearest(strings.Repeat("a", 1<<20), known); got != "" {
		t.Errorf("a megabyte of letters is near %q", got)
	}
}

func TestLongIDsStayOutOfMessages(t *testing.T) {
	doc, err := form.Read("my.yaml", strings.NewReader("holes: [{id: "+strings.Repeat("x", 500)+", open: perhaps}]\n"), 1000)
	if err != nil {
		t.Fatal(err)
	}
	doc.Root().Map("holes").At("holes").List(1)[0].Map("id", "open").At("open").Bool()
	if err := doc.Err(); err == nil || !strings.HasPrefix(err.Error(), "my.yaml:1:") || !strings.Contains(err.Error(), ": holes[#1].open: ") {
		t.Errorf("got %v", err)
	}
}

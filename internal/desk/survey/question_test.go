package survey

import (
	"io/fs"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// read returns an example arena's document.
func read(t testing.TB, name string) *arena.Document {
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

func around(t testing.TB, doc *arena.Document) Around {
	t.Helper()
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	return Around{Arena: a, Lenses: []Option{{Value: "70-200", Label: "tele zoom"}, {Value: "24-70", Label: "standard zoom"}}}
}

func part(t testing.TB, doc *arena.Document, name string) Part {
	t.Helper()
	p, ok := PartOf(around(t, doc), name)
	if !ok {
		t.Fatalf("no part %s", name)
	}
	return p
}

// apply returns what makes edits in a document and checks the outcome.
func apply(doc *arena.Document) Apply {
	return func(edits []edit.Edit) (*arena.Document, string, error) {
		next, what, err := edit.Editor{}.Apply(doc, edits)
		if err != nil {
			return nil, "", err
		}
		_, err = next.Check()
		return next, what, err
	}
}

// TestShowingChangesNothing reads every part and item of every example: given
// back as they are, the answers make no edit.
func TestShowingChangesNothing(t *testing.T) {
	names, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, name := range names {
		doc := read(t, name)
		for _, p := range Parts(around(t, doc)) {
			items := []string{""}
			if p.IsList() {
				items = doc.Items(p.Path)
			} else if p.Path != "" && !doc.IsGroup(p.Path) {
				continue
			}
			for _, item := range items {
				seen++
				if got := p.Edits(doc, item, p.Read(doc, item), nil); len(got) > 0 {
					t.Errorf("%s, %s %s: answers as they were make %+v", name, p.Name, item, got)
				}
			}
			if rows := p.Items(doc); p.IsList() && len(rows) != len(items) {
				t.Errorf("%s, %s: %d rows of %d items", name, p.Name, len(rows), len(items))
			}
		}
	}
	if seen < 300 {
		t.Errorf("met %d parts and items, expected 300 or more", seen)
	}
}

// TestEveryAnswerArrives changes one answer at a time and finds it in the document.
func TestEveryAnswerArrives(t *testing.T) {
	for _, c := range []struct {
		part, item string
		set        map[string]string
		lines      []string // of the document afterwards
	}{
		{"rink", "", map[string]string{"name": "Harbour Hall"}, []string{"name: Harbour Hall"}},
		{"rink", "", map[string]string{"rink.length": "200 ft", "units": "metric"}, []string{"length: 200 ft", "units: metric"}},
		{"boards", "", map[string]string{"height": "41 in", "ledge": ""}, []string{"height: 41 in"}},
		{"glass", "", map[string]string{"material": "laminated"}, []string{"material: laminated"}},
		{"panes", "panes[P020]", map[string]string{"thickness": "1/2 in"}, []string{"thickness: 1/2 in"}},
		{"panes", "panes[P020]", map[string]string{"id": "P020x"}, []string{"id: P020x"}},
		{"holes", "holes[B2]", map[string]string{"size": "5 in x 4 in", "note": "by the bench: low"}, []string{"size: 5 in x 4 in", `note: "by the bench: low"`}},
		{"holes", "holes[B2]", map[string]string{"place": "-2 in"}, []string{"offset: -2 in"}},
		{"holes", "holes[B2]", map[string]string{"place": "51 ft", "place.from": "station"}, []string{"place: 51 ft"}},
		{"holes", "holes[B2]", map[string]string{"cover": "none"}, []string{"cover: none"}},
		{"holes", "holes[B2]", map[string]string{"cover": "yes", "cover.material": "polycarbonate", "cover.tether": "no"}, []string{"cover: {material: polycarbonate, tether: no}"}},
		{"holes", "holes[B2]", map[string]string{"state": "off"}, []string{"state: off"}},
		{"zones", "zones[first-aid]", map[string]string{"note": "ask the medic"}, []string{"note: ask the medic"}},
		{"mains", "", map[string]string{"mains": "50 Hz"}, []string{"mains: 50 Hz"}},
		{"light", "light.readings[#2]", map[string]string{"light": "130 fc", "height": "3 ft"}, []string{"light: 130 fc", "height: 3 ft"}},
		{"light", "", map[string]string{"x": "1 ft", "y": "-2 ft", "light": "900 lx"}, []string{"x: 1 ft", "y: -2 ft", "light: 900 lx"}},
		{"windows", "", map[string]string{"id": "LW9", "kind": "opening", "place": "60 ft", "place.from": "station", "height": "20 in", "size": "10 in x 8 in"}, []string{"id: LW9", "kind: opening"}},
		{"dispensations", "", map[string]string{"rule": "cover", "holes": "B1", "by": "the operator", "reference": "letter 7", "date": "2026-01-31"}, []string{"dispensations:", "rule: cover", "holes: [B1]"}},
		{"lenses", "", map[string]string{"lenses": "70-200"}, []string{"lenses: [70-200]"}},
	} {
		doc := read(t, "quillhaven.yaml")
		p := part(t, doc, c.part)
		answers := p.Read(doc, c.item)
		for name, v := range c.set {
			answers[name] = []string{v}
		}
		filled := p.Fill(doc, c.item, answers, apply(doc))
		if !filled.OK() || len(filled.Edits) == 0 {
			t.Errorf("%s %s %v: %+v", c.part, c.item, c.set, filled)
			continue
		}
		next, _, err := apply(doc)(filled.Edits)
		if err != nil {
			t.Errorf("%s: %v", c.part, err)
			continue
		}
		for _, line := range c.lines {
			if !strings.Contains(string(next.Bytes()), line) || strings.Contains(string(doc.Bytes()), line) && len(c.set) == 1 {
				t.Errorf("%s %v: %q is not new in the document", c.part, c.set, line)
			}
		}
	}
}

// TestMessagesStandBesideTheirFields gives bad answers and asks where the message is.
func TestMessagesStandBesideTheirFields(t *testing.T) {
	for _, c := range []struct {
		part, item string
		set        map[string]string
		wrong      map[string]string // question: part of the message
		other      string
	}{
		{"boards", "", map[string]string{"height": "42"}, map[string]string{"height": "needs its unit"}, ""},
		{"boards", "", map[string]string{"height": "42", "ledge": "9"}, map[string]string{"height": "unit", "ledge": "unit"}, ""},
		{"boards", "", map[string]string{"height": ""}, map[string]string{"height": "missing"}, ""},
		{"boards", "", map[string]string{"height": "5 ft"}, nil, "holes["},
		{"panes", "panes[P020]", map[string]string{"width": "9 ft", "material": "paper"}, map[string]string{"material": "paper"}, ""}, // the rest moves along
		{"panes", "panes[P020]", map[string]string{"from": "1 ft", "material": "paper"}, map[string]string{"from": "before pane", "material": "paper"}, ""},
		{"panes", "panes[P020]", map[string]string{"id": "P021"}, map[string]string{"id": "earlier"}, ""},
		{"panes", "panes[P020]", map[string]string{"id": "no spaces please"}, map[string]string{"id": ""}, ""},
		{"holes", "holes[B2]", map[string]string{"place": "soon", "size": "big", "height": "up"}, map[string]string{"place": "soon", "size": "big", "height": "up"}, ""},
		{"holes", "holes[B2]", map[string]string{"cover": "yes", "cover.material": "wood"}, map[string]string{"cover": "wood"}, ""},
		{"holes", "", map[string]string{"id": "H1"}, map[string]string{"size": "missing"}, ""},
		{"zones", "zones[first-aid]", map[string]string{"to": "900 ft", "to.from": "station"}, map[string]string{"to": "past the boards' end"}, ""},
		{"light", "", map[string]string{"x": "500 ft", "y": "0 ft", "light": "900 lx"}, map[string]string{"x": "off the ice"}, ""},
		{"light", "light.readings[#2]", map[string]string{"light": "-4"}, map[string]string{"light": ""}, ""},
		{"dispensations", "", map[string]string{"rule": "cover", "by": "x", "reference": "y", "date": "soon"}, map[string]string{"date": "no date"}, ""},
	} {
		doc := read(t, "quillhaven.yaml")
		p := part(t, doc, c.part)
		answers := p.Read(doc, c.item)
		for name, v := range c.set {
			answers[name] = []string{v}
		}
		got := p.Fill(doc, c.item, answers, apply(doc))
		if len(got.Wrong) != len(c.wrong) || !strings.Contains(got.Other, c.other) || (got.Other == "") != (c.other == "") {
			t.Errorf("%s %v: %+v", c.part, c.set, got)
		}
		for name, says := range c.wrong {
			if m, told := got.Wrong[name]; !told || !strings.Contains(m, says) {
				t.Errorf("%s %v: beside %s stands %q, expected %q", c.part, c.set, name, m, says)
			}
		}
	}
}

func TestRemove(t *testing.T) {
	doc := read(t, "quillhaven.yaml")
	for _, item := range []string{"holes[B2]", "light.readings[#3]", "zones[first-aid]"} {
		list, _, _ := strings.Cut(item, "[")
		next, _, err := apply(doc)(part(t, doc, map[string]string{"holes": "holes", "light.readings": "light", "zones": "zones"}[list]).Remove(item))
		if err != nil {
			t.Errorf("%s: %v", item, err)
			continue
		}
		if a, b := len(doc.Items(list)), len(next.Items(list)); b != a-1 {
			t.Errorf("%s: %d items became %d", item, a, b)
		}
	}
}

package arena

import (
	"bytes"
	"encoding/json"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v3"

	"example.org/rinkpane/examples"
)

// readerFields is every group the reader opens, by its name in the schema.
var readerFields = map[string][]string{
	"": arenaFields, "rink": rinkFields, "markings": markingsFields, "boards": boardsFields, "glass": glassFields,
	"pane": paneFields, "hole": holeFields, "place": placeFields, "cover": coverFields, "window": windowFields,
	"zone": zoneFields, "light": lightFields, "game": gameFields, "reading": readingFields, "dispensation": dispensationFields,
}

type schemaGroup struct {
	Properties           map[string]json.RawMessage `json:"properties"`
	AdditionalProperties *bool                      `json:"additionalProperties"`
	Required             []string                   `json:"required"`
	Defs                 map[string]schemaGroup     `json:"$defs"`
}

// The schema and the reader know the same fields, no more and no fewer.
func TestSchemaHasTheReadersFields(t *testing.T) {
	var root schemaGroup
	if err := json.Unmarshal(Schema(), &root); err != nil {
		t.Fatal(err)
	}
	groups := map[string]schemaGroup{"": root}
	for name, g := range root.Defs {
		if g.Properties != nil {
			groups[name] = g
		}
	}
	if got, want := slices.Sorted(maps.Keys(groups)), slices.Sorted(maps.Keys(readerFields)); !slices.Equal(got, want) {
		t.Fatalf("the schema has groups %v, the reader %v", got, want)
	}
	for name, g := range groups {
		got, want := slices.Sorted(maps.Keys(g.Properties)), slices.Sorted(slices.Values(readerFields[name]))
		if !slices.Equal(got, want) {
			t.Errorf("group %q: the schema has %v, the reader %v", name, got, want)
		}
		if g.AdditionalProperties == nil || *g.AdditionalProperties {
			t.Errorf("group %q: the schema lets unknown fields pass", name)
		}
	}
}

func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("arena.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("arena.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// plain turns YAML into what JSON would hold; dates stay text.
func plain(n *yaml.Node) any {
	switch n.Kind {
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i < len(n.Content); i += 2 {
			m[n.Content[i].Value] = plain(n.Content[i+1])
		}
		return m
	case yaml.SequenceNode:
		l := []any{}
		for _, c := range n.Content {
			l = append(l, plain(c))
		}
		return l
	}
	if n.Tag == "!!timestamp" {
		return n.Value
	}
	var v any
	if n.Decode(&v) != nil {
		return n.Value
	}
	if i, ok := v.(int); ok {
		return float64(i)
	}
	return v
}

func schemaSays(t *testing.T, s *jsonschema.Schema, text []byte) error {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	return s.Validate(plain(doc.Content[0]))
}

func TestSchemaTakesEveryExample(t *testing.T) {
	s := compiled(t)
	names, err := fs.Glob(examples.Files, "*.yaml")
	if err != nil || len(names) < 3 {
		t.Fatalf("examples: %v, %v", names, err)
	}
	for _, name := range append(names, "") {
		text := []byte(full)
		if name != "" {
			if text, err = fs.ReadFile(examples.Files, name); err != nil {
				t.Fatal(err)
			}
		}
		if err := schemaSays(t, s, text); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What the reader refuses for its shape, the schema refuses too.
func TestSchemaRefusesWhatTheReaderRefuses(t *testing.T) {
	s := compiled(t)
	cases := [][2]string{
		{"height: 42 in", "height: 42"}, {"units: imperial", "units: feet"}, {"  ledge:", "  legde:"},
		{"standard: north-american", "standard: lake"}, {"rinkpane: arena 1", "rinkpane: kit 1"},
		{"size: 5.5 in x 4.5 in", "size: 5.5 in"}, {"corner: A-bench", "corner: C-bench"}, {"kind: panel", "kind: door"},
		{"mains: 60 Hz", "mains: 400 Hz"}, {"date: 2026-01-31", "date: soon"}, {"id: H1", "id: H 1"}, {"name: Full", "title: Full"},
		{"curved: yes", "curved: bent"}, {"state: cut", "state: sawn"}, {"material: tempered", "material: steel"},
	}
	for _, c := range cases {
		if strings.Count(full, c[0]) != 1 {
			t.Fatalf("%q stands in the full arena %d times", c[0], strings.Count(full, c[0]))
		}
		text := strings.Replace(full, c[0], c[1], 1)
		if schemaSays(t, s, []byte(text)) == nil {
			t.Errorf("the schema takes %q", c[1])
		}
		d, err := Read("x.yaml", strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := d.Check(); err == nil {
			t.Errorf("the reader takes %q", c[1])
		}
	}
}

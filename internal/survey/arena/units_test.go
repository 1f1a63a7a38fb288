package arena_test

import (
	"reflect"
	"testing"

	"go.yaml.in/yaml/v3"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
)

// Every length written anew in the other system, the arena is the same to the
// last bit: only the text has changed.
func TestUnitsChangeNothing(t *testing.T) {
	d := example(t, "sorrel-flats.yaml")
	before := checked(t, d)
	var root yaml.Node
	if err := yaml.Unmarshal(d.Bytes(), &root); err != nil {
		t.Fatal(err)
	}
	changed := 0
	var walk func(n *yaml.Node, path string)
	walk = func(n *yaml.Node, path string) {
		for i := 0; n.Kind == yaml.MappingNode && i+1 < len(n.Content); i += 2 {
			at := n.Content[i].Value
			if path != "" {
				at = path + "." + at
			}
			walk(n.Content[i+1], at)
		}
		for i, item := range n.Content {
			if n.Kind == yaml.SequenceNode {
				walk(item, path+"[#"+string(rune('1'+i))+"]")
			}
		}
		if l, err := unit.ParseOffset(n.Value); n.Kind == yaml.ScalarNode && err == nil {
			next, err := d.Set(path, form.Text(l.Exact(unit.Metric)))
			if err != nil {
				t.Fatal(err)
			}
			d, changed = next, changed+1
		}
	}
	walk(root.Content[0], "")
	if changed < 50 {
		t.Fatalf("%d lengths only", changed)
	}
	after := checked(t, d)
	if !reflect.DeepEqual(before, after) {
		t.Errorf("the arena differs:\n%+v\n%+v", before, after)
	}
}

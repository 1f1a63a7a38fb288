package arena

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"go.yaml.in/yaml/v3"
)

func readFull(t *testing.T, text string) (Arena, error) {
	t.Helper()
	d, err := Read("full.yaml", strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return d.Check()
}

// Every field of the format does something: without it the arena is another,
// or no arena at all. And the full arena has every field.
func TestEveryFieldCounts(t *testing.T) {
	whole, err := readFull(t, full)
	if err != nil {
		t.Fatal(err)
	}
	d, err := Read("full.yaml", strings.NewReader(full))
	if err != nil {
		t.Fatal(err)
	}
	// These say again what the standard or the format's default says.
	said := map[string]bool{"rink.length": true, "rink.width": true, "rink.corner-radius": true, "rink.standard": true}
	met := map[string]bool{}
	var walk func(n *yaml.Node, path string)
	walk = func(n *yaml.Node, path string) {
		for i := 0; i+1 < len(n.Content) && n.Kind == yaml.MappingNode; i += 2 {
			name := n.Content[i].Value
			at := strings.TrimPrefix(path+"."+name, ".")
			met[name] = true
			walk(n.Content[i+1], at)
			if said[at] || strings.HasPrefix(at, "rink.markings.") {
				continue
			}
			without, err := d.Remove(at)
			if err != nil {
				t.Errorf("%v", err)
				continue
			}
			if a, err := without.Check(); err == nil && reflect.DeepEqual(a, whole) {
				t.Errorf("field %s does nothing", at)
			}
		}
		for i, item := range n.Content {
			if n.Kind == yaml.SequenceNode {
				walk(item, path+"[#"+string(rune('1'+i))+"]")
			}
		}
	}
	// The standard fills in what the file leaves out.
	const width = "    crease-width: 8 ft\n"
	bare := strings.Replace(full, width, "", 1)
	crease := func(a Arena) float64 { return a.Rink.Dimensions().Markings.CreaseWidth.Metres() }
	if a, err := readFull(t, bare); err != nil || math.Abs(crease(a)-crease(whole)) > 1e-9 {
		t.Errorf("the standard's crease is not taken: %g m, %v", crease(a), err)
	}
	own := strings.Replace(bare, "  standard: north-american\n", "", 1)
	if a, err := readFull(t, own); err != nil || own == bare || crease(a) != 0 {
		t.Errorf("field rink.standard does nothing: crease of %g m, %v", crease(a), err)
	}
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(full), &doc); err != nil {
		t.Fatal(err)
	}
	walk(doc.Content[0], "")
	for group, fields := range readerFields {
		for _, f := range fields {
			if !met[f] {
				t.Errorf("the full arena lacks field %s of group %q", f, group)
			}
		}
	}
	if len(met) < 60 {
		t.Errorf("met %d names of fields only", len(met))
	}
}

// Own markings replace the standard's one by one.
func TestMarkingsAreRead(t *testing.T) {
	whole, err := readFull(t, full)
	if err != nil {
		t.Fatal(err)
	}
	for _, field := range markingsFields {
		var old string
		for _, l := range strings.Split(full, "\n") {
			if strings.HasPrefix(l, "    "+field+":") {
				old = l
			}
		}
		text := "    " + field + ": 1 ft 1 in"
		if field == "blue-line-to" {
			text = "    blue-line-to: middle"
		}
		if field == "goal-line" || field == "blue-line" || field == "spot-from-goal" || field == "circle-radius" {
			text = strings.Replace(old, " ft", " ft 3 in", 1)
		}
		a, err := readFull(t, strings.Replace(full, old, text, 1))
		if err != nil {
			t.Errorf("%s: %v", field, err)
			continue
		}
		if a.Rink.Dimensions() == whole.Rink.Dimensions() {
			t.Errorf("%s does nothing", field)
		}
	}
}

package form

import (
	"fmt"
	"strings"

	"go.yaml.in/yaml/v3"
)

// Node is one value of a document. A Node that is not [Node.Present] was left
// out; reading it as a value is a problem that says so.
type Node struct {
	doc   *Document
	yaml  *yaml.Node
	field string
	above *yaml.Node // where a missing field should have stood
}

// Present reports whether the value is there; null counts as left out.
func (n Node) Present() bool {
	return n.yaml != nil && !(n.yaml.Kind == yaml.ScalarNode && n.yaml.Tag == "!!null")
}

// Failf records a problem with this value. The first problem of a document sticks.
func (n Node) Failf(format string, args ...any) {
	at := n.yaml
	if at == nil {
		at = n.above
	}
	n.doc.fail(at, n.field, format, args...)
}

// sound reports whether the value may be read on: present, no alias, and no
// problem met before.
func (n Node) sound() bool {
	if n.doc.err != nil {
		return false
	}
	if !n.Present() {
		n.Failf("is missing")
		return false
	}
	if n.yaml.Kind == yaml.AliasNode {
		n.Failf("is an alias (*name); write the value out")
		return false
	}
	return true
}

// List returns the values of a list of at most most values, what stands for
// each in messages ("holes[H3]", or "readings[#4]" for the fourth of those
// without an id).
func (n Node) List(most int) []Node {
	if !n.sound() {
		return nil
	}
	if n.yaml.Kind != yaml.SequenceNode {
		n.Failf("must be a list: one line with - for each")
		return nil
	}
	if len(n.yaml.Content) > most {
		n.Failf("has %d entries; at most %d are read", len(n.yaml.Content), most)
		return nil
	}
	out := make([]Node, len(n.yaml.Content))
	for i, c := range n.yaml.Content {
		out[i] = Node{doc: n.doc, yaml: c, field: itemPath(n.field, c, i), above: n.yaml}
	}
	return out
}

// Map is the fields of a mapping.
type Map struct {
	Node
	values map[string]*yaml.Node
}

// Map reads the value as a mapping that may hold the known fields and no others.
func (n Node) Map(known ...string) Map {
	m := Map{Node: n, values: map[string]*yaml.Node{}}
	if !n.sound() {
		return m
	}
	if n.yaml.Kind != yaml.MappingNode {
		n.Failf("must be fields, one a line: %s", strings.Join(known, ", "))
		return m
	}
	for i := 0; i+1 < len(n.yaml.Content); i += 2 {
		m.take(n.yaml.Content[i], n.yaml.Content[i+1], known)
	}
	return m
}

func (m Map) take(key, value *yaml.Node, known []string) {
	name := key.Value
	_, twice := m.values[name]
	switch {
	case key.Kind != yaml.ScalarNode:
		m.doc.fail(key, m.field, "a field's name must be a plain word")
	case !contains(known, name):
		m.doc.fail(key, m.field, "unknown field %s; %s", Quote(name), meant(name, known))
	case twice:
		m.doc.fail(key, join(m.field, name), "is written twice; keep one")
	default:
		m.values[name] = value
	}
}

// meant is the cure for an unknown name.
func meant(name string, known []string) string {
	if near := Nearest(name, known); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	return "known here: " + strings.Join(known, ", ")
}

func contains(list []string, s string) bool {
	for _, l := range list {
		if l == s {
			return true
		}
	}
	return false
}

func join(field, name string) string {
	if field == "" {
		return name
	}
	return field + "." + name
}

// At returns the value of a field, not present when it was left out.
func (m Map) At(name string) Node {
	return Node{doc: m.doc, yaml: m.values[name], field: join(m.field, name), above: m.yaml}
}

// Has reports whether a field is there with a value.
func (m Map) Has(name string) bool { return m.At(name).Present() }

// OK reports whether the document's reading met no problem so far, so that one
// may compute with what was read.
func (n Node) OK() bool { return n.doc.err == nil }

// IsMap reports whether the value is there and is fields.
func (n Node) IsMap() bool { return n.yaml != nil && n.yaml.Kind == yaml.MappingNode }

// Path names the value as messages and edits do.
func (n Node) Path() string { return n.field }

// Value returns the text of a single value, for messages; "" for fields, lists
// and what was left out.
func (n Node) Value() string {
	if n.yaml == nil || n.yaml.Kind != yaml.ScalarNode {
		return ""
	}
	return n.yaml.Value
}

// Peek returns a field of a mapping before its known fields are settled: for
// documents in which one field tells which others may stand beside it.
func (n Node) Peek(name string) Node {
	out := Node{doc: n.doc, field: join(n.field, name), above: n.yaml}
	if !n.sound() || n.yaml.Kind != yaml.MappingNode {
		return out
	}
	for i := 0; i+1 < len(n.yaml.Content); i += 2 {
		if n.yaml.Content[i].Value == name {
			out.yaml = n.yaml.Content[i+1]
			break
		}
	}
	return out
}

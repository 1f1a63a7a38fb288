package form

import (
	"maps"
	"slices"

	"go.yaml.in/yaml/v3"
)

// Looking at a document by path, as edits do, for pages that show what a field
// holds before it is changed. Nothing is checked.

// Value returns the text of the single value at a path as it was written, ""
// for one that is not there, null, a list, or fields.
func (d *Document) Value(path string) string {
	s, _, err := d.find(path)
	if err != nil || s.node == nil || s.node.Kind != yaml.ScalarNode || isNull(s.node) {
		return ""
	}
	return s.node.Value
}

// IsGroup reports whether fields stand at a path.
func (d *Document) IsGroup(path string) bool {
	s, _, err := d.find(path)
	return err == nil && s.node != nil && s.node.Kind == yaml.MappingNode
}

// Items returns the paths of the items of the list at a path, as messages name
// them: by id, or by number where they have none.
func (d *Document) Items(path string) []string {
	s, _, err := d.find(path)
	if err != nil || s.node == nil || s.node.Kind != yaml.SequenceNode {
		return nil
	}
	out := make([]string, len(s.node.Content))
	for i, item := range s.node.Content {
		out[i] = itemPath(path, item, i)
	}
	return out
}

// Differ returns, in order, the paths of the fields that two documents hold
// otherwise: "boards", "panes"; of one list, which is named, those of its items
// instead: "holes[H3]". Comments and the order of fields make no difference.
func (d *Document) Differ(other *Document, list string) []string {
	mine, theirs := d.parts(list), other.parts(list)
	differs := map[string]bool{}
	for path, n := range mine {
		differs[path] = !alike(n, theirs[path])
	}
	for path, n := range theirs {
		differs[path] = !alike(n, mine[path])
	}
	maps.DeleteFunc(differs, func(_ string, is bool) bool { return !is })
	return slices.Sorted(maps.Keys(differs))
}

// parts are the fields of the root by path, the items of a list in place of the list.
func (d *Document) parts(list string) map[string]*yaml.Node {
	out := map[string]*yaml.Node{}
	for i := 0; d.root != nil && d.root.Kind == yaml.MappingNode && i+1 < len(d.root.Content); i += 2 {
		name, n := d.root.Content[i].Value, d.root.Content[i+1]
		if name != list || n.Kind != yaml.SequenceNode {
			out[name] = n
			continue
		}
		for k, item := range n.Content {
			out[itemPath(list, item, k)] = item
		}
	}
	return out
}

// alike reports whether two values say the same.
func alike(a, b *yaml.Node) bool {
	if a == nil || b == nil || a.Kind != b.Kind || a.Value != b.Value || len(a.Content) != len(b.Content) {
		return a == b
	}
	if a.Kind == yaml.MappingNode {
		for i := 0; i+1 < len(a.Content); i += 2 {
			if _, val := lookup(b, a.Content[i].Value); !alike(a.Content[i+1], val) {
				return false
			}
		}
		return true
	}
	return slices.EqualFunc(a.Content, b.Content, alike)
}

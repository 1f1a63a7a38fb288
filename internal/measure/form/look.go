package form

import "go.yaml.in/yaml/v3"

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

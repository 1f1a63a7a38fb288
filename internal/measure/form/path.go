package form

import (
	"fmt"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"
)

// A path names a value of a document: fields joined by dots, items of a list
// by their id or by their number from 1: "holes[H3].size",
// "light.readings[#4].x". Messages and edits use the same paths.

// longestID is the longest id that stands in a path, in bytes.
const longestID = 40

// itemPath names a list's item by its id, or by its number when it has none.
func itemPath(list string, item *yaml.Node, i int) string {
	if id := itemID(item); id != "" && len(id) <= longestID && !strings.ContainsAny(id, "[].# \n") {
		return list + "[" + id + "]"
	}
	return fmt.Sprintf("%s[#%d]", list, i+1)
}

// itemID returns the single value of the field id, "" without one.
func itemID(n *yaml.Node) string {
	if _, val := lookup(n, "id"); val != nil && val.Kind == yaml.ScalarNode {
		return val.Value
	}
	return ""
}

// lookup returns a field's name and value in a mapping, nil when it is not there.
func lookup(n *yaml.Node, field string) (key, val *yaml.Node) {
	if n == nil || n.Kind != yaml.MappingNode {
		return nil, nil
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == field {
			return n.Content[i], n.Content[i+1]
		}
	}
	return nil, nil
}

// step is one part of a path: a field's name, an item's id, or its number from 1.
type step struct {
	field, id string
	number    int
}

// steps takes a path apart.
func steps(path string) ([]step, error) {
	var out []step
	rest := path
	for rest != "" {
		if rest[0] == '[' {
			inner, after, closed := strings.Cut(rest[1:], "]")
			if !closed || inner == "" {
				return nil, fmt.Errorf("path %s: a bracket holds an id or # and a number", Quote(path))
			}
			s := step{id: inner}
			if num, is := strings.CutPrefix(inner, "#"); is {
				n, err := strconv.Atoi(num)
				if err != nil || n < 1 {
					return nil, fmt.Errorf("path %s: %s is no item's number", Quote(path), Quote(inner))
				}
				s = step{number: n}
			}
			out = append(out, s)
			rest = after
			continue
		}
		rest = strings.TrimPrefix(rest, ".")
		end := strings.IndexAny(rest, ".[")
		if end < 0 {
			end = len(rest)
		}
		if end == 0 {
			return nil, fmt.Errorf("path %s: a field's name is due", Quote(path))
		}
		out = append(out, step{field: rest[:end]})
		rest = rest[end:]
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("path %s: empty", Quote(path))
	}
	return out, nil
}

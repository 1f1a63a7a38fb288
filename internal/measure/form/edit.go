package form

import (
	"bytes"
	"fmt"
	"slices"

	"go.yaml.in/yaml/v3"
)

// An edit splices the text where the value stands and leaves every other byte
// alone: comments, order, blank lines, line ends. The result is read again
// and must hold exactly the values it should; what cannot be done so is an
// error, and the document stays as it was.

// splice replaces the bytes from..to by text.
type splice struct {
	from, to int
	text     string
}

// spot is where a path leads: a value, the list or fields it is in, and the way
// to it by number through Content.
type spot struct {
	node, parent *yaml.Node
	key          *yaml.Node // of a field
	index        int        // in the parent's Content
	way          []int      // from the root
}

// find follows a path. When only the last field is missing, node is nil and
// parent the fields that lack it.
func (d *Document) find(path string) (spot, []step, error) {
	parts, err := steps(path)
	if err != nil {
		return spot{}, nil, err
	}
	s := spot{node: d.root}
	for i, part := range parts {
		next := s.child(part)
		if next.node == nil && (i < len(parts)-1 || part.field == "" || s.node.Kind != yaml.MappingNode) {
			return spot{}, nil, fmt.Errorf("%s: no %s in this document", d.name, Quote(path))
		}
		s = next
	}
	return s, parts, nil
}

// Has reports whether a path leads to a value that is there.
func (d *Document) Has(path string) bool {
	s, _, err := d.find(path)
	return err == nil && s.node != nil && !isNull(s.node)
}

func (s spot) child(part step) spot {
	next := spot{parent: s.node, way: s.way}
	in := s.node
	for i, c := range in.Content {
		hit := false
		switch in.Kind {
		case yaml.MappingNode:
			hit = i%2 == 1 && part.field != "" && in.Content[i-1].Value == part.field
		case yaml.SequenceNode:
			hit = part.number == i+1 || part.id != "" && itemID(c) == part.id
		}
		if hit {
			if in.Kind == yaml.MappingNode {
				next.key = in.Content[i-1]
			}
			next.node, next.index = c, i
			next.way = append(slices.Clone(s.way), i)
			break
		}
	}
	return next
}

// change is an edit under way: of which document, at which path, and the values
// that it must lead to. Where the text cannot be followed, it is stuck.
type change struct {
	*Document
	path  string
	want  *yaml.Node
	stuck bool
}

// end returns the byte offset past a value's last character; 0 when stuck.
func (c *change) end(n *yaml.Node) int { return c.sure(c.Document.end(n)) }

func (c *change) sure(at int, ok bool) int {
	c.stuck = c.stuck || !ok
	return at
}

// rewrite applies splices, lowest first, and proves the result: read again it
// must equal what is wanted.
func (c *change) rewrite(cuts ...splice) (*Document, error) {
	if c.stuck {
		return nil, c.byHand()
	}
	var b bytes.Buffer
	at := 0
	for _, cut := range cuts {
		if cut.from < at || cut.to < cut.from {
			return nil, c.byHand()
		}
		b.Write(c.text[at:cut.from])
		b.WriteString(cut.text)
		at = cut.to
	}
	b.Write(c.text[at:])
	again, err := read(c.name, b.Bytes(), c.most)
	if err != nil || !same(again.root, c.want) {
		return nil, c.byHand()
	}
	return again, nil
}

func (c *change) byHand() error {
	return fmt.Errorf("%s: %s stands in a place that cannot be changed without touching more; edit the text by hand", c.name, c.path)
}

// same reports whether two values hold the same, whatever their style.
func same(a, b *yaml.Node) bool {
	if a.Kind != b.Kind || a.Value != b.Value || isNull(a) != isNull(b) || len(a.Content) != len(b.Content) {
		return false
	}
	for i := range a.Content {
		if !same(a.Content[i], b.Content[i]) {
			return false
		}
	}
	return true
}

// cloned copies the values of a tree.
func cloned(n *yaml.Node) *yaml.Node {
	c := &yaml.Node{Kind: n.Kind, Tag: n.Tag, Value: n.Value, Content: make([]*yaml.Node, len(n.Content))}
	for i, k := range n.Content {
		c.Content[i] = cloned(k)
	}
	return c
}

// at returns the value that a way leads to.
func at(root *yaml.Node, way []int) *yaml.Node {
	for _, i := range way {
		root = root.Content[i]
	}
	return root
}

func flow(n *yaml.Node) bool { return n.Style&yaml.FlowStyle != 0 }

func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }

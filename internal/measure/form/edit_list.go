package form

import (
	"bytes"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// Append returns the document with one more item at the end of the list at
// path, written like the item before it: on one line, or a line for each field.
// A list that is missing or empty is begun.
func (d *Document) Append(path string, e Entry) (*Document, error) {
	s, parts, err := d.find(path)
	if err != nil {
		return nil, err
	}
	c := &change{Document: d, path: path, want: cloned(d.root)}
	switch {
	case s.node == nil:
		in := at(c.want, s.way)
		name := parts[len(parts)-1].field
		in.Content = append(in.Content, Text(name).node(), Items(e).node())
		return c.beginMissing(s.parent, name, e)
	case isNull(s.node) || s.node.Kind == yaml.SequenceNode && len(s.node.Content) == 0:
		*at(c.want, s.way) = *Items(e).node()
		return c.beginEmpty(s, e)
	case s.node.Kind != yaml.SequenceNode:
		return nil, c.byHand()
	}
	list := at(c.want, s.way)
	list.Content = append(list.Content, e.node())
	if flow(s.node) {
		return c.addInBrackets(s.node, e.inline())
	}
	return c.addLines(c.end(s.node), d.item(s.node, s.node.Content[len(s.node.Content)-1], e))
}

// Insert returns the document with one more item behind the list's item at path,
// written like that one.
func (d *Document) Insert(path string, e Entry) (*Document, error) {
	s, _, err := d.find(path)
	if err != nil {
		return nil, err
	}
	c := &change{Document: d, path: path, want: cloned(d.root)}
	if s.node == nil || s.key != nil {
		return nil, c.byHand()
	}
	list := at(c.want, s.way[:len(s.way)-1])
	list.Content = slices.Insert(list.Content, s.index+1, e.node())
	end := c.end(s.node)
	if flow(s.parent) {
		return c.rewrite(splice{end, end, ", " + e.inline()})
	}
	return c.addLines(end, d.item(s.parent, s.node, e))
}

// item writes one more item of a block list, in the style of another one.
func (d *Document) item(list, like *yaml.Node, e Entry) string {
	text := d.dashed(list.Column-1, e, like.Kind != yaml.MappingNode || flow(like))
	if n := len(list.Content); n > 1 {
		if dash, ok := d.dashLine(list, like); ok && d.apart(dash) {
			text = d.newline() + text
		}
	}
	return text
}

// apart reports whether a blank line stands above a line and the comments above it.
func (d *Document) apart(line int) bool {
	for n := line - 1; n >= 1; n-- {
		switch text := bytes.TrimSpace(d.line(n)); {
		case len(text) == 0:
			return true
		case text[0] != '#':
			return false
		}
	}
	return false
}

// dashed writes an item with its dash at an indentation.
func (d *Document) dashed(indent int, e Entry, oneLine bool) string {
	pad := strings.Repeat(" ", indent)
	if oneLine {
		return pad + "- " + e.inline()
	}
	return pad + "- " + e.block(indent+2, d.newline())
}

func (c *change) beginMissing(in *yaml.Node, name string, e Entry) (*Document, error) {
	if flow(in) {
		return c.addInBrackets(in, Scalar(name)+": "+Items(e).inline())
	}
	indent := in.Content[0].Column - 1
	head := strings.Repeat(" ", indent) + Scalar(name) + ":" + c.newline()
	return c.addLines(c.end(in), head+c.dashed(indent+2, e, false))
}

// beginEmpty begins a list that is written as nothing or as [].
func (c *change) beginEmpty(s spot, e Entry) (*Document, error) {
	if s.key == nil {
		return nil, c.byHand()
	}
	colon := c.afterColon(s.key)
	end := max(c.end(s.node), colon)
	if c.stuck || flow(s.parent) {
		return c.rewrite(splice{colon, end, " " + Items(e).inline()})
	}
	below := c.contentEnd(c.lineOf(end - 1))
	item := c.newline() + c.dashed(s.key.Column+1, e, false)
	return c.rewrite(splice{colon, end, ""}, splice{below, below, item})
}

// Remove returns the document without the field or the list's item at path.
// Its own lines go, with the comments on and between them; comment lines above
// it stay. A list that loses its last item is written [].
func (d *Document) Remove(path string) (*Document, error) {
	s, _, err := d.find(path)
	if err != nil {
		return nil, err
	}
	c := &change{Document: d, path: path, want: cloned(d.root)}
	if s.node == nil {
		return nil, c.byHand()
	}
	in := at(c.want, s.way[:len(s.way)-1])
	first := s.index
	if s.key != nil {
		first--
	}
	in.Content = slices.Delete(in.Content, first, s.index+1)
	switch {
	case len(in.Content) == 0 && flow(s.parent):
		return c.rewrite(splice{d.start(s.parent) + 1, c.end(s.parent) - 1, ""})
	case len(in.Content) == 0:
		return c.removeLast(s)
	case flow(s.parent):
		return c.removeInBrackets(s, first)
	case s.key != nil:
		return c.removeField(s)
	}
	dash := c.sure(d.dashLine(s.parent, s.node))
	end := c.end(s.node)
	if c.stuck {
		return nil, c.byHand()
	}
	from := d.lines[dash-1]
	return c.rewrite(splice{from, d.lineEnd(d.lineOf(max(end-1, from))), ""})
}

// removeLast writes {} or [] for the fields or list that hold nothing more.
func (c *change) removeLast(s spot) (*Document, error) {
	up := s.way[:len(s.way)-1]
	if len(up) == 0 || at(c.root, up[:len(up)-1]).Kind != yaml.MappingNode {
		return nil, c.byHand()
	}
	colon := c.afterColon(at(c.root, up[:len(up)-1]).Content[up[len(up)-1]-1])
	end := c.end(s.parent)
	if c.stuck {
		return nil, c.byHand()
	}
	empty := " []"
	if s.parent.Kind == yaml.MappingNode {
		empty = " {}"
	}
	own := c.contentEnd(c.lineOf(colon - 1))
	return c.rewrite(splice{colon, colon, empty}, splice{own, end, ""})
}

// removeInBrackets cuts a value out of {...} or [...] with one comma.
func (c *change) removeInBrackets(s spot, first int) (*Document, error) {
	if s.index+1 < len(s.parent.Content) {
		return c.rewrite(splice{c.start(s.parent.Content[first]), c.start(s.parent.Content[s.index+1]), ""})
	}
	return c.rewrite(splice{c.end(s.parent.Content[first-1]), c.end(s.node), ""})
}

// removeField cuts a field's lines; one that shares its line with a dash gives
// its place to the next.
func (c *change) removeField(s spot) (*Document, error) {
	end, from := c.end(s.node), c.start(s.key)
	line := c.lineOf(from)
	if len(bytes.TrimSpace(c.text[c.lines[line-1]:from])) > 0 {
		if s.index+1 >= len(s.parent.Content) {
			return nil, c.byHand()
		}
		return c.rewrite(splice{from, c.start(s.parent.Content[s.index+1]), ""})
	}
	return c.rewrite(splice{c.lines[line-1], c.lineEnd(c.lineOf(max(end-1, from))), ""})
}

// dashLine returns the line of an item's dash, which must be the first
// character of its line.
func (d *Document) dashLine(list, item *yaml.Node) (int, bool) {
	for n := item.Line; n >= list.Line; n-- {
		text := d.line(n)
		if trimmed := bytes.TrimLeft(text, " "); len(trimmed) > 0 && trimmed[0] == '-' && len(text)-len(trimmed) == list.Column-1 {
			return n, true
		}
	}
	return 0, false
}

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
	want := cloned(d.root)
	switch {
	case s.node == nil:
		in := at(want, s.way)
		name := parts[len(parts)-1].field
		in.Content = append(in.Content, Text(name).node(), Items(e).node())
		return d.beginMissing(path, want, s.parent, name, e)
	case isNull(s.node) || s.node.Kind == yaml.SequenceNode && len(s.node.Content) == 0:
		*at(want, s.way) = *Items(e).node()
		return d.beginEmpty(path, want, s, e)
	case s.node.Kind != yaml.SequenceNode:
		return nil, d.byHand(path)
	}
	list := at(want, s.way)
	list.Content = append(list.Content, e.node())
	end, ok := d.end(s.node)
	if !ok {
		return nil, d.byHand(path)
	}
	if flow(s.node) {
		return d.addInBrackets(path, want, s.node, end, e.inline())
	}
	return d.addLines(path, want, end, d.item(s.node, e))
}

// item writes one more item of a block list, in the style of its last one.
func (d *Document) item(list *yaml.Node, e Entry) string {
	last := list.Content[len(list.Content)-1]
	text := d.dashed(list.Column-1, e, last.Kind != yaml.MappingNode || flow(last))
	if n := len(list.Content); n > 1 {
		if dash, ok := d.dashLine(list, last); ok && d.apart(dash) {
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

func (d *Document) beginMissing(path string, want, in *yaml.Node, name string, e Entry) (*Document, error) {
	end, ok := d.end(in)
	if !ok {
		return nil, d.byHand(path)
	}
	if flow(in) {
		return d.addInBrackets(path, want, in, end, scalar(name)+": "+Items(e).inline())
	}
	indent := in.Content[0].Column - 1
	head := strings.Repeat(" ", indent) + scalar(name) + ":" + d.newline()
	return d.addLines(path, want, end, head+d.dashed(indent+2, e, false))
}

// beginEmpty begins a list that is written as nothing or as [].
func (d *Document) beginEmpty(path string, want *yaml.Node, s spot, e Entry) (*Document, error) {
	end, ok := d.end(s.node)
	if !ok || s.key == nil {
		return nil, d.byHand(path)
	}
	colon, ok := d.afterColon(s.key)
	if !ok {
		return nil, d.byHand(path)
	}
	if flow(s.parent) {
		return d.rewrite(path, want, splice{colon, max(end, colon), " " + Items(e).inline()})
	}
	below := d.contentEnd(d.lineOf(max(end, colon) - 1))
	item := d.newline() + d.dashed(s.key.Column+1, e, false)
	return d.rewrite(path, want, splice{colon, max(end, colon), ""}, splice{below, below, item})
}

// Remove returns the document without the field or the list's item at path.
// Its own lines go, with the comments on and between them; comment lines above
// it stay. A list that loses its last item is written [].
func (d *Document) Remove(path string) (*Document, error) {
	s, _, err := d.find(path)
	if err != nil {
		return nil, err
	}
	if s.node == nil {
		return nil, d.byHand(path)
	}
	want := cloned(d.root)
	in := at(want, s.way[:len(s.way)-1])
	first := s.index
	if s.key != nil {
		first--
	}
	in.Content = slices.Delete(in.Content, first, s.index+1)
	switch {
	case len(in.Content) == 0 && flow(s.parent):
		end, ok := d.end(s.parent)
		if !ok {
			return nil, d.byHand(path)
		}
		return d.rewrite(path, want, splice{d.start(s.parent) + 1, end - 1, ""})
	case len(in.Content) == 0:
		return d.removeLast(path, want, s)
	case flow(s.parent):
		return d.removeInBrackets(path, want, s, first)
	case s.key != nil:
		return d.removeField(path, want, s)
	}
	from, to, ok := d.itemLines(s)
	if !ok {
		return nil, d.byHand(path)
	}
	return d.rewrite(path, want, splice{from, to, ""})
}

// removeLast writes {} or [] for the fields or list that hold nothing more.
func (d *Document) removeLast(path string, want *yaml.Node, s spot) (*Document, error) {
	up := s.way[:len(s.way)-1]
	if len(up) == 0 || at(d.root, up[:len(up)-1]).Kind != yaml.MappingNode {
		return nil, d.byHand(path)
	}
	key := at(d.root, up[:len(up)-1]).Content[up[len(up)-1]-1]
	end, ok := d.end(s.parent)
	colon, okColon := d.afterColon(key)
	if !ok || !okColon {
		return nil, d.byHand(path)
	}
	empty := " []"
	if s.parent.Kind == yaml.MappingNode {
		empty = " {}"
	}
	own := d.contentEnd(d.lineOf(colon - 1))
	return d.rewrite(path, want, splice{colon, colon, empty}, splice{own, end, ""})
}

// removeInBrackets cuts a value out of {...} or [...] with one comma.
func (d *Document) removeInBrackets(path string, want *yaml.Node, s spot, first int) (*Document, error) {
	end, ok := d.end(s.node)
	if !ok {
		return nil, d.byHand(path)
	}
	if s.index+1 < len(s.parent.Content) {
		return d.rewrite(path, want, splice{d.start(s.parent.Content[first]), d.start(s.parent.Content[s.index+1]), ""})
	}
	before, ok := d.end(s.parent.Content[first-1])
	if !ok {
		return nil, d.byHand(path)
	}
	return d.rewrite(path, want, splice{before, end, ""})
}

// removeField cuts a field's lines; one that shares its line with a dash gives
// its place to the next.
func (d *Document) removeField(path string, want *yaml.Node, s spot) (*Document, error) {
	end, ok := d.end(s.node)
	if !ok {
		return nil, d.byHand(path)
	}
	from := d.start(s.key)
	line := d.lineOf(from)
	if len(bytes.TrimSpace(d.text[d.lines[line-1]:from])) > 0 {
		if s.index+1 >= len(s.parent.Content) {
			return nil, d.byHand(path)
		}
		return d.rewrite(path, want, splice{from, d.start(s.parent.Content[s.index+1]), ""})
	}
	return d.rewrite(path, want, splice{d.lines[line-1], d.lineEnd(d.lineOf(max(end-1, from))), ""})
}

// itemLines returns the whole lines of a block list's item.
func (d *Document) itemLines(s spot) (from, to int, ok bool) {
	end, ok := d.end(s.node)
	dash, okDash := d.dashLine(s.parent, s.node)
	if !ok || !okDash {
		return 0, 0, false
	}
	from = d.lines[dash-1]
	return from, d.lineEnd(d.lineOf(max(end-1, from))), true
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

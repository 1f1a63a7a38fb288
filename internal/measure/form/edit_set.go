package form

import (
	"strings"

	"go.yaml.in/yaml/v3"
)

// Set returns the document with the value at path replaced, or with the field
// added at the end of its fields when only that is missing. A list's item may
// be replaced too.
func (d *Document) Set(path string, e Entry) (*Document, error) {
	s, parts, err := d.find(path)
	if err != nil {
		return nil, err
	}
	want := cloned(d.root)
	if s.node == nil {
		in := at(want, s.way)
		name := parts[len(parts)-1].field
		in.Content = append(in.Content, Text(name).node(), e.node())
		return d.addField(path, want, s.parent, name, e)
	}
	*at(want, s.way) = *e.node()
	if s.key == nil {
		return d.replaceItem(path, want, s, e)
	}
	return d.replaceField(path, want, s, e)
}

// replaceField writes a field's new value after its colon. A value of several
// lines gives way to one of one line; a comment on the field's own line stays.
func (d *Document) replaceField(path string, want *yaml.Node, s spot, e Entry) (*Document, error) {
	end, ok := d.end(s.node)
	if !ok {
		return nil, d.byHand(path)
	}
	from := d.start(s.node)
	colon, ok := d.afterColon(s.key)
	switch {
	case !ok:
		return nil, d.byHand(path)
	case isNull(s.node) && s.node.Value == "":
		return d.rewrite(path, want, splice{colon, colon, " " + e.inline()})
	case s.node.Kind != yaml.ScalarNode && !flow(s.node) && d.lineOf(from) > d.lineOf(colon):
		own := d.contentEnd(d.lineOf(colon))
		return d.rewrite(path, want, splice{colon, colon, " " + e.inline()}, splice{own, end, ""})
	}
	return d.rewrite(path, want, splice{from, end, e.inline()})
}

// afterColon returns the offset past the colon of a field.
func (d *Document) afterColon(key *yaml.Node) (int, bool) {
	end, ok := d.end(key)
	if !ok {
		return 0, false
	}
	for end < len(d.text) && (d.text[end] == ' ' || d.text[end] == '\t') {
		end++
	}
	if end >= len(d.text) || d.text[end] != ':' {
		return 0, false
	}
	return end + 1, true
}

// replaceItem writes a list's item anew, in the style of the one it replaces.
func (d *Document) replaceItem(path string, want *yaml.Node, s spot, e Entry) (*Document, error) {
	end, ok := d.end(s.node)
	if !ok || isNull(s.node) {
		return nil, d.byHand(path)
	}
	text := e.inline()
	if s.node.Kind == yaml.MappingNode && !flow(s.node) {
		text = e.block(s.node.Column-1, d.newline())
	}
	return d.rewrite(path, want, splice{d.start(s.node), end, text})
}

// addField writes a field that is not there yet, after the last one.
func (d *Document) addField(path string, want, in *yaml.Node, name string, e Entry) (*Document, error) {
	end, ok := d.end(in)
	if !ok {
		return nil, d.byHand(path)
	}
	text := scalar(name) + ": " + e.inline()
	if flow(in) {
		return d.addInBrackets(path, want, in, end, text)
	}
	return d.addLines(path, want, end, strings.Repeat(" ", in.Content[0].Column-1)+text)
}

// addInBrackets writes one more value before the closing bracket.
func (d *Document) addInBrackets(path string, want, in *yaml.Node, end int, text string) (*Document, error) {
	if len(in.Content) == 0 {
		return d.rewrite(path, want, splice{end - 1, end - 1, text})
	}
	last, ok := d.end(in.Content[len(in.Content)-1])
	if !ok {
		return nil, d.byHand(path)
	}
	return d.rewrite(path, want, splice{last, last, ", " + text})
}

// addLines writes whole lines below the line that holds the offset just
// before end.
func (d *Document) addLines(path string, want *yaml.Node, end int, text string) (*Document, error) {
	line := d.lineOf(max(end-1, 0))
	below := d.lineEnd(line)
	if d.contentEnd(line) == below { // the last line lacks its line end
		return d.rewrite(path, want, splice{below, below, d.newline() + text})
	}
	return d.rewrite(path, want, splice{below, below, text + d.newline()})
}

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
	c := &change{Document: d, path: path, want: cloned(d.root)}
	if s.node == nil {
		in := at(c.want, s.way)
		name := parts[len(parts)-1].field
		in.Content = append(in.Content, Text(name).node(), e.node())
		return c.addField(s.parent, name, e)
	}
	*at(c.want, s.way) = *e.node()
	if s.key == nil {
		return c.replaceItem(s, e)
	}
	return c.replaceField(s, e)
}

// Placed is a text for a single value that the document has.
type Placed struct{ Path, Text string }

// SetEach returns the document with several single values replaced in one pass;
// they stand in the document's order.
func (d *Document) SetEach(values []Placed) (*Document, error) {
	c := &change{Document: d, want: cloned(d.root)}
	var cuts []splice
	for _, v := range values {
		s, _, err := d.find(v.Path)
		if err != nil {
			return nil, err
		}
		if c.path = v.Path; s.node == nil || s.node.Kind != yaml.ScalarNode || isNull(s.node) {
			return nil, c.byHand()
		}
		e := Text(v.Text)
		*at(c.want, s.way) = *e.node()
		cuts = append(cuts, splice{c.start(s.node), c.end(s.node), e.inline()})
	}
	return c.rewrite(cuts...)
}

// replaceField writes a field's new value after its colon. A value of several
// lines gives way to one of one line; a comment on the field's own line stays.
func (c *change) replaceField(s spot, e Entry) (*Document, error) {
	end, colon, from := c.end(s.node), c.afterColon(s.key), c.start(s.node)
	switch {
	case c.stuck:
		return nil, c.byHand()
	case isNull(s.node) && s.node.Value == "":
		return c.rewrite(splice{colon, colon, " " + e.inline()})
	case s.node.Kind != yaml.ScalarNode && !flow(s.node) && c.lineOf(from) > c.lineOf(colon):
		own := c.contentEnd(c.lineOf(colon))
		return c.rewrite(splice{colon, colon, " " + e.inline()}, splice{own, end, ""})
	}
	return c.rewrite(splice{from, end, e.inline()})
}

// afterColon returns the offset past the colon of a field; 0 when stuck.
func (c *change) afterColon(key *yaml.Node) int {
	end := c.end(key)
	for end < len(c.text) && (c.text[end] == ' ' || c.text[end] == '\t') {
		end++
	}
	return c.sure(end+1, end < len(c.text) && c.text[end] == ':')
}

// replaceItem writes a list's item anew, in the style of the one it replaces.
func (c *change) replaceItem(s spot, e Entry) (*Document, error) {
	if isNull(s.node) {
		return nil, c.byHand()
	}
	text := e.inline()
	if s.node.Kind == yaml.MappingNode && !flow(s.node) {
		text = e.block(s.node.Column-1, c.newline())
	}
	return c.rewrite(splice{c.start(s.node), c.end(s.node), text})
}

// addField writes a field that is not there yet, after the last one.
func (c *change) addField(in *yaml.Node, name string, e Entry) (*Document, error) {
	text := Scalar(name) + ": " + e.inline()
	if flow(in) {
		return c.addInBrackets(in, text)
	}
	return c.addLines(c.end(in), strings.Repeat(" ", in.Content[0].Column-1)+text)
}

// addInBrackets writes one more value before the closing bracket.
func (c *change) addInBrackets(in *yaml.Node, text string) (*Document, error) {
	end := c.end(in)
	if len(in.Content) == 0 {
		return c.rewrite(splice{end - 1, end - 1, text})
	}
	last := c.end(in.Content[len(in.Content)-1])
	return c.rewrite(splice{last, last, ", " + text})
}

// addLines writes whole lines below the line that holds the offset just
// before end.
func (c *change) addLines(end int, text string) (*Document, error) {
	line := c.lineOf(max(end-1, 0))
	below := c.lineEnd(line)
	if c.contentEnd(line) == below { // the last line lacks its line end
		return c.rewrite(splice{below, below, c.newline() + text})
	}
	return c.rewrite(splice{below, below, text + c.newline()})
}

package form

import (
	"bytes"
	"strings"

	"go.yaml.in/yaml/v3"
)

// The parser tells where a value starts; where it ends is found here, from the
// text. An answer not known is ok false: the edit is refused, never guessed.

// start returns the byte offset of a value's first character.
func (d *Document) start(n *yaml.Node) int { return d.offset(n.Line, n.Column) }

// end returns the byte offset past a value's last character.
func (d *Document) end(n *yaml.Node) (at int, ok bool) {
	if n.Anchor != "" || n.Style&yaml.TaggedStyle != 0 {
		return 0, false
	}
	switch n.Kind {
	case yaml.ScalarNode:
		return d.scalarEnd(n)
	case yaml.MappingNode, yaml.SequenceNode:
		if n.Style&yaml.FlowStyle != 0 {
			return d.flowEnd(n)
		}
		return d.end(n.Content[len(n.Content)-1]) // a block holds at least one value
	}
	return 0, false
}

func (d *Document) scalarEnd(n *yaml.Node) (int, bool) {
	from := d.start(n)
	switch {
	case n.Style&yaml.DoubleQuotedStyle != 0:
		return quoteEnd(d.text, from, '"')
	case n.Style&yaml.SingleQuotedStyle != 0:
		return quoteEnd(d.text, from, '\'')
	case n.Style&(yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		return d.literalEnd(n.Line)
	}
	return plainEnd(d.text, from, n.Value)
}

// plainEnd follows a plain value through the text: the same characters, and
// for each run of white space in the value one in the text, line ends included.
func plainEnd(text []byte, at int, value string) (int, bool) {
	for i := 0; i < len(value); {
		if white(value[i]) {
			if at >= len(text) || !white(text[at]) {
				return 0, false
			}
			for i < len(value) && white(value[i]) {
				i++
			}
			for at < len(text) && white(text[at]) {
				at++
			}
			continue
		}
		if at >= len(text) || text[at] != value[i] {
			return 0, false
		}
		at, i = at+1, i+1
	}
	return at, true
}

func white(b byte) bool { return b == ' ' || b == '\t' || b == '\n' || b == '\r' }

// quoteEnd returns the offset past the quote that closes the one at from.
func quoteEnd(text []byte, from int, mark byte) (int, bool) {
	if from >= len(text) || text[from] != mark {
		return 0, false
	}
	for i := from + 1; i < len(text); i++ {
		switch {
		case mark == '"' && text[i] == '\\':
			i++
		case text[i] == mark && mark == '\'' && i+1 < len(text) && text[i+1] == mark:
			i++
		case text[i] == mark:
			return i + 1, true
		}
	}
	return 0, false
}

// literalEnd returns the end of a block of text whose | or > stands in a line:
// the lines below that are blank or indented no less than the first of them.
func (d *Document) literalEnd(header int) (int, bool) {
	head := d.line(header)
	if mark := bytes.LastIndexAny(head, "|>"); mark < 0 || bytes.ContainsAny(head[mark:], "123456789") {
		return 0, false // an indentation written out: rare, and not for us
	}
	last, indent := header, -1
	for n := header + 1; n <= len(d.lines); n++ {
		text := d.line(n)
		if len(bytes.TrimSpace(text)) == 0 {
			continue
		}
		own := len(text) - len(bytes.TrimLeft(text, " "))
		if indent < 0 {
			indent = own
		}
		if own < indent || own == 0 {
			break
		}
		last = n
	}
	return d.contentEnd(last), true
}

// flowEnd returns the end of a {...} or [...].
func (d *Document) flowEnd(n *yaml.Node) (int, bool) {
	at := d.start(n) + 1
	closing := byte(']')
	if n.Kind == yaml.MappingNode {
		closing = '}'
	}
	for _, c := range n.Content {
		end, ok := d.end(c)
		if !ok {
			return 0, false
		}
		at = max(at, end)
	}
	for at < len(d.text) {
		switch b := d.text[at]; {
		case b == closing:
			return at + 1, true
		case b == '#':
			for at < len(d.text) && d.text[at] != '\n' && d.text[at] != '\r' {
				at++
			}
		case strings.IndexByte(" \t\r\n,:", b) >= 0:
			at++
		default:
			return 0, false
		}
	}
	return 0, false
}

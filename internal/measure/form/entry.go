package form

import (
	"fmt"
	"strings"
	"unicode"

	"go.yaml.in/yaml/v3"
)

// Entry is a value to be written into a document: a text, or fields, or a list.
type Entry struct {
	text   string
	fields []Field
	items  []Entry
	kind   yaml.Kind
}

// Field is a named entry.
type Field struct {
	Name  string
	Value Entry
}

// Text returns an entry of one value, as a person would write it: "5.5 in".
func Text(s string) Entry { return Entry{text: s, kind: yaml.ScalarNode} }

// Fields returns an entry of fields, written in the order given.
func Fields(fields ...Field) Entry { return Entry{fields: fields, kind: yaml.MappingNode} }

// Items returns an entry that is a list.
func Items(items ...Entry) Entry { return Entry{items: items, kind: yaml.SequenceNode} }

// inline returns the entry on one line.
func (e Entry) inline() string {
	switch e.kind {
	case yaml.MappingNode:
		parts := make([]string, len(e.fields))
		for i, f := range e.fields {
			parts[i] = Scalar(f.Name) + ": " + f.Value.inline()
		}
		return "{" + strings.Join(parts, ", ") + "}"
	case yaml.SequenceNode:
		parts := make([]string, len(e.items))
		for i, item := range e.items {
			parts[i] = item.inline()
		}
		return "[" + strings.Join(parts, ", ") + "]"
	}
	return Scalar(e.text)
}

// block returns the entry with a line for each of its fields, lines after the
// first indented.
func (e Entry) block(indent int, newline string) string {
	if e.kind != yaml.MappingNode || len(e.fields) == 0 {
		return e.inline()
	}
	lines := make([]string, len(e.fields))
	for i, f := range e.fields {
		lines[i] = Scalar(f.Name) + ": " + f.Value.inline()
	}
	return strings.Join(lines, newline+strings.Repeat(" ", indent))
}

// Scalar writes a text plainly where YAML reads it back as the same text, even
// inside brackets; in double quotes otherwise.
func Scalar(s string) string {
	if s != "" && strings.IndexFunc(s, func(r rune) bool { return !unicode.IsPrint(r) }) < 0 {
		for _, frame := range [][2]string{{"k: ", "\n"}, {"{k: ", "}\n"}} {
			root, err := parse([]byte(frame[0] + s + frame[1]))
			if err != nil {
				return quoted(s)
			}
			_, val := lookup(root, "k")
			if val == nil || len(root.Content) != 2 || val.Kind != yaml.ScalarNode || val.Value != s ||
				val.Style != 0 || val.Anchor != "" || val.Tag == "!!null" {
				return quoted(s)
			}
		}
		return s
	}
	return quoted(s)
}

// quoted writes a text in double quotes, what is not printable escaped.
func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case unicode.IsPrint(r) && r <= 0xffff:
			b.WriteRune(r)
		default:
			fmt.Fprintf(&b, `\U%08x`, r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// node returns what the parser must find where the entry was written.
func (e Entry) node() *yaml.Node {
	n := &yaml.Node{Kind: e.kind, Value: e.text}
	for _, f := range e.fields {
		n.Content = append(n.Content, Text(f.Name).node(), f.Value.node())
	}
	for _, item := range e.items {
		n.Content = append(n.Content, item.node())
	}
	return n
}

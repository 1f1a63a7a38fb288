package form

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// Document is a document being read. Its first problem sticks.
type Document struct {
	name string
	text []byte
	root *yaml.Node
	err  error
}

// Read reads one YAML document of at most maxBytes bytes; name stands in
// messages. What it returns is syntactically sound; the fields are checked as
// they are asked for. Errors are [*Problem], or those of r, wrapped.
func Read(name string, r io.Reader, maxBytes int64) (*Document, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	d := &Document{name: name, text: text}
	if int64(len(text)) > maxBytes {
		return nil, d.whole("is larger than %d kB, which is more than such a file may hold", maxBytes/1000)
	}
	if bytes.IndexByte(text, 0) >= 0 || !utf8.Valid(text) {
		return nil, d.whole("is not UTF-8 text; is it the right file?")
	}
	return d, d.parse()
}

func (d *Document) whole(format string, args ...any) error {
	return &Problem{File: d.name, Text: fmt.Sprintf(format, args...)}
}

func (d *Document) parse() error {
	dec := yaml.NewDecoder(bytes.NewReader(d.text))
	var doc yaml.Node
	switch err := dec.Decode(&doc); {
	case errors.Is(err, io.EOF):
		return d.whole("is empty")
	case err != nil:
		return d.syntax(err)
	}
	if err := dec.Decode(new(yaml.Node)); !errors.Is(err, io.EOF) {
		if err != nil {
			return d.syntax(err)
		}
		return d.whole("holds more than one YAML document; keep one, and drop the line with ---")
	}
	d.root = doc.Content[0]
	return nil
}

var lineInError = regexp.MustCompile(`line (\d+): `)

// syntax turns the parser's error into a Problem with its line.
func (d *Document) syntax(err error) error {
	p := &Problem{File: d.name}
	text := err.Error()
	if m := lineInError.FindStringSubmatchIndex(text); m != nil {
		p.Line, _ = strconv.Atoi(text[m[2]:m[3]]) // digits by the expression
		text = text[m[1]:]
	}
	p.Text = "not valid YAML: " + text + "; check the indentation, the colons and the quotes here and on the line before"
	return p
}

// Name returns the name that stands in messages.
func (d *Document) Name() string { return d.name }

// Text returns the document as it was read.
func (d *Document) Text() []byte { return d.text }

// Root returns the document's topmost value.
func (d *Document) Root() Node { return Node{doc: d, yaml: d.root} }

// Err returns the first problem met so far, nil when there was none.
func (d *Document) Err() error { return d.err }

// fail records a problem at a node, unless one is recorded already.
func (d *Document) fail(n *yaml.Node, field, format string, args ...any) {
	if d.err != nil {
		return
	}
	p := &Problem{File: d.name, Field: field, Text: fmt.Sprintf(format, args...)}
	if n != nil {
		p.Line, p.Column = n.Line, n.Column
	}
	d.err = p
}

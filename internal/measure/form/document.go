package form

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// Document is a document being read. Its first problem sticks.
type Document struct {
	name  string
	text  []byte
	most  int64 // bytes, for reading again after an edit
	lines []int // byte offset of each line's start
	root  *yaml.Node
	err   error
}

// Read reads one YAML document of at most maxBytes bytes; name stands in
// messages. What it returns is syntactically sound; the fields are checked as
// they are asked for. Errors are [*Problem], or those of r, wrapped.
func Read(name string, r io.Reader, maxBytes int64) (*Document, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return read(name, text, maxBytes)
}

func read(name string, text []byte, maxBytes int64) (*Document, error) {
	d := &Document{name: name, text: text, most: maxBytes, lines: lineStarts(text)}
	if int64(len(text)) > maxBytes {
		return nil, d.whole("is larger than %d kB, which is more than such a file may hold; is it the right file?", maxBytes/1000)
	}
	if isUTF16(text) {
		return nil, d.whole("is not UTF-8 text but UTF-16; save it as UTF-8")
	}
	if at := strayByte(text); at >= 0 {
		line, column := d.placeOf(at)
		return nil, &Problem{File: name, Line: line, Column: column, Text: strayWords(text[at:])}
	}
	root, err := parse(text)
	switch {
	case errors.Is(err, errSecond):
		return nil, &Problem{File: name, Line: d.secondDocument(), Column: 1,
			Text: "holds more than one YAML document; keep one, and drop the line with ---"}
	case err != nil:
		return nil, d.syntax(err)
	case root == nil:
		return nil, d.whole("is empty")
	}
	d.root = root
	return d, nil
}

func (d *Document) whole(format string, args ...any) *Problem {
	return &Problem{File: d.name, Text: fmt.Sprintf(format, args...)}
}

// isUTF16 reports whether a text begins with the mark of UTF-16, or with a
// plain letter in two bytes, in either order.
func isUTF16(text []byte) bool {
	if len(text) < 2 {
		return false
	}
	switch a, b := text[0], text[1]; {
	case a == 0xff && b == 0xfe, a == 0xfe && b == 0xff:
		return true
	default:
		return (a == 0) != (b == 0) && a < utf8.RuneSelf && b < utf8.RuneSelf && len(text)%2 == 0
	}
}

// strayByte returns the offset of the first byte that a hand-written text does
// not hold: no UTF-8, or a control character. It returns -1 when there is none.
// Line ends that only Unicode knows (NEL, LS, PS) count as control characters:
// editors show them as part of the line, the parser does not.
func strayByte(text []byte) int {
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRune(text[i:])
		switch {
		case r == utf8.RuneError && n == 1,
			r < ' ' && r != '\t' && r != '\n' && r != '\r',
			r >= 0x7f && r < 0xa0, r == '\u2028', r == '\u2029', r == '\ufeff' && i > 0:
			return i
		}
		i += n
	}
	return -1
}

// strayWords says what a stray byte begins, and what to do about it.
func strayWords(text []byte) string {
	switch r, n := utf8.DecodeRune(text); {
	case n == 1: // no letter at all, or of a binary file
		return fmt.Sprintf("byte 0x%02x is not UTF-8 text; is it the right file?", text[0])
	case r == '\u0085' || r == '\u2028' || r == '\u2029':
		return fmt.Sprintf("%U is a line end that only some editors show as one; put a plain one (Enter) in its place", r)
	case r == '\ufeff':
		return "the invisible mark U+FEFF stands inside the text; it may only begin a file: delete it"
	default:
		return fmt.Sprintf("the control character %U cannot stand in such a text; delete it, or is it the wrong file?", r)
	}
}

// errSecond marks a text that holds more than one YAML document.
var errSecond = errors.New("second document")

// parse returns the topmost value of the only document, nil for none. The
// parser meets hostile files: should it panic, that is an error like another.
func parse(text []byte) (root *yaml.Node, err error) {
	defer func() {
		if r := recover(); r != nil {
			root, err = nil, fmt.Errorf("yaml: %v", r)
		}
	}()
	dec := yaml.NewDecoder(bytes.NewReader(text))
	var doc yaml.Node
	if err := dec.Decode(&doc); err != nil {
		if errors.Is(err, io.EOF) {
			return nil, nil
		}
		return nil, err
	}
	switch err := dec.Decode(new(yaml.Node)); {
	case err == nil:
		return nil, errSecond
	case !errors.Is(err, io.EOF):
		return nil, err
	}
	return doc.Content[0], nil
}

// Name returns the name that stands in messages.
func (d *Document) Name() string { return d.name }

// Text returns the document as it was read.
func (d *Document) Text() []byte { return d.text }

// Afresh returns the same document with no problem met yet.
func (d *Document) Afresh() *Document {
	again := *d
	again.err = nil
	return &again
}

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

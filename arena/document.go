package arena

import (
	"errors"
	"io"
)

var errUnwritten = errors.New("arena: not written yet")

// Document is an arena file as read: its text, comments and order kept.
type Document struct {
	name string // for messages: the file's name
	text []byte
}

// Read reads a document; name is used in messages.
func Read(name string, r io.Reader) (*Document, error) { return nil, errUnwritten }

// Bytes returns the document's text.
func (d *Document) Bytes() []byte { return d.text }

// Check proves the document sound and returns the arena.
func (d *Document) Check() (Arena, error) { return Arena{}, errUnwritten }

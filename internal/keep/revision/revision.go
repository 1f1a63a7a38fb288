// Package revision is the memory of documents: every version of an arena
// file that was saved, by whom, when, and what changed.
//
// The history of a document is one line of numbered versions. Nothing is ever
// overwritten: a save names the version it was made from, and when another
// save came between, it is refused as [Stale] and can be merged:
//
//	1 -- 2 -- 3 (head)         save from 3: becomes 4
//	      \
//	       mine (from 2)       save from 2: Stale{Base: 2, Head: 3},
//	                           Merge(2, 3, mine) joins what both changed
//
// Undo, redo and restore are saves too: they put an older text on top.
// The package is pure; a [Keeper] keeps the versions (package store has two).
package revision

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"time"
	"unicode/utf8"
)

// Document is one kept document.
type Document struct {
	ID   string // short name in addresses: "harbour-hall"
	Name string // what people call it
	Head int    // number of the newest version, from 1
	Away bool   // put away: kept, but no longer listed by default
}

// Version is one saved state of a document.
type Version struct {
	Document string
	Number   int // from 1, without gaps
	Parent   int // the version it was made from, 0 for the first
	At       time.Time
	Who      string // person, or "desk" where nobody signs in
	What     string // one line: what changed
	Text     string // empty in listings
}

// Draft is a version about to be saved.
type Draft struct {
	At   time.Time
	Who  string
	What string
	Text string
}

// MaxText is the most bytes a document may have (a rink's file is some 20 kB).
const MaxText = 4 << 20

// maxLine is the most bytes in Who and What.
const maxLine = 500

// Check refuses a draft that a keeper could not keep faithfully.
func (d Draft) Check() error {
	switch {
	case d.At.IsZero():
		return errors.New("a version needs its time")
	case d.Text == "":
		return errors.New("the document is empty")
	case len(d.Text) > MaxText:
		return fmt.Errorf("the document has %d bytes; at most %d are kept", len(d.Text), MaxText)
	case len(d.Who) > maxLine || len(d.What) > maxLine:
		return fmt.Errorf("who and what of a version may have %d bytes each", maxLine)
	}
	for _, s := range []string{d.Text, d.Who, d.What} {
		if !utf8.ValidString(s) || strings.ContainsRune(s, 0) {
			return errors.New("the document is not plain UTF-8 text")
		}
	}
	return nil
}

// idForm is the form of a document's id.
var idForm = regexp.MustCompile(`^[a-z0-9]([a-z0-9-]{0,62}[a-z0-9])?$`)

// CheckID refuses an id that could not stand in an address.
func CheckID(id string) error {
	if !idForm.MatchString(id) {
		return fmt.Errorf("id %.80q: use 1 to 64 small letters, digits and inner hyphens", id)
	}
	return nil
}

// IDFrom makes an id out of a name: "Harbour Hall (east)" gives "harbour-hall-east".
// A name without letters or digits gives "arena".
func IDFrom(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	})
	id := strings.Join(words, "-")
	if len(id) > 60 {
		id = strings.Trim(id[:60], "-")
	}
	if id == "" {
		return "arena"
	}
	return id
}

// The errors of a Keeper, besides Stale.
var (
	ErrNone  = errors.New("no such document or version")
	ErrTaken = errors.New("this id is taken")
	// ErrFull says that the disk has no room: nothing was written, nothing lost.
	ErrFull = errors.New("the disk is full: nothing was saved; free some room and save again")
)

// Stale says that a save was made from an older version than the head.
type Stale struct {
	Base int
	Head Version // the newest version, text included
}

// Error names both versions and who saved the newer one.
func (s *Stale) Error() string {
	return fmt.Sprintf("made from version %d, but %s has saved version %d (%s) since; merge or redo",
		s.Base, s.Head.Who, s.Head.Number, s.Head.What)
}

// Keeper keeps documents and their versions. Any number of goroutines and
// programs may use one at the same time. Once Add or Save has returned a
// version it survives the end of the program, however sudden.
type Keeper interface {
	// Documents lists the documents by id; those put away only when asked.
	Documents(ctx context.Context, away bool) ([]Document, error)
	// Document returns one document, or ErrNone.
	Document(ctx context.Context, id string) (Document, error)
	// Add keeps a new document with its first version. ErrTaken when the id is in use.
	Add(ctx context.Context, id, name string, first Draft) (Version, error)
	// Save puts a version on top of version base and names the document anew
	// when name is not empty. *Stale when base is not the head; ErrNone.
	Save(ctx context.Context, id, name string, base int, next Draft) (Version, error)
	// Version returns one version with its text, or ErrNone. Number 0 means the head.
	Version(ctx context.Context, id string, number int) (Version, error)
	// History lists the newest versions first, without texts, at most limit.
	History(ctx context.Context, id string, limit int) ([]Version, error)
	// SetAway puts a document away or brings it back. ErrNone.
	SetAway(ctx context.Context, id string, away bool) error
}

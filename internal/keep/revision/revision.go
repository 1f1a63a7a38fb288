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
	"unicode"
	"unicode/utf8"
)

// Kind is what a kept document is.
type Kind string

// The kinds. Ids are shared by all of them: no kit is called like an arena.
const (
	Arena   Kind = "arena"
	Kit     Kind = "kit"
	RuleSet Kind = "rules"
	Games   Kind = "games"  // of a season at an arena, which it names
	Frames  Kind = "frames" // what was read of the frames of a season's game, as CSV
)

// Document is one kept document.
type Document struct {
	ID   string // short name in addresses: "harbour-hall"
	Kind Kind
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
	Who      string   // person, or "desk" where nobody signs in
	What     string   // one line: what changed
	Text     string   // empty in listings
	Renames  []Rename // of holes, against the version before
	Once     string   // the mark it was sent under; "" for none
}

// Draft is a version about to be saved; Who and What are kept as [Line] has them.
type Draft struct {
	At   time.Time
	Who  string
	What string
	Text string
	// Renames are the holes that are called otherwise than in the version it was made from.
	Renames []Rename
	// Once marks what a page may send again when no answer came, at most [MaxOnce] bytes.
	Once string
}

// MaxOnce is the most bytes of a draft's mark; own choice.
const MaxOnce = 64

// MaxText is the most bytes a document may have (a rink's file is some 20 kB).
const MaxText = 4 << 20

// maxLine is the most characters in Who and What.
const maxLine = 250

// Check refuses a draft that a keeper could not keep faithfully.
func (d Draft) Check() error {
	switch {
	case d.At.IsZero():
		return errors.New("a version needs its time")
	case d.Text == "":
		return errors.New("the document is empty")
	case len(d.Text) > MaxText:
		return fmt.Errorf("the document has %d bytes; at most %d are kept", len(d.Text), MaxText)
	case !utf8.ValidString(d.Text) || strings.ContainsRune(d.Text, 0):
		return errors.New("the document is not plain UTF-8 text")
	case len(d.Once) > MaxOnce || !utf8.ValidString(d.Once) || strings.ContainsRune(d.Once, 0):
		return fmt.Errorf("the mark of what is sent has %d bytes; at most %d of plain text are kept", len(d.Once), MaxOnce)
	}
	return nil
}

// Line makes any text one line that a list of versions can show: blanks for
// breaks and tabs, nothing that shows nothing or turns the direction of what
// follows, and an ellipsis for what is beyond 250 characters.
func Line(text string) string {
	line := strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r):
			return ' '
		case r == zeroWidthJoiner || r == zeroWidthNonJoiner: // part of words in many scripts
			return r
		case unicode.In(r, unicode.Cc, unicode.Cf, unicode.Co):
			return -1
		}
		return r
	}, strings.ToValidUTF8(text, ""))
	line = strings.Join(strings.Fields(line), " ")
	if runes := []rune(line); len(runes) > maxLine {
		line = string(runes[:maxLine-1]) + "…"
	}
	return line
}

const (
	zeroWidthNonJoiner = '\u200c'
	zeroWidthJoiner    = '\u200d'
)

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
	// ErrDown says that the database does not answer, so that nobody knows
	// whether what was under way is saved. It may answer again by itself.
	ErrDown = errors.New("the database does not answer: wait a moment, look whether your last change is there, and try again")
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
	// Documents lists the documents of a kind by id; those put away only when asked.
	Documents(ctx context.Context, kind Kind, away bool) ([]Document, error)
	// Document returns one document, or ErrNone.
	Document(ctx context.Context, id string) (Document, error)
	// Add keeps a new document with its first version. ErrTaken when the id is in use.
	Add(ctx context.Context, kind Kind, id, name string, first Draft) (Version, error)
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

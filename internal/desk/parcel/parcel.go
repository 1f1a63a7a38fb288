// Package parcel answers: what can be taken away from a version of an arena, as
// a file?
//
// A [Parcel] is a file with its name, which carries the arena's id, the
// version's number and the mark of its text, so that a drawing on a bench can be
// held against the plan:
//
//	quillhaven-v12-f942a79ec4b1-cut.zip
//
// The bytes depend on nothing but the version, the kit, the rules and what was
// asked for. Books and cut folders are worked out one at a time: each needs the
// whole plan and tens of megabytes while it is made.
package parcel

import (
	"context"
	"fmt"
	"slices"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/measure/unit"
)

// Kind is what a parcel holds.
type Kind string

// The kinds.
const (
	Document Kind = "arena.yaml"
	PlanJSON Kind = "plan.json"
	Map      Kind = "plan-map.svg"
	Strip    Kind = "boards-strip.svg"
	Outline  Kind = "hole.dxf"
	Cut      Kind = "cut.zip"
	Book     Kind = "book.pdf"
	BookPage Kind = "book.html"
	Folder   Kind = "plan.zip"
	Tables   Kind = "tables.zip"
	Archive  Kind = "versions.zip"
)

// kinds are all kinds with their media type and what they are for people.
var kinds = []struct {
	kind  Kind
	media string
	words string
}{
	{Document, "application/yaml; charset=utf-8", "the arena document, comments kept"},
	{PlanJSON, "application/json", "all results, for programs"},
	{Map, "image/svg+xml", "the plan map"},
	{Strip, "image/svg+xml", "the boards strip"},
	{Outline, "image/vnd.dxf", "one hole in its pane at full size, for a shop's machine"},
	{Cut, "application/zip", "shop drawings: PDF, DXF, templates, cut list"},
	{Book, "application/pdf", "the book to sign"},
	{BookPage, "text/html; charset=utf-8", "the book as one file for a browser"},
	{Folder, "application/zip", "the plan's folder: drawings, tables, results, guard and choice of holes"},
	{Tables, "application/zip", "every table of the plan as CSV, for a spreadsheet"},
	{Archive, "application/zip", "the archive: every version's text, with who changed what and when"},
}

// Kinds lists the kinds.
func Kinds() []Kind {
	out := make([]Kind, len(kinds))
	for i, k := range kinds {
		out[i] = k.kind
	}
	return out
}

// Words says what a kind is for.
func (k Kind) Words() string {
	for _, known := range kinds {
		if known.kind == k {
			return known.words
		}
	}
	return ""
}

// Parcel is a file to take away.
type Parcel struct {
	Name  string // of the file
	Media string // its media type
	Data  []byte
}

// Wish says what a parcel shall be like, where its kind leaves a choice.
type Wish struct {
	Hole  string // of an outline
	Paper string // of cut folder and book; "" takes a4, or letter in imperial units
	Units string // "metric" or "imperial"; "" takes the document's own
}

// Error is a wish that cannot be met.
type Error struct{ Text string }

// Error says what and the cure.
func (e *Error) Error() string { return e.Text }

// Packer packs parcels.
type Packer struct {
	shelf   *shelf.Shelf
	record  custody.Keeper // of approvals, which every drawing tells
	creator string
	room    chan struct{} // for one large parcel at a time
}

// New returns a packer; creator stands in files as the program that made them.
func New(s *shelf.Shelf, record custody.Keeper, creator string) *Packer {
	return &Packer{s, record, creator, make(chan struct{}, 1)}
}

// approval returns what became of a book's revision.
func (p *Packer) approval(ctx context.Context, b shelf.Book) (custody.Approval, error) {
	h, err := custody.ReadHistory(ctx, p.record, b.Document.ID)
	return custody.ApprovalOf(h, b.Revision), err
}

// Name returns the file name of a kind for a book.
func Name(b shelf.Book, k Kind) string {
	return stem(b) + "-" + string(k)
}

// stem names an arena's version and revision.
func stem(b shelf.Book) string {
	return fmt.Sprintf("%s-v%d-%s", b.Document.ID, b.Version.Number, b.Mark)
}

// Pack packs a kind. Errors: *Error for a wish that cannot be met, ctx's, and
// those of the packages that draw.
func (p *Packer) Pack(ctx context.Context, b shelf.Book, k Kind, w Wish) (Parcel, error) {
	at := slices.Index(Kinds(), k)
	if at < 0 {
		return Parcel{}, &Error{fmt.Sprintf("there is no file %.40q: choose one of %v", string(k), Kinds())}
	}
	sys, err := system(b, w)
	if err != nil {
		return Parcel{}, err
	}
	if k == Cut || k == Book || k == BookPage {
		select {
		case p.room <- struct{}{}:
			defer func() { <-p.room }()
		case <-ctx.Done():
			return Parcel{}, ctx.Err()
		}
	}
	data, err := p.pack(ctx, b, k, w, sys)
	if err != nil {
		return Parcel{}, fmt.Errorf("%s: %w", k, err)
	}
	name := Name(b, k)
	if k == Outline {
		name = stem(b) + "-hole-" + w.Hole + ".dxf"
	}
	return Parcel{name, kinds[at].media, data}, nil
}

func system(b shelf.Book, w Wish) (unit.System, error) {
	a, err := b.Arena.Check()
	if err != nil {
		return 0, err
	}
	if w.Units == "" {
		return a.Units, nil
	}
	sys, err := unit.ParseSystem(w.Units)
	if err != nil {
		return 0, &Error{"units: " + err.Error()}
	}
	return sys, nil
}

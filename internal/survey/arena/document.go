package arena

import (
	"io"
	"sync"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/measure/form"
)

// Limits of what an arena file may hold. A large rink surveyed in full has some
// 140 panes, 8 holes and 60 readings in 25 kB.
const (
	MaxBytes         = 1 << 20
	MaxPanes         = 2000
	MaxHoles         = 200
	MaxWindows       = 200
	MaxZones         = 200
	MaxReadings      = 5000
	MaxDispensations = 200
	MaxLenses        = 200
)

// Document is an arena file as read: its text, comments and order kept. Its
// YAML is sound; whether the arena is, Check says.
type Document struct {
	form  *form.Document
	day   string // see [Arena.Day]
	check func() (Arena, error)
}

// document makes the document of a form; it is checked when first asked, and once.
func document(f *form.Document, day string) *Document {
	return &Document{f, day, sync.OnceValues(func() (Arena, error) { return check(f, day) })}
}

// For returns the document as it is asked about on a day, YYYY-MM-DD; what is made
// of it by edits keeps the day.
func (d *Document) For(day string) *Document { return document(d.form, day) }

// Read reads a document; name stands for the file in messages. What is no
// readable YAML of at most MaxBytes gives a [*form.Problem] with the place.
func Read(name string, r io.Reader) (*Document, error) {
	f, err := form.Read(name, r, MaxBytes)
	if err != nil {
		return nil, err
	}
	return document(f, ""), nil
}

// Demo reads the demo arena that the program carries.
func Demo() (*Document, error) {
	f, err := examples.Files.Open(examples.Demo)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return Read(examples.Demo, f)
}

// Name returns the file's name as it stands in messages.
func (d *Document) Name() string { return d.form.Name() }

// Bytes returns the document's text. Treat it as read only.
func (d *Document) Bytes() []byte { return d.form.Text() }

package custody

import (
	"encoding/json"
	"errors"
	"fmt"

	"example.org/rinkpane/internal/measure/form"
)

// Fact is what an event says. The kinds are the rows of kinds in decode.go; no other
// package adds one.
type Fact interface {
	kind() string
	check() error
}

// Issued says that a cover was labelled for a hole and lies in store.
type Issued struct {
	Cover string `json:"cover"`
	Hole  string `json:"hole"`
}

// Moved says that a cover is in another state now.
type Moved struct {
	Cover string `json:"cover"`
	State State  `json:"state"`
	Words string `json:"words,omitempty"`
}

// Retired says that a cover is used no more.
type Retired struct {
	Cover string `json:"cover"`
}

// Began says that a phase of the day began.
type Began struct {
	Phase Phase `json:"phase"`
}

// Seated says who works a hole from now on; nobody when By is empty.
type Seated struct {
	Hole string `json:"hole"`
	By   string `json:"by"`
}

// Stocked says how many spare panes lie ready for a hole.
type Stocked struct {
	Hole  string `json:"hole"`
	Panes int    `json:"panes"`
}

// Replaced says that the pane of a hole was changed for another.
type Replaced struct {
	Hole string `json:"hole"`
	Pane string `json:"pane"`
}

// Incident says that something broke or came through, or nearly.
type Incident struct {
	What   Mishap   `json:"what"`
	Hole   string   `json:"hole"`
	Pane   string   `json:"pane,omitempty"`
	Minute int      `json:"minute,omitempty"` // of the period or practice, from 1; 0 not told
	Words  string   `json:"words,omitempty"`
	Photos []string `json:"photos,omitempty"` // keys of kept photos
	Spare  bool     `json:"spare,omitempty"`  // a spare pane was taken for it
}

// Withdrawn says that the event it corrects never happened.
type Withdrawn struct{}

// LinkMade says that a day link was given away.
type LinkMade struct{ Link }

// LinkRevoked says that a day link opens nothing any more.
type LinkRevoked struct {
	Link string `json:"link"` // its id
}

func (Issued) kind() string      { return "issued" }
func (Moved) kind() string       { return "cover" }
func (Retired) kind() string     { return "retired" }
func (Began) kind() string       { return "phase" }
func (Seated) kind() string      { return "seat" }
func (Stocked) kind() string     { return "spares" }
func (Replaced) kind() string    { return "pane" }
func (Incident) kind() string    { return "incident" }
func (Withdrawn) kind() string   { return "withdrawn" }
func (LinkMade) kind() string    { return "link" }
func (LinkRevoked) kind() string { return "link-revoked" }

func (f Issued) check() error  { return errors.Join(name("cover", f.Cover), name("hole", f.Hole)) }
func (f Retired) check() error { return name("cover", f.Cover) }
func (f Moved) check() error {
	return errors.Join(name("cover", f.Cover), oneOf("state", f.State, States()), text("words", f.Words, MaxWords))
}
func (f Began) check() error  { return oneOf("phase", f.Phase, Phases()) }
func (f Seated) check() error { return errors.Join(name("hole", f.Hole), text("by", f.By, maxName)) }
func (f Stocked) check() error {
	if f.Panes < 0 || f.Panes > maxSpares {
		return fmt.Errorf("panes %d: give 0 to %d", f.Panes, maxSpares)
	}
	return name("hole", f.Hole)
}
func (f Replaced) check() error { return errors.Join(name("hole", f.Hole), name("pane", f.Pane)) }
func (f Incident) check() error {
	if f.Minute < 0 || f.Minute > maxMinute {
		return fmt.Errorf("minute %d: give 1 to %d", f.Minute, maxMinute)
	}
	err := errors.Join(oneOf("what", f.What, Mishaps()), name("hole", f.Hole), text("pane", f.Pane, maxName), text("words", f.Words, MaxWords))
	return errors.Join(err, checkPhotos(f.Photos))
}
func (Withdrawn) check() error     { return nil }
func (f LinkMade) check() error    { return f.Link.check() }
func (f LinkRevoked) check() error { return name("link", f.Link) }

const (
	maxSpares = 10_000
	maxMinute = 600
	maxPhotos = 20
)

// photoKey is the form of a kept photo's key: its SHA-256.
const photoKey = 64

func checkPhotos(keys []string) error {
	if len(keys) > maxPhotos {
		return fmt.Errorf("%d photos; at most %d go with one event", len(keys), maxPhotos)
	}
	for _, k := range keys {
		if len(k) != photoKey {
			return fmt.Errorf("photo %.20q is no key of a kept photo", k)
		}
	}
	return nil
}

func oneOf[T ~string](what string, got T, all []T) error {
	names := make([]string, len(all))
	for i, s := range all {
		if s == got {
			return nil
		}
		names[i] = string(s)
	}
	return fmt.Errorf("%s %.40q: write %s", what, string(got), form.Choices(names))
}

// Encode returns a fact's kind and its JSON, as kept and as devices send it.
func Encode(f Fact) (kind, body string) { return f.kind(), encoded(f) }

func encoded(f Fact) string {
	data, err := json.Marshal(f)
	if err != nil {
		return "" // facts are plain structs: they always encode
	}
	return string(data)
}

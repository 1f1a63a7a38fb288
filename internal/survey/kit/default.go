package kit

import (
	"bytes"
	_ "embed" // the default kit is part of the program
)

//go:embed default.yaml
var defaultYAML []byte

// DefaultID is the id of the kit that the program carries.
const DefaultID = "usual"

// Default returns the generic kit that the program carries: bodies and lenses
// by class. Its error is nil unless the program was built with a broken kit.
func Default() (Kit, error) { return Read("the built-in kit", bytes.NewReader(defaultYAML)) }

// DefaultYAML returns the text of the default kit, for a user to edit.
func DefaultYAML() []byte { return bytes.Clone(defaultYAML) }

// Body returns the body with this id.
func (k Kit) Body(id string) (Body, bool) {
	for _, b := range k.Bodies {
		if b.ID == id {
			return b, true
		}
	}
	return Body{}, false
}

// Lens returns the lens with this id.
func (k Kit) Lens(id string) (Lens, bool) {
	for _, l := range k.Lenses {
		if l.ID == id {
			return l, true
		}
	}
	return Lens{}, false
}

package edit

import (
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/survey/arena"
)

// Two who edit one document at once share it by its parts, as
// [arena.Document.Differ] names them: each hole is one, and so is each other field
// with all that is in it. Edits of parts that nobody else has changed can be made
// on top of what others saved.

// touches returns the parts that an edit changes or copies; all is true for a
// text that replaces the whole document.
func (e Edit) touches() (parts []string, all bool) {
	add := func(hole string) {
		if hole != "" {
			parts = append(parts, "holes["+hole+"]")
		}
	}
	switch e.Do {
	case Text:
		return nil, true
	case Set, Append, Remove:
		head, rest, _ := strings.Cut(e.Path, "[")
		if id, _, ok := strings.Cut(rest, "]"); ok && head == "holes" && !strings.HasPrefix(id, "#") {
			add(id)
			break
		}
		head, _, _ = strings.Cut(head, ".")
		parts = append(parts, head)
	default:
		add(e.Hole)
		add(e.As)
	}
	return parts, false
}

// Onto returns edits of a document as they can be made in a newer one, and the
// parts that they and others both changed, in order; while there are such, the edits may not be made.
// theirs are the parts that others changed. A new hole whose name has been taken
// meanwhile takes the next free one.
func Onto(edits []Edit, newer *arena.Document, theirs []string) (made []Edit, both []string) {
	made = slices.Clone(edits)
	for i, e := range made {
		if (e.Do == Add || e.Do == Copy) && e.As != "" {
			made[i].As = freeID(newer, e.As)
		}
		parts, all := made[i].touches()
		for _, p := range theirs {
			if (all || slices.Contains(parts, p)) && !slices.Contains(both, p) {
				both = append(both, p)
			}
		}
	}
	return made, both
}

// freeID returns an id that no hole of a document has: the one asked for, else one
// with the next number that is free.
func freeID(doc *arena.Document, id string) string {
	stem := strings.TrimRight(id, "0123456789")
	for n := 1; doc.Has("holes[" + id + "]"); n++ {
		id = fmt.Sprintf("%s%d", stem, n)
	}
	return id
}

// Package edit answers: what does an arena document say after a change that
// somebody made on a page or over the API?
//
// An [Edit] is one small change as a value: move this hole, set that field.
// [Editor.Apply] writes a row of them into the document's text, one after the
// other, and touches nothing else: comments, order and every other byte stay.
//
//	text --Edit--> text --Edit--> text --Check--> sound, or the line that is not
//
// Lengths that come as numbers (a drag on the map) are rounded to what people
// measure, 1/16 in or 1 mm, and written in the document's units; values that
// come as text are written as they came. [arena.Document.Check] says whether the
// outcome is a sound arena: Apply only proves that it can be read.
package edit

import (
	"errors"
	"fmt"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
)

// Verb is what an edit does.
type Verb string

// The verbs. Those on holes name the hole; the others name a path, as messages
// do: "boards.height", "panes[P7]", "light.readings[#3].lux".
const (
	Move   Verb = "move"   // a hole along the boards, up or down
	Add    Verb = "add"    // a new hole
	Copy   Verb = "copy"   // a hole like another
	Delete Verb = "delete" // a hole for good
	Turn   Verb = "turn"   // a hole off, or on again
	Rename Verb = "rename" // a hole, wherever the document mentions it
	Set    Verb = "set"    // a field or list item anew; adds a missing field
	Append Verb = "append" // one more item to a list
	Remove Verb = "remove" // a field or list item
	Apart  Verb = "apart"  // one of a row of equal panes, which gets a line of its own
	Text   Verb = "text"   // the whole document anew
)

// Verbs lists the verbs.
func Verbs() []Verb {
	return []Verb{Move, Add, Copy, Delete, Turn, Rename, Set, Append, Remove, Apart, Text}
}

// Edit is one change. Which fields count depends on the verb.
type Edit struct {
	Do    Verb        `json:"do" enum:"move,add,copy,delete,turn,rename,set,append,remove,apart,text" doc:"What to do."`
	Hole  string      `json:"hole,omitempty" doc:"move, copy, delete, turn, rename: the hole's id."`
	As    string      `json:"as,omitempty" doc:"add, copy: the new hole's id; the next free one without it. rename: the id that the hole gets, wherever the document mentions it."`
	To    *Spot       `json:"to,omitempty" doc:"move, add, copy: where to."`
	State glass.State `json:"state,omitempty" enum:"planned,cut,off" doc:"turn: the hole's state."`
	Path  string      `json:"path,omitempty" doc:"set, append, remove, apart: a field or list item, such as boards.height, panes[P7].width, light.readings[#3]."`
	Value *Value      `json:"value,omitempty" doc:"set, append: a text as a person writes it (5.5 in x 4.5 in), a list, or an object of fields. add: fields of the new hole besides its place."`
	Text  string      `json:"text,omitempty" doc:"text: the whole document."`
	// Like, on add, is the very hole to add, in place of the editor's standard one.
	Like *glass.Hole `json:"-"`
}

// Spot is where a hole is to be: at a station along the boards, or at an offset
// from a landmark; without either the hole stays where it is along the boards.
type Spot struct {
	Station  *float64 `json:"station_m,omitempty" doc:"Along the boards, 0 at the bench-side end of the red line."`
	Corner   string   `json:"corner,omitempty" enum:"A-bench,A-box,B-bench,B-box"`
	Landmark string   `json:"landmark,omitempty" enum:"goal-line,circle-bottom,circle-top,blue-line"`
	Offset   float64  `json:"offset_m,omitempty" doc:"From the landmark along the boards; positive toward centre ice."`
	Height   *float64 `json:"height_m,omitempty" doc:"Of the hole's centre above the ice."`
}

// Most is how many edits may come in one row.
const Most = 500

// How many bytes of text a row may have read anew, each edit the whole document: five
// megabytes take a core a second (BenchmarkRow). Own choice: who saves may wait four
// seconds, who tries one.
const (
	mostWork      = 16 << 20
	mostTrialWork = 4 << 20
)

// Editor applies edits.
type Editor struct {
	// Standard returns the hole that the rules in force would like best, for
	// verb add; nil, or a hole without size, makes add ask for a size.
	Standard func(arena.Arena) glass.Hole
	Trial    bool // nothing will be saved: a row is to take a second of a core at most
}

// errNone is returned for an empty row.
var errNone = errors.New("no edits given; name at least one")

// Apply returns the document after the edits, and one line that says what they
// did. An error names the edit by its number and leaves nothing half done.
func (e Editor) Apply(doc *arena.Document, edits []Edit) (*arena.Document, string, error) {
	if len(edits) == 0 {
		return nil, "", errNone
	}
	if len(edits) > Most {
		return nil, "", fmt.Errorf("%d edits at once; at most %d are taken", len(edits), Most)
	}
	var said []string
	work, most := 0, mostWork
	if e.Trial {
		most = mostTrialWork
	}
	for i, one := range edits {
		size := len(doc.Bytes())
		if work += size; len(edits) > 1 && work+size*(len(edits)-i-1) > most {
			return nil, "", &Fault{Number: i + 1, Edit: one, Err: fmt.Errorf("%d edits at once are too many for a document of %d bytes: send at most %d", len(edits), size, max(1, most/size))}
		}
		next, what, err := e.apply(doc, one)
		if err != nil {
			return nil, "", &Fault{Number: i + 1, Edit: one, Err: err}
		}
		doc = next
		said = append(said, what)
	}
	return doc, sentence(said), nil
}

// Fault is an edit that could not be made.
type Fault struct {
	Number int // in the row, from 1
	Edit   Edit
	Err    error
}

// Error says which edit and why.
func (f *Fault) Error() string { return fmt.Sprintf("edit %d (%.20s): %v", f.Number, f.Edit.Do, f.Err) }

// Unwrap returns the cause.
func (f *Fault) Unwrap() error { return f.Err }

func (e Editor) apply(doc *arena.Document, one Edit) (*arena.Document, string, error) {
	if from, to, is := one.renamed(); is {
		return rename(doc, from, to)
	}
	switch one.Do {
	case Move:
		return move(doc, one)
	case Add:
		return e.add(doc, one)
	case Copy:
		return duplicate(doc, one)
	case Delete:
		return remove(doc, one)
	case Turn:
		return turn(doc, one)
	case Set, Append, Remove:
		return field(doc, one)
	case Apart:
		id, _ := paneOf(one.Path)
		next, err := doc.Apart(id)
		return next, "give " + id + " a line of its own", err
	case Text:
		return rewrite(doc, one)
	}
	return nil, "", fmt.Errorf("no such edit %.40q: choose one of %v", string(one.Do), Verbs())
}

package edit

import (
	"errors"
	"fmt"
	"strings"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
)

// renamed returns the hole that an edit gives another id, and that id: as the
// verb rename, or as its field set anew.
func (e Edit) renamed() (from, to string, is bool) {
	if e.Do == Rename {
		return e.Hole, e.As, true
	}
	in, isID := strings.CutSuffix(e.Path, "].id")
	id, isHole := strings.CutPrefix(in, "holes[")
	if e.Do != Set || !isID || !isHole || strings.HasPrefix(id, "#") || e.Value == nil || e.Value.kind != single {
		return "", "", false
	}
	return id, e.Value.text, true
}

// rename gives a hole another id, wherever the document mentions it.
func rename(doc *arena.Document, from, to string) (*arena.Document, string, error) {
	if !doc.Has("holes[" + from + "]") {
		return nil, "", fmt.Errorf("the arena has no hole %s; it may have been renamed or deleted", form.Quote(from))
	}
	if to == "" {
		return nil, "", errors.New("as: write the new id")
	}
	if to != from && doc.Has("holes["+to+"]") {
		return nil, "", fmt.Errorf("as: hole %s is there already; rename that one first, or choose another id", form.Quote(to))
	}
	doc, err := doc.Set("holes["+from+"].id", form.Text(to))
	if err != nil {
		return nil, "", err
	}
	for _, of := range doc.Items("dispensations") {
		for _, at := range doc.Items(of + ".holes") {
			if doc.Value(at) != from {
				continue
			}
			if doc, err = doc.Set(at, form.Text(to)); err != nil {
				return nil, "", err
			}
		}
	}
	return doc, "rename " + from + " to " + to, nil
}

// A Renaming is a hole that is called otherwise after a row of edits.
type Renaming struct{ From, To string }

// Renamings returns what holes are called after a row of edits, of those that
// were there before it: two that change names are two renamings.
func Renamings(edits []Edit) []Renaming {
	var out []Renaming
	fresh := map[string]bool{} // ids that the row itself brought
	for _, e := range edits {
		if e.Do == Add || e.Do == Copy {
			fresh[e.As] = true
		}
		from, to, is := e.renamed()
		if !is {
			continue
		}
		if fresh[from] {
			delete(fresh, from)
			fresh[to] = true
			continue
		}
		known := false
		for i := range out {
			if !known && out[i].To == from {
				out[i].To, known = to, true
			}
		}
		if !known {
			out = append(out, Renaming{from, to})
		}
	}
	kept := out[:0]
	for _, r := range out {
		if r.From != r.To {
			kept = append(kept, r)
		}
	}
	return kept
}

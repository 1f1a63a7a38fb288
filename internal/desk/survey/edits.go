package survey

import (
	"slices"
	"strings"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// Edits returns what has to be done to a document so that it holds the answers,
// nothing where it does already. skip names questions whose answers are left out.
func (p Part) Edits(doc *arena.Document, item string, a Answers, skip map[string]string) []edit.Edit {
	if p.IsList() && item == "" {
		return p.addition(a, skip)
	}
	if !p.IsList() && p.Path != "" && !doc.IsGroup(p.Path) {
		return p.beginning(a, skip)
	}
	was := p.Read(doc, item)
	var out, last []edit.Edit
	for _, q := range p.Questions {
		if _, left := skip[q.Name]; left || q.same(was, a) {
			continue
		}
		did := q.edits(doc, p.field(item, q.Name), a)
		if hole := p.hole(item); hole != "" && q.Name == "id" { // its mentions follow
			did = []edit.Edit{{Do: edit.Rename, Hole: hole, As: cleaned(a.One("id"))}}
		}
		if q.Name == "id" { // paths name items by their ids: the new one comes last
			last = did
			continue
		}
		out = append(out, did...)
	}
	return append(out, last...)
}

// same reports whether a question's answers did not change.
func (q Question) same(was, is Answers) bool {
	names := []string{q.Name}
	switch q.Kind {
	case Where:
		names = append(names, q.Name+fromInput)
		if was.One(q.Name) == "" && is.One(q.Name) == "" && is.One(q.Name+fromInput) == alongBoards {
			return was.One(q.Name+fromInput) == alongBoards
		}
	case Cover:
		names = append(names, q.Name+materialInput, q.Name+tetherInput)
	case Ticks:
		return slices.Equal(was[q.Name], is[q.Name])
	}
	for _, n := range names {
		if cleaned(was.One(n)) != cleaned(is.One(n)) {
			return false
		}
	}
	return true
}

// cleaned returns an answer as it goes into the document.
func cleaned(text string) string {
	return strings.Join(strings.Fields(text), " ")
}

// edits returns what writes one changed answer.
func (q Question) edits(doc *arena.Document, path string, a Answers) []edit.Edit {
	var out []edit.Edit
	own := stationOf(path)
	if q.Kind == Where && own != "" && doc.Has(own) {
		if v := q.value(a); v != nil && a.One(q.Name+fromInput) == alongBoards {
			return []edit.Edit{{Do: edit.Set, Path: own, Value: v}}
		}
		out = append(out, edit.Edit{Do: edit.Remove, Path: own})
	}
	switch v := q.value(a); {
	case v != nil:
		out = append(out, edit.Edit{Do: edit.Set, Path: path, Value: v})
	case doc.Has(path):
		out = append(out, edit.Edit{Do: edit.Remove, Path: path})
	}
	return out
}

// stationOf returns the path of the field station that may stand instead of the
// field place; "" for other fields.
func stationOf(path string) string {
	if in, is := strings.CutSuffix(path, ".place"); is {
		return in + ".station"
	}
	return ""
}

// value returns the answer as the document's field, nil for none.
func (q Question) value(a Answers) *edit.Value {
	text := cleaned(a.One(q.Name))
	switch {
	case q.Kind == Where && a.One(q.Name+fromInput) != "" && a.One(q.Name+fromInput) != alongBoards:
		corner, landmark, _ := strings.Cut(a.One(q.Name+fromInput), " ")
		fields := []edit.Named{{Name: "corner", Value: edit.One(corner)}, {Name: "landmark", Value: edit.One(landmark)}}
		if text != "" {
			fields = append(fields, edit.Named{Name: "offset", Value: edit.One(text)})
		}
		return edit.Group(fields...)
	case q.Kind == Cover && text == "yes":
		return q.cover(a)
	case q.Kind == Ticks && len(a[q.Name]) > 0:
		return edit.List(a[q.Name]...)
	case text == "" || q.Kind == Ticks:
		return nil
	}
	return edit.One(text)
}

func (q Question) cover(a Answers) *edit.Value {
	var fields []edit.Named
	for _, f := range []struct{ name, input string }{{"material", materialInput}, {"tether", tetherInput}} {
		if v := cleaned(a.One(q.Name + f.input)); v != "" {
			fields = append(fields, edit.Named{Name: f.name, Value: edit.One(v)})
		}
	}
	if len(fields) == 0 {
		return edit.One("yes")
	}
	return edit.Group(fields...)
}

// whole returns all answers as one value of fields.
func (p Part) whole(a Answers, skip map[string]string) *edit.Value {
	var fields []edit.Named
	for _, q := range p.Questions {
		if _, left := skip[q.Name]; left {
			continue
		}
		if v := q.value(a); v != nil {
			fields = append(fields, edit.Named{Name: q.Name, Value: v})
		}
	}
	return edit.Group(fields...)
}

// addition adds an item to a list.
func (p Part) addition(a Answers, skip map[string]string) []edit.Edit {
	return []edit.Edit{{Do: edit.Append, Path: p.Path, Value: p.whole(a, skip)}}
}

// beginning writes a group that the document lacks.
func (p Part) beginning(a Answers, skip map[string]string) []edit.Edit {
	return []edit.Edit{{Do: edit.Set, Path: p.Path, Value: p.whole(a, skip)}}
}

// hole returns the id of the hole at a path, "" for another item and for a hole without one.
func (p Part) hole(item string) string {
	id, is := strings.CutPrefix(item, "holes[")
	if !is || strings.HasPrefix(id, "#") {
		return ""
	}
	return strings.TrimSuffix(id, "]")
}

// Remove returns what takes an item out of the document.
func (p Part) Remove(item string) []edit.Edit {
	if hole := p.hole(item); hole != "" {
		return []edit.Edit{{Do: edit.Delete, Hole: hole}}
	}
	return []edit.Edit{{Do: edit.Remove, Path: item}}
}

func joined(list []string) string { return strings.Join(list, ", ") }

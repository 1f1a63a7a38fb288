package survey

import (
	"slices"
	"strings"

	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// within returns the panes that a line of the schedule stands for; none of another list.
func (p Part) within(doc *arena.Document, item string) []string {
	if p.Path != "panes" {
		return nil
	}
	r, _ := doc.Row(doc.Value(item + ".id"))
	return r.IDs
}

// alone is one pane that is asked about as if it had a line of its own.
type alone struct {
	id   string
	doc  *arena.Document // in which it has one
	make []edit.Edit     // what gives it one
}

// aloneOf opens a pane that a row holds: one that has no line, or the first where it
// is asked for by itself.
func (p Part) aloneOf(doc *arena.Document, item string, first bool) (alone, bool) {
	id := strings.TrimSuffix(strings.TrimPrefix(item, "panes["), "]")
	if r, held := doc.Row(id); p.Path != "panes" || !held || len(r.IDs) == 1 || r.Path == item && !first {
		return alone{}, false
	}
	apart, err := doc.Apart(id)
	return alone{id, apart, []edit.Edit{{Do: edit.Apart, Path: item}}}, err == nil
}

// one returns the part without the question that only a row answers.
func (p Part) one() Part {
	p.Questions = slices.DeleteFunc(slices.Clone(p.Questions), func(q Question) bool { return q.Name == "count" })
	return p
}

// rowLink leads to one pane of a row.
type rowLink struct{ ID, URL string }

// links leads to the panes of a row, each to be changed by itself.
func (p Part) links(doc *arena.Document, item string, to func(item, first string) string) []rowLink {
	ids := p.within(doc, item)
	if len(ids) < 2 {
		return nil
	}
	var out []rowLink
	for k, id := range ids {
		first := ""
		if k == 0 {
			first = "yes"
		}
		out = append(out, rowLink{id, to("panes["+id+"]", first)})
	}
	return out
}

package survey

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// Apply makes edits in a document and checks the outcome; it returns what they
// did in a line.
type Apply func([]edit.Edit) (*arena.Document, string, error)

// Filled is what became of a form.
type Filled struct {
	Edits []edit.Edit       // none when nothing changed
	Wrong map[string]string // messages by question
	Other string            // a message that belongs to no question; ""
}

// OK reports whether the answers make a sound arena.
func (f Filled) OK() bool { return len(f.Wrong) == 0 && f.Other == "" }

// Fill tries answers on a document: the item at a path for a list, "" being a
// new one. Messages are those of the document's check.
func (p Part) Fill(doc *arena.Document, item string, a Answers, apply Apply) Filled {
	out := Filled{Wrong: map[string]string{}}
	out.Edits = p.Edits(doc, item, a, nil)
	trial := out.Edits
	for range len(p.Questions) + 1 {
		if len(trial) == 0 {
			return out
		}
		_, _, err := apply(trial)
		if err == nil {
			return out
		}
		name, message := p.blame(doc, item, a, trial, err)
		if name == "" {
			out.Other = message
			return out
		}
		if _, told := out.Wrong[name]; told {
			return out
		}
		out.Wrong[name] = message
		trial = p.Edits(doc, item, a, out.Wrong)
	}
	return out
}

// blame finds the question that a problem is about, "" for none, and what to say.
func (p Part) blame(doc *arena.Document, item string, a Answers, made []edit.Edit, err error) (string, string) {
	var at *form.Problem
	var fault *edit.Fault
	switch {
	case errors.As(err, &at):
		if name := p.asked(doc, at.Field, item, a); name != "" {
			return name, at.Text
		}
		if at.Field != "" {
			return "", at.Field + ": " + at.Text
		}
		return "", at.Text
	case errors.As(err, &fault) && fault.Edit.Do == edit.Rename:
		return "id", fault.Err.Error()
	case errors.As(err, &fault) && fault.Number <= len(made):
		return p.asked(doc, made[fault.Number-1].Path, item, a), fault.Err.Error()
	}
	return "", err.Error()
}

// asked returns the question about a field of the document, "" for none.
func (p Part) asked(doc *arena.Document, field, item string, a Answers) string {
	rest := field
	if p.IsList() {
		var is bool
		if rest, is = p.follows(doc, field, item, a); !is {
			return ""
		}
	} else if p.Path != "" {
		var is bool
		if rest, is = strings.CutPrefix(field, p.Path); !is {
			return ""
		}
	}
	rest = strings.TrimPrefix(rest, ".")
	if rest == "station" {
		rest = "place"
	}
	found := ""
	for _, q := range p.Questions {
		if len(q.Name) > len(found) && (rest == q.Name || strings.HasPrefix(rest, q.Name+".") || strings.HasPrefix(rest, q.Name+"[")) {
			found = q.Name
		}
	}
	return found
}

// follows returns what stands behind the item in a field's path. An item may be named by
// its new id, or by its number where its id is no good.
func (p Part) follows(doc *arena.Document, field, item string, a Answers) (string, bool) {
	if rest, is := strings.CutPrefix(field, item); is && item != "" {
		return rest, true
	}
	rest, is := strings.CutPrefix(field, p.Path+"[")
	if !is {
		return "", false
	}
	items := doc.Items(p.Path)
	number := slices.Index(items, item) + 1
	if item == "" {
		number = len(items) + 1
	}
	name, rest, is := strings.Cut(rest, "]")
	return rest, is && (name == a.One("id") || name == fmt.Sprintf("#%d", number))
}

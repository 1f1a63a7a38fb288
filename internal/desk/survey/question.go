// Package survey is where an arena's document is asked about: each part as a form,
// or as a list of items. What does a page ask, and which edits do the answers make?
//
//	document --Read--> answers --a person--> answers --Edits--> edit.Edit ...
//	                                            ^                     |
//	                     a message beside the   '---- Blame ---- what the check says
//	                     field that caused it
//
// The model: a [Part] is a piece of the document (the boards, one pane, one
// light reading) and a row of questions, each about one field. Answers are the
// texts that stand in the document, so that nothing is rounded or rephrased by
// showing it: what a person leaves alone makes no edit. An empty answer takes
// the field out: not measured.
//
// Assumptions: an answer is judged by nobody but the document's own check, so a
// page asks for the same as a file. The check tells one problem at a time;
// [Part.Fill] asks on with the field at fault left as it was, so that a person
// reads all of them at once.
package survey

import "example.org/rinkpane/internal/survey/arena"

// Kind is how a question is asked.
type Kind string

// The kinds of question.
const (
	Line   Kind = "line"   // a text of one line
	Choice Kind = "choice" // one of some words
	Where  Kind = "where"  // a place on the boards: a distance and what it is measured from
	Cover  Kind = "cover"  // a hole's cover: whether, of what, on a tether
	Ticks  Kind = "ticks"  // any of some words
)

// Question is one thing that a page asks.
type Question struct {
	Name    string // of the field within its part: "height"
	Label   string
	Hint    string // an example or the meaning; ""
	Kind    Kind
	Options []Option // of Choice and Ticks
	Needed  bool
}

// Option is one of several answers.
type Option struct{ Value, Label string }

// Part is a part of the document that a page edits.
type Part struct {
	Name      string // in addresses: "panes"
	Title     string
	Lead      string // what it is good for, a sentence
	Path      string // in the document; of a list for lists; "" for the topmost fields
	Item      string // what an item of the list is called: "pane"; "" when it is no list
	Columns   []string
	Questions []Question
}

// IsList reports whether the part is a list of items, each edited by itself.
func (p Part) IsList() bool { return p.Item != "" }

// Answers are what stands in the fields of a form, by the inputs' names.
type Answers map[string][]string

// One returns the answer of an input with one value.
func (a Answers) One(name string) string {
	if v := a[name]; len(v) > 0 {
		return v[0]
	}
	return ""
}

// Inputs of questions that have more than one.
const (
	fromInput     = ".from"     // what a place is measured from
	materialInput = ".material" // a cover's
	tetherInput   = ".tether"
)

// alongBoards is the answer of a place that is a plain station.
const alongBoards = "station"

// field returns the path of a field of a part: of the item at a path where the
// part is a list.
func (p Part) field(item, name string) string {
	switch {
	case p.IsList():
		return item + "." + name
	case p.Path != "":
		return p.Path + "." + name
	}
	return name
}

// Read returns the answers that the document gives: of the item at a path for
// a list, "" being a new one.
func (p Part) Read(doc *arena.Document, item string) Answers {
	out := Answers{}
	if p.IsList() && item == "" {
		return out
	}
	for _, q := range p.Questions {
		q.read(doc, p.field(item, q.Name), out)
	}
	return out
}

func (q Question) read(doc *arena.Document, path string, out Answers) {
	switch q.Kind {
	case Where:
		q.readPlace(doc, path, out)
	case Cover:
		if doc.IsGroup(path) {
			out[q.Name] = []string{"yes"}
			out[q.Name+materialInput] = []string{doc.Value(path + ".material")}
			out[q.Name+tetherInput] = []string{doc.Value(path + ".tether")}
			return
		}
		out[q.Name] = []string{doc.Value(path)}
	case Ticks:
		for _, at := range doc.Items(path) {
			out[q.Name] = append(out[q.Name], doc.Value(at))
		}
	default:
		out[q.Name] = []string{doc.Value(path)}
	}
}

// readPlace reads a place as {corner, landmark, offset}, or as a station, which a
// hole may have in a field of its own.
func (q Question) readPlace(doc *arena.Document, path string, out Answers) {
	if doc.IsGroup(path) {
		out[q.Name] = []string{doc.Value(path + ".offset")}
		out[q.Name+fromInput] = []string{doc.Value(path+".corner") + " " + doc.Value(path+".landmark")}
		return
	}
	text := doc.Value(path)
	if own := stationOf(path); text == "" && own != "" {
		text = doc.Value(own)
	}
	out[q.Name] = []string{text}
	out[q.Name+fromInput] = []string{alongBoards}
}

// Items returns a list's items as rows of the part's columns.
func (p Part) Items(doc *arena.Document) []Row {
	var out []Row
	for _, at := range doc.Items(p.Path) {
		row := Row{Path: at}
		answers := p.Read(doc, at)
		for _, name := range p.Columns {
			row.Cells = append(row.Cells, p.cell(name, answers))
		}
		if ids := p.within(doc, at); len(ids) > 1 {
			row.Cells[0] = ids[0] + " to " + ids[len(ids)-1]
		}
		out = append(out, row)
	}
	return out
}

// Row is one item of a list.
type Row struct {
	Path  string
	Cells []string
}

// cell prints an answer in a table.
func (p Part) cell(name string, a Answers) string {
	q, _ := p.Question(name)
	text := a.One(name)
	switch from := a.One(name + fromInput); {
	case q.Kind == Where && from != "" && from != alongBoards && text != "":
		return from + " " + text
	case q.Kind == Where && from != alongBoards:
		return from
	case q.Kind == Ticks && len(a[name]) == 0:
		return "all"
	case q.Kind == Ticks:
		return joined(a[name])
	}
	return text
}

// Question returns the question about a field.
func (p Part) Question(name string) (Question, bool) {
	for _, q := range p.Questions {
		if q.Name == name {
			return q, true
		}
	}
	return Question{}, false
}

package desk

import (
	"net/http"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/desk/blank"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// surveyPage is a part of an arena's document as a form, or as a list of items.
type surveyPage struct {
	frame
	Way     string // which of the arena's pages this is
	Address address
	Name    string
	Base    int
	Parts   []option
	Part    blank.Part
	Rows    []itemRow
	Item    string // path of the item that is edited; "" for a new one, or none
	New     bool
	Fields  []field
	Other   string // what is wrong that belongs to no field
	Wrongs  string // how many fields are wrong, in words; "" for none
	Action  string
	Edits   bool
}

// itemRow is an item of a list, with the way to its form.
type itemRow struct {
	blank.Row
	URL    string
	Chosen bool
}

// part returns the address of a part, or of one of its items.
func (a address) part(name, item string) string {
	if item == "" {
		return a.beside("/survey/" + name)
	}
	return a.beside("/survey/"+name, "item", item)
}

// surveyPage shows a part; ?item= opens the form of an item, ?item=new an empty one.
func (d *Desk) surveyPage(w http.ResponseWriter, r *http.Request) {
	b, page, ok := d.surveyOf(w, r)
	if !ok {
		return
	}
	item := r.URL.Query().Get("item")
	switch {
	case item == "new" && page.Part.IsList():
		page.New = true
	case item != "" && (!page.Part.IsList() || !slices.Contains(b.Arena.Items(page.Part.Path), item)):
		d.fail(w, r, http.StatusNotFound, "The arena has no such item.", "It may have been renamed or deleted: go back to the list.")
		return
	default:
		page.Item = item
	}
	d.fillSurvey(b, page, page.Part.Read(b.Arena, page.Item), nil)
	d.show(w, r, http.StatusOK, "survey.tmpl", page)
}

// surveyOf opens the part that an address names.
func (d *Desk) surveyOf(w http.ResponseWriter, r *http.Request) (shelf.Book, *surveyPage, bool) {
	at, err := readAddress(r.PathValue("slug"), r.URL.Query())
	if err != nil {
		d.fail(w, r, http.StatusBadRequest, "This address leads nowhere.", sentenceOf(err))
		return shelf.Book{}, nil, false
	}
	version := 0
	if r.Method == http.MethodPost {
		if version, err = strconv.Atoi(r.PostFormValue("base")); err != nil || version < 1 {
			d.fail(w, r, http.StatusBadRequest, "This form is incomplete.", "Open the page again and try once more.")
			return shelf.Book{}, nil, false
		}
	}
	b, ok := d.book(w, r, at.slug, version)
	if !ok {
		return shelf.Book{}, nil, false
	}
	around, err := d.around(b)
	if err != nil {
		d.fail(w, r, http.StatusUnprocessableEntity, "This arena cannot be edited here.", err.Error())
		return shelf.Book{}, nil, false
	}
	name := r.PathValue("part")
	if name == "" {
		name = "rink"
	}
	part, found := blank.PartOf(around, name)
	if !found {
		d.fail(w, r, http.StatusNotFound, "The survey has no such part.", "Choose one of those listed.")
		return shelf.Book{}, nil, false
	}
	page := &surveyPage{
		Way: "survey", frame: d.frame(r, part.Title+" of "+b.Document.Name), Address: at, Name: b.Document.Name, Base: b.Version.Number,
		Part: part, Action: at.part(part.Name, ""), Edits: d.frame(r, "").Plans,
	}
	for _, p := range blank.Parts(around) {
		page.Parts = append(page.Parts, option{p.Title, at.part(p.Name, ""), p.Name == part.Name})
	}
	if page.Edits {
		page.Parts = append(page.Parts, option{"The file itself", at.beside("/text"), false})
	}
	return b, page, true
}

// around gathers what the questions choose from.
func (d *Desk) around(b shelf.Book) (blank.Around, error) {
	a, err := b.Arena.Check()
	if err != nil {
		return blank.Around{}, err
	}
	out := blank.Around{Arena: a}
	m := d.shelf.Maker()
	for _, l := range m.Kit.Lenses {
		out.Lenses = append(out.Lenses, blank.Option{Value: l.ID, Label: l.Name})
	}
	for _, set := range m.Rules {
		for _, rule := range set.Rules {
			out.Rules = append(out.Rules, rule.ID)
		}
	}
	return out, nil
}

// fillSurvey puts answers and messages into a page.
func (d *Desk) fillSurvey(b shelf.Book, page *surveyPage, a blank.Answers, wrong map[string]string) {
	for _, row := range page.Part.Items(b.Arena) {
		page.Rows = append(page.Rows, itemRow{row, page.Address.part(page.Part.Name, row.Path), row.Path == page.Item})
	}
	if !page.Part.IsList() || page.Item != "" || page.New {
		page.Fields = fieldsOf(page.Part, a, wrong)
	}
	switch {
	case len(wrong) > 0:
		page.Wrongs = plan.Count(len(wrong), "answer") + " to mend, marked below."
	case page.Other != "":
		page.Wrongs = "As a whole it does not go:"
	}
}

// saveSurvey takes a filled-in form.
func (d *Desk) saveSurvey(w http.ResponseWriter, r *http.Request) {
	b, page, ok := d.surveyOf(w, r)
	if !ok {
		return
	}
	page.Item = r.PostFormValue("item")
	if page.New = page.Item == "" && page.Part.IsList(); !page.New && page.Part.IsList() && !b.Arena.Has(page.Item) {
		d.fail(w, r, http.StatusNotFound, "The arena has no such item.", "It may have been renamed or deleted: go back to the list.")
		return
	}
	list := page.Address.part(page.Part.Name, "")
	if r.PostFormValue("act") == "remove" && page.Part.IsList() && !page.New {
		doc, what, err := d.shelf.Edited(b, page.Part.Remove(page.Item))
		if err != nil {
			page.Other = whyNot(err)
			d.fillSurvey(b, page, page.Part.Read(b.Arena, page.Item), nil)
			d.show(w, r, http.StatusUnprocessableEntity, "survey.tmpl", page)
			return
		}
		d.save(w, r, b, doc, what, list, d.surveyAgain(w, r, b, page, page.Part.Read(b.Arena, page.Item)))
		return
	}
	answers := blank.Answers(r.PostForm)
	filled := page.Part.Fill(b.Arena, page.Item, answers, d.applyTo(b))
	if !filled.OK() {
		page.Other = sentence(filled.Other)
		d.fillSurvey(b, page, answers, filled.Wrong)
		d.show(w, r, http.StatusUnprocessableEntity, "survey.tmpl", page)
		return
	}
	if len(filled.Edits) == 0 {
		http.Redirect(w, r, list, http.StatusSeeOther)
		return
	}
	doc, what, err := d.shelf.Edited(b, filled.Edits)
	if err != nil {
		d.broken(w, r, err)
		return
	}
	d.save(w, r, b, doc, what, list, d.surveyAgain(w, r, b, page, answers))
}

// surveyAgain shows a form that could not be saved, with what was typed.
func (d *Desk) surveyAgain(w http.ResponseWriter, r *http.Request, b shelf.Book, page *surveyPage, a blank.Answers) func(*problemView, int) {
	return func(p *problemView, status int) {
		page.Other = p.Text
		d.fillSurvey(b, page, a, nil)
		d.show(w, r, status, "survey.tmpl", page)
	}
}

// applyTo returns what makes edits in a book's document and checks the outcome.
func (d *Desk) applyTo(b shelf.Book) blank.Apply {
	return func(edits []edit.Edit) (*arena.Document, string, error) { return d.shelf.Edited(b, edits) }
}

// ItemName names the item that is edited: "Hole B1", "Reading 3".
func (p *surveyPage) ItemName() string {
	name := strings.Trim(p.Item[strings.LastIndexByte(p.Item, '[')+1:], "#]") // items without a name are counted: "[#3]"
	return strings.ToUpper(p.Part.Item[:1]) + p.Part.Item[1:] + " " + name
}

// NewURL returns where a new item is filled in.
func (p *surveyPage) NewURL() string { return p.Address.part(p.Part.Name, "new") }

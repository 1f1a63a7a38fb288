package survey

import (
	"errors"
	"net/http"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/desk/shelf"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
)

// surveyPage is a part of an arena's document as a form, or as a list of items.
type surveyPage struct {
	shell.Frame
	Way     string // which of the arena's pages this is
	Address shell.Address
	Name    string
	Base    int
	Parts   []shell.Option
	Part    Part
	Rows    []itemRow
	Item    string // path of the item that is edited; "" for a new one, or none
	Alone   string // the pane of a row that is edited by itself; ""
	Row     []rowLink
	New     bool
	Fields  []field
	Other   string // what is wrong that belongs to no field
	Wrongs  string // how many fields are wrong, in words; "" for none
	Action  string
}

// itemRow is an item of a list, with the way to its form.
type itemRow struct {
	Row
	URL    string
	Chosen bool
}

// surveyPage shows a part; ?item= opens the form of an item, ?item=new an empty one.
func (d area) surveyPage(w http.ResponseWriter, r *http.Request) error {
	b, at, err := d.Newest(r)
	if err != nil {
		return err
	}
	page, err := d.surveyOf(r, b, at)
	if err != nil {
		return err
	}
	item := r.URL.Query().Get("item")
	doc := b.Arena
	one, single := page.Part.aloneOf(b.Arena, item, r.URL.Query().Get("one") != "")
	switch {
	case item == "new" && page.Part.IsList():
		page.New = true
	case single:
		page.Item, page.Alone, page.Part, doc = item, one.id, page.Part.one(), one.doc
	case item != "" && (!page.Part.IsList() || !slices.Contains(b.Arena.Items(page.Part.Path), item)):
		return errNoItem
	default:
		page.Item = item
	}
	d.fillSurvey(b, page, page.Part.Read(doc, page.Item), nil)
	return d.Page(w, r, http.StatusOK, "survey.tmpl", page)
}

// errNoItem answers an address that names an item that is not there.
var errNoItem = shell.Refuse(http.StatusNotFound, "The arena has no such item.", "It may have been renamed or deleted: go back to the list.")

// surveyOf opens the part that an address names.
func (d area) surveyOf(r *http.Request, b shelf.Book, at shell.Address) (*surveyPage, error) {
	around, err := d.around(r, b)
	if err != nil {
		return nil, err
	}
	part, found := PartOf(around, r.PathValue("part"))
	if !found {
		return nil, shell.Refuse(http.StatusNotFound, "The survey has no such part.", "Choose one of those listed.")
	}
	page := &surveyPage{
		Way: "survey", Frame: d.Frame(r, part.Title+" of "+b.Document.Name), Address: at, Name: b.Document.Name, Base: b.Version.Number,
		Part: part, Action: at.Part(part.Name, ""),
	}
	page.Parts, err = d.parts(r, b, at, part.Name)
	return page, err
}

// parts leads to every part of the survey; chosen is where one is.
func (d area) parts(r *http.Request, b shelf.Book, at shell.Address, chosen string) ([]shell.Option, error) {
	around, err := d.around(r, b)
	out := []shell.Option{{Name: "What is missing", URL: at.Survey(), Chosen: chosen == ""}}
	plans := d.Frame(r, "").Plans
	if plans {
		out = append(out, shell.Option{Name: "Mark on the map", URL: at.Beside("/survey/map"), Chosen: chosen == onMap})
	}
	for _, p := range Parts(around) {
		out = append(out, shell.Option{Name: p.Title, URL: at.Part(p.Name, ""), Chosen: p.Name == chosen})
	}
	if plans {
		out = append(out, shell.Option{Name: "The file itself", URL: at.Beside("/text")})
	}
	return out, err
}

// onMap is the page on which zones and readings are marked on the map.
const onMap = "map"

// around gathers what the questions choose from.
func (d area) around(r *http.Request, b shelf.Book) (Around, error) {
	a, err := b.Arena.Check()
	if err != nil {
		return Around{}, err
	}
	out := Around{Arena: a}
	for _, l := range b.Maker.Kit.Lenses {
		out.Lenses = append(out.Lenses, Option{Value: l.ID, Label: l.Name})
	}
	for _, set := range b.Maker.Rules.All() {
		for _, rule := range set.Rules {
			out.Rules = append(out.Rules, rule.ID)
		}
	}
	kits, err1 := d.Shelf.Keeper().Documents(r.Context(), revision.Kit, false)
	own, err2 := d.Shelf.Keeper().Documents(r.Context(), revision.RuleSet, false)
	for _, k := range kits {
		out.Kits = append(out.Kits, Option{Value: k.ID, Label: k.Name})
	}
	for _, set := range own {
		out.Sets = append(out.Sets, Option{Value: set.ID, Label: set.Name})
	}
	for _, id := range rules.Names() {
		if !slices.ContainsFunc(own, func(d revision.Document) bool { return d.ID == id }) {
			out.Sets = append(out.Sets, Option{Value: id, Label: id})
		}
	}
	return out, errors.Join(err1, err2)
}

// fillSurvey puts answers and messages into a page.
func (d area) fillSurvey(b shelf.Book, page *surveyPage, a Answers, wrong map[string]string) {
	for _, row := range page.Part.Items(b.Arena) {
		page.Rows = append(page.Rows, itemRow{row, page.Address.Part(page.Part.Name, row.Path), row.Path == page.Item})
	}
	if page.Alone == "" && page.Item != "" {
		page.Row = page.Part.links(b.Arena, page.Item, func(item, first string) string {
			return page.Address.Beside("/survey/"+page.Part.Name, "item", item, "one", first)
		})
	}
	if !page.Part.IsList() || page.Item != "" || page.New {
		page.Fields = fieldsOf(page.Part, a, wrong)
	}
	switch {
	case len(wrong) > 0:
		page.Wrongs = say.Count(len(wrong), "answer") + " to mend, marked below."
	case page.Other != "":
		page.Wrongs = "As a whole it does not go:"
	}
}

// saveSurvey takes a filled-in form.
func (d area) saveSurvey(w http.ResponseWriter, r *http.Request) error {
	b, err := d.Base(r)
	if err != nil {
		return err
	}
	page, err := d.surveyOf(r, b, shell.SharedOf(b.Document.ID, r.URL.Query()))
	if err != nil {
		return err
	}
	part, list := page.Part, page.Part.IsList()
	page.Item = r.PostFormValue("item")
	page.New = list && page.Item == ""
	doc, before := b.Arena, []edit.Edit(nil)
	if one, single := part.aloneOf(b.Arena, page.Item, r.PostFormValue("one") != ""); single {
		part, doc, before = part.one(), one.doc, one.make
		page.Part, page.Alone = part, one.id
	}
	if list && !page.New && !doc.Has(page.Item) {
		return errNoItem
	}
	answers, wrong := Answers(r.PostForm), map[string]string(nil)
	again := func(p *shell.Problem) error {
		page.Other = p.Text
		d.fillSurvey(b, page, answers, wrong)
		return d.Page(w, r, p.Status, "survey.tmpl", page)
	}
	var edits []edit.Edit
	if r.PostFormValue("act") == "remove" && list && !page.New {
		answers, edits = part.Read(doc, page.Item), part.Remove(page.Item)
	} else {
		filled := part.Fill(doc, page.Item, answers, func(edits []edit.Edit) (*arena.Document, string, error) {
			from := b
			from.Arena = doc
			return d.Shelf.Edited(from, edits)
		})
		if !filled.OK() {
			wrong = filled.Wrong
			return again(&shell.Problem{Status: http.StatusUnprocessableEntity, Text: shell.Sentence(filled.Other)})
		}
		edits = filled.Edits
	}
	if len(edits) > 0 {
		if _, err := d.Edit(r, b, "", append(before, edits...)...); err != nil {
			return d.Again(r, err, "", again)
		}
	}
	if r.PostFormValue("back") == onMap {
		return d.Goto(w, r, page.Address.Beside("/survey/"+onMap))
	}
	return d.Goto(w, r, page.Action)
}

// ItemName names the item that is edited: "Hole B1", "Reading 3", "Panes P004 to P011".
func (p *surveyPage) ItemName() string {
	if n := len(p.Row); n > 1 {
		return "Panes " + p.Row[0].ID + " to " + p.Row[n-1].ID
	}
	name := strings.Trim(p.Item[strings.LastIndexByte(p.Item, '[')+1:], "#]") // items without a name are counted: "[#3]"
	return strings.ToUpper(p.Part.Item[:1]) + p.Part.Item[1:] + " " + name
}

// NewURL returns where a new item is filled in.
func (p *surveyPage) NewURL() string { return p.Address.Part(p.Part.Name, "new") }

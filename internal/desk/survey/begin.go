package survey

import (
	"fmt"
	"html/template"
	"net/http"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/survey/starter"
	"example.org/rinkpane/internal/tell/words"
)

// beginPage asks what a new arena is like, and shows it before it is kept.
type beginPage struct {
	shell.Frame
	Name, Place, Length, Width, Corner, Panes, List string
	Sizes, Markings, Benches                        []shell.Choice
	Problem                                         *shell.Problem
	Laid                                            *laidOut
}

// laidOut is the arena that the answers make.
type laidOut struct {
	Map      template.HTML
	Facts    string
	Verdict  rules.Status
	Words    string
	Notes    []string
	Gaps     []starter.Gap
	document string
}

// size is one of the usual sizes of the ice.
type size struct{ id, name, length, width string }

func sizes() []size {
	return []size{
		{"60x30", "60 m by 30 m, international", "60 m", "30 m"},
		{"60x26", "60 m by 26 m, international, narrow", "60 m", "26 m"},
		{"61x30", "61 m by 30 m, older international", "61 m", "30 m"},
		{"200x85", "200 ft by 85 ft, North American", "200 ft", "85 ft"},
		{"own", "another size, written below", "", ""},
	}
}

func (d area) beginPage(w http.ResponseWriter, r *http.Request) error {
	return d.Page(w, r, http.StatusOK, "begin.tmpl", d.beginForm(r))
}

// beginForm is the page with the answers of a request in it.
func (d area) beginForm(r *http.Request) *beginPage {
	p := &beginPage{Frame: d.Frame(r, "New arena")}
	for _, f := range []struct {
		to   *string
		name string
	}{{&p.Name, "name"}, {&p.Place, "place"}, {&p.Length, "length"}, {&p.Width, "width"}, {&p.Corner, "corner"}, {&p.Panes, "panes"}, {&p.List, "list"}} {
		*f.to = strings.ReplaceAll(r.PostFormValue(f.name), "\r\n", "\n")
	}
	chosen := r.PostFormValue("size")
	for i, s := range sizes() {
		p.Sizes = append(p.Sizes, shell.Choice{Value: s.id, Name: s.name, Chosen: s.id == chosen || chosen == "" && i == 0})
	}
	for _, m := range []Option{{"", "by the rule book where the length is the book's, else in proportion"}, {string(rink.ByBook), "by the rule book"},
		{string(rink.InProportion), "in proportion to the rule book's rink"}, {string(rink.Unpainted), "none: bare ice"}} {
		p.Markings = append(p.Markings, shell.Choice{Value: m.Value, Name: m.Label, Chosen: m.Value == r.PostFormValue("markings")})
	}
	for _, b := range []Option{{"", "both on one side, the penalty boxes across"}, {string(starter.Opposite), "on opposite sides"}} {
		p.Benches = append(p.Benches, shell.Choice{Value: b.Value, Name: b.Label, Chosen: b.Value == r.PostFormValue("benches")})
	}
	return p
}

// begin lays the arena out and shows it; with act=keep it is kept.
func (d area) begin(w http.ResponseWriter, r *http.Request) error {
	sent, err := shell.SentDocument(r) // a list given as a file stands in the form from now on
	if err != nil {
		return err
	}
	p := d.beginForm(r)
	if sent != "" {
		p.List = sent
	}
	answer := func(problem *shell.Problem) error {
		p.Problem, p.Laid = problem, nil
		return d.Page(w, r, problem.Status, "begin.tmpl", p)
	}
	l, err := p.layout(r.PostFormValue("size"), r.PostFormValue("markings"), r.PostFormValue("benches"))
	if err == nil {
		p.Laid, err = d.layOut(l)
	}
	if err != nil {
		return answer(&shell.Problem{Status: http.StatusUnprocessableEntity, Text: shell.SentenceOf(err)})
	}
	if r.PostFormValue("act") != "keep" {
		return d.Page(w, r, http.StatusOK, "begin.tmpl", p)
	}
	doc, err := d.Shelf.Read("arena", p.Laid.document)
	if err == nil {
		v, addErr := d.Shelf.Add(r.Context(), "", doc, door.Who(r.Context()), "begun on the desk")
		if addErr == nil {
			return d.Goto(w, r, shell.Address{Slug: v.Document}.Survey())
		}
		err = addErr
	}
	return d.Again(r, err, p.Laid.document, answer)
}

// layout reads the answers.
func (p *beginPage) layout(size, markings, benches string) (starter.Layout, error) {
	l := starter.Layout{Name: strings.Join(strings.Fields(p.Name), " "), Place: strings.Join(strings.Fields(p.Place), " "), Benches: starter.Benches(benches)}
	if _, err := form.Line(l.Name); err != nil {
		return l, fmt.Errorf("name: %w", err)
	}
	if _, err := form.Line(l.Place); err != nil && l.Place != "" {
		return l, fmt.Errorf("town or building: %w", err)
	}
	length, width := p.Length, p.Width
	for _, s := range sizes() {
		if s.id == size && s.length != "" {
			length, width = s.length, s.width
		}
	}
	d := rink.Dimensions{}
	for _, f := range []struct {
		to         *unit.Length
		name, text string
	}{{&d.Length, "length", length}, {&d.Width, "width", width}, {&d.CornerRadius, "corner radius", p.Corner}} {
		if f.text == "" && f.name == "corner radius" {
			continue
		}
		var err error
		if *f.to, err = unit.ParseLength(f.text); err != nil {
			return l, fmt.Errorf("%s: %w", f.name, err)
		}
	}
	l.Units = unit.SystemOf(length)
	l.Pane = starter.UsualPane(l.Units)
	l, err := l.OfSize(d, rink.Filling(markings))
	if err != nil {
		return l, err
	}
	if strings.TrimSpace(p.List) != "" {
		l.List, err = starter.ReadList("the list", strings.NewReader(p.List))
		return l, err
	}
	if l.Wish, err = starter.ReadWish(p.Panes); err != nil {
		err = fmt.Errorf("panes: %w", err)
	}
	return l, err
}

// layOut makes the arena and looks at it.
func (d area) layOut(l starter.Layout) (*laidOut, error) {
	text, a, err := starter.Begin(l)
	if err != nil {
		return nil, err
	}
	rep := d.Shelf.Maker().Rules.Check(a)
	dim := a.Rink.Dimensions()
	out := &laidOut{document: string(text), Map: shell.Still(a), Verdict: rep.Verdict, Words: words.Verdict(rep.Findings),
		Notes: l.Notes(a), Gaps: starter.Missing(a).Gaps}
	out.Facts = fmt.Sprintf("%s by %s, corners of %s; %s, %s, %s.", dim.Length.Format(a.Units), dim.Width.Format(a.Units), dim.CornerRadius.Format(a.Units),
		say.Count(len(a.Panes), "pane"), say.Count(len(a.Zones), "zone"), say.Count(len(a.Holes), "planned hole"))
	return out, nil
}

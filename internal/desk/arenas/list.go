package arenas

import (
	"context"
	"errors"
	"fmt"
	"html/template"
	"net/http"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/tell/words"
)

// listPage is the first page: the arenas as small maps.
type listPage struct {
	shell.Frame
	Arenas []listRow
	Away   []revision.Document // put away
}

// listRow is one arena of the list.
type listRow struct {
	Slug, Origin string
	Name, Place  string
	Map          template.HTML
	Verdict      rules.Status
	VerdictWords string
	Facts        string
	Problem      string // why it cannot be planned, "" when it can
}

// firstPage leads a newcomer to the demo arena and everybody else to the list. A
// desk whose owner brought arenas opens on the list.
func (d area) firstPage(w http.ResponseWriter, r *http.Request) error {
	docs, err := d.Shelf.Keeper().Documents(r.Context(), revision.Arena, false)
	if err == nil && !shell.Toured(r) && shell.OnlyExamples(docs) {
		return d.Goto(w, r, "/arena/"+shell.DemoID)
	}
	return d.listPage(w, r)
}

func (d area) listPage(w http.ResponseWriter, r *http.Request) error {
	docs, err := d.Shelf.Keeper().Documents(r.Context(), revision.Arena, true)
	if err != nil {
		return err
	}
	page := listPage{Frame: d.Frame(r, "Arenas")}
	named := map[string]int{}
	var listed []revision.Document
	for _, doc := range docs {
		if doc.Away {
			page.Away = append(page.Away, doc)
			continue
		}
		named[doc.Name]++
		listed = append(listed, doc)
	}
	page.Arenas = make([]listRow, len(listed))
	cores.Each(len(listed), func(i int) { page.Arenas[i] = d.row(r.Context(), listed[i], named[listed[i].Name] > 1) })
	return d.Page(w, r, http.StatusOK, "list.tmpl", page)
}

// row tells an arena; one of several of the same name by its address too.
func (d area) row(ctx context.Context, doc revision.Document, several bool) listRow {
	row := listRow{Slug: doc.ID, Name: doc.Name, Origin: fmt.Sprintf("version %d", doc.Head)}
	if several {
		row.Name += " (" + doc.ID + ")"
	}
	b, err := d.Shelf.Open(ctx, doc.ID, 0)
	if err != nil {
		row.Problem = err.Error()
		return row
	}
	row.Origin = fmt.Sprintf("version %d · %s", b.Version.Number, b.Version.What)
	proof, err := d.Shelf.Proof(ctx, b)
	if err != nil {
		row.Problem = err.Error()
		return row
	}
	v := proof.Survey
	row.Place = v.Place
	row.Verdict, row.VerdictWords = proof.Verdict, words.Verdict(proof.Findings)
	row.Facts = words.Size(v, v.Units) + " · " + say.Count(v.Panes, "pane") + " · " + say.Count(v.Holes, "hole")
	if a, err := b.Arena.Check(); err == nil {
		status := map[string]rules.Status{}
		for _, h := range a.Working() {
			status[h.ID] = rules.Verdict(proof.FindingsOf(h.ID))
		}
		row.Map = template.HTML(sheet.InlineSVG(chart.SmallMap("map-"+doc.ID, a, status)))
	}
	return row
}

// bringDemo answers POST /demo: the demo arena comes, or comes back.
func (d area) bringDemo(w http.ResponseWriter, r *http.Request) error {
	err := d.Shelf.Keeper().SetAway(r.Context(), shell.DemoID, false)
	if errors.Is(err, revision.ErrNone) {
		var text []byte
		if text, err = examples.Files.ReadFile(examples.Demo); err != nil {
			return err
		}
		doc, readErr := d.Shelf.Read(shell.DemoID, string(text))
		if readErr != nil {
			return readErr
		}
		_, err = d.Shelf.Add(r.Context(), shell.DemoID, doc, door.Who(r.Context()), "an example, invented")
	}
	if err != nil {
		return err
	}
	return d.Goto(w, r, "/arena/"+shell.DemoID)
}

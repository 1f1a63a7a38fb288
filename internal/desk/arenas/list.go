package arenas

import (
	"context"
	"fmt"
	"net/http"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/measure/cores"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/tell/words"
)

// listPage is the first page: the arenas.
type listPage struct {
	shell.Frame
	Arenas []listRow
}

// listRow is one arena of the list.
type listRow struct {
	Slug, Origin string
	Name, Place  string
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
	docs, err := d.Shelf.Keeper().Documents(r.Context(), revision.Arena, false)
	if err != nil {
		return err
	}
	rows := make([]listRow, len(docs))
	cores.Each(len(docs), func(i int) { rows[i] = d.row(r.Context(), docs[i]) })
	return d.Page(w, r, http.StatusOK, "list.tmpl", listPage{d.Frame(r, "Arenas"), rows})
}

func (d area) row(ctx context.Context, doc revision.Document) listRow {
	row := listRow{Slug: doc.ID, Name: doc.Name, Origin: fmt.Sprintf("version %d", doc.Head)}
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
	return row
}

package desk

import (
	"context"
	"fmt"
	"net/http"
	"sync"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/keep/revision"
)

// listPage is the first page: the arenas.
type listPage struct {
	frame
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

func (d *Desk) listPage(w http.ResponseWriter, r *http.Request) {
	docs, err := d.shelf.Keeper().Documents(r.Context(), false)
	if err != nil {
		d.broken(w, r, err)
		return
	}
	rows := make([]listRow, len(docs))
	var wait sync.WaitGroup
	for i, doc := range docs {
		wait.Go(func() { rows[i] = d.row(r.Context(), doc) })
	}
	wait.Wait()
	d.show(w, r, http.StatusOK, "list.tmpl", listPage{d.frame(r, "Arenas"), rows})
}

func (d *Desk) row(ctx context.Context, doc revision.Document) listRow {
	row := listRow{Slug: doc.ID, Name: doc.Name, Origin: fmt.Sprintf("version %d", doc.Head)}
	b, err := d.shelf.Open(ctx, doc.ID, 0)
	if err != nil {
		row.Problem = err.Error()
		return row
	}
	row.Origin = fmt.Sprintf("version %d · %s", b.Version.Number, b.Version.What)
	proof, err := d.shelf.Proof(b)
	if err != nil {
		row.Problem = err.Error()
		return row
	}
	v := proof.Survey
	row.Place = v.Place
	row.Verdict, row.VerdictWords = proof.Verdict, plan.VerdictWords(proof.Findings)
	row.Facts = v.Size(v.System()) + " · " + plan.Count(v.Panes, "pane") + " · " + plan.Count(v.Holes, "hole")
	return row
}

package desk

import (
	"net/http"
	"sync"

	"example.org/rinkpane/plan"
	"example.org/rinkpane/rules"
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
	rows := make([]listRow, len(d.shelves))
	var wait sync.WaitGroup
	for i, s := range d.shelves {
		wait.Go(func() { rows[i] = s.row() })
	}
	wait.Wait()
	d.show(w, r, http.StatusOK, "list.tmpl", listPage{d.frame(r, "Arenas"), rows})
}

func (s *shelf) row() listRow {
	proof, err := s.prove()
	row := listRow{Slug: s.Slug, Origin: s.Origin}
	if err != nil {
		row.Name, row.Problem = s.Slug, err.Error()
		return row
	}
	v := proof.Survey
	row.Name, row.Place = v.Name, v.Place
	row.Verdict, row.VerdictWords = proof.Verdict, plan.VerdictWords(proof.Findings)
	row.Facts = v.Size(v.System()) + " · " + plan.Count(v.Panes, "pane") + " · " + plan.Count(v.Holes, "hole")
	return row
}

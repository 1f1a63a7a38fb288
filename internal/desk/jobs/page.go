package jobs

import (
	"context"
	"fmt"
	"net/http"
	"time"

	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/queue"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/words"
)

// page is the page of jobs.
type page struct {
	shell.Frame
	listView
	Gone   string // why there are no jobs here
	Works  bool   // this desk works jobs itself
	Arenas int
	Asked  int // arenas that are asked about as they stand
	Left   int // of them, those whose job has not ended
	Notes  []string
	Tables []table.Table
}

// listView is the list of jobs.
type listView struct {
	Rows []row
	Open int    // that wait or are at work
	Sum  string // how many there are of each state
}

// row is one job.
type row struct {
	ID, What, About, Owner string
	State, Why             string
	Far                    string // how far what is at work is
	Asked                  time.Time
	Took                   string
	GiveUp                 bool
}

// mostListed is how many jobs the page lists.
const mostListed = 200

// kinds are the kinds of jobs in words.
var kinds = map[string]string{"choose": "best set of holes", "book": "book", "season": "a season's seats", "recap": "look back on a game"}

// page answers GET /jobs.
func (d area) page(w http.ResponseWriter, r *http.Request) error {
	p := page{Frame: d.Frame(r, "Jobs")}
	q, err := d.queue(r.Context())
	if err != nil {
		p.Gone = shell.SentenceOf(err)
		return d.Page(w, r, http.StatusOK, "jobs.tmpl", p)
	}
	p.Works = d.Backlog.Workers > 0
	if err := d.league(r.Context(), q, &p); err != nil {
		return err
	}
	if p.listView, err = d.listed(r.Context(), q); err != nil {
		return err
	}
	return d.Page(w, r, http.StatusOK, "jobs.tmpl", p)
}

// list answers GET /jobs/now.json.
func (d area) list(w http.ResponseWriter, r *http.Request) error {
	q, err := d.queue(r.Context())
	if err != nil {
		return noJobs(err)
	}
	list, err := d.listed(r.Context(), q)
	if err != nil {
		return err
	}
	text, err := d.Piece("jobs-list", list)
	if err != nil {
		return err
	}
	return d.JSON(w, r, http.StatusOK, map[string]any{"open": list.Open, "list": string(text)})
}

func (d area) listed(ctx context.Context, q *queue.Queue) (out listView, err error) {
	all, err := q.Listed(ctx, mostListed)
	if err != nil {
		return out, err
	}
	counts := map[queue.State]int{}
	for _, p := range all {
		counts[p.State]++
		if !p.State.Ended() {
			out.Open++
		}
		out.Rows = append(out.Rows, d.row(ctx, p))
	}
	out.Sum = fmt.Sprintf("At work: %d. Waiting: %d. Done: %d. Failed: %d. Given up: %d.",
		counts[queue.AtWork], counts[queue.Waiting], counts[queue.Done], counts[queue.Failed], counts[queue.GivenUp])
	if len(all) == mostListed {
		out.Sum += fmt.Sprintf(" These are the first %d.", mostListed)
	}
	return out, nil
}

func (d area) row(ctx context.Context, p queue.Piece) row {
	out := row{
		ID: p.ID, What: kinds[p.Kind], About: p.About, Owner: p.Owner, State: string(p.State), Why: p.Cause,
		Asked: p.Asked, Took: words.Took(p.Took(d.Now())), GiveUp: mayGiveUp(ctx, p),
	}
	if out.What == "" {
		out.What = p.Kind
	}
	if p.State == queue.AtWork && p.Stage != "" {
		out.Far = fmt.Sprintf("%s, %.0f %%", p.Stage, 100*p.Share)
	}
	if p.State == queue.Waiting && p.Cause != "" {
		out.Why = "tried again soon; it failed: " + p.Cause
	}
	return out
}

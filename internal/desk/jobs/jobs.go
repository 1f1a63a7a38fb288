// Package jobs answers: which long work waits on the desk's store, how far is it, and what
// came of it?
//
//	GET  /jobs               all arenas beside one another, and the list of jobs
//	GET  /jobs/now.json      the list alone, for the page's module
//	POST /jobs               every arena of the desk is to be checked and chosen for
//	POST /jobs/{id}/give-up  one of the visitor's own is not to be done
//
// The jobs are those of package queue that `rinkpane league` and `rinkpane work` ask for
// and work on the same store. What all arenas come to is no list that is kept: it is asked
// of each arena as it stands, with its rules and kit, and found by that question.
package jobs

import (
	"context"
	"embed"
	"errors"
	"net/http"
	"time"

	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/desk/door"
	"example.org/rinkpane/internal/desk/shell"
	"example.org/rinkpane/internal/keep/people"
	"example.org/rinkpane/internal/keep/queue"
)

//go:embed *.tmpl
var templates embed.FS

// Options is what the area needs.
type Options struct {
	Backlog *Backlog // of the jobs; nil where the desk has none
	// Rules are the rule sets of an arena that names none.
	Rules []league.Document
	Now   func() time.Time
}

type area struct {
	*shell.Shell
	Options
}

// New returns the area.
func New(s *shell.Shell, o Options) shell.Area {
	d := area{s, o}
	return shell.Area{Templates: templates, Routes: []shell.Route{
		{Pattern: "GET /jobs", Need: people.Read, Most: shell.Form, Answer: d.page},
		{Pattern: "GET /jobs/now.json", Need: people.Read, Most: shell.Form, Answer: d.list},
		{Pattern: "POST /jobs", Need: people.Plan, Most: shell.Form, Answer: d.ask},
		{Pattern: "POST /jobs/{id}/give-up", Need: people.Plan, Most: shell.Form, Answer: d.giveUp},
	}}
}

// errNoJobs answers where the desk has no place for jobs.
var errNoJobs = errors.New("this desk was started without jobs")

// queue is the open queue.
func (d area) queue(ctx context.Context) (*queue.Queue, error) {
	if d.Backlog == nil {
		return nil, errNoJobs
	}
	return d.Backlog.Queue(ctx)
}

// asker is for whom a visitor's jobs are.
func asker(ctx context.Context) queue.Asker {
	who, _ := door.Person(ctx)
	return queue.Asker{Owner: who.Name}
}

// mayGiveUp reports whether a job is the visitor's own; while nobody is set up, all are.
func mayGiveUp(ctx context.Context, p queue.Piece) bool {
	who, signedIn := door.Person(ctx)
	return !p.State.Ended() && door.May(ctx, people.Plan) && (!signedIn || who.Name == p.Owner)
}

// giveUp answers POST /jobs/{id}/give-up.
func (d area) giveUp(w http.ResponseWriter, r *http.Request) error {
	q, err := d.queue(r.Context())
	if err != nil {
		return noJobs(err)
	}
	p, err := q.Piece(r.Context(), r.PathValue("id"))
	switch {
	case errors.Is(err, queue.ErrNone):
		return shell.Refuse(http.StatusNotFound, "There is no such job.", "Look at the list of jobs.")
	case err != nil:
		return err
	case p.State.Ended():
		return d.Goto(w, r, "/jobs")
	case !mayGiveUp(r.Context(), p):
		return shell.Refuse(http.StatusForbidden, "This job is somebody else's.", "Ask whoever it is for, or give it up where the store is: rinkpane work --give-up.")
	}
	if err := q.GiveUp(r.Context(), p.ID); err != nil {
		return err
	}
	return d.Goto(w, r, "/jobs")
}

// noJobs says why there are no jobs here.
func noJobs(err error) error {
	return shell.Refuse(http.StatusServiceUnavailable, "Jobs are not to be had on this desk now.", shell.SentenceOf(err))
}

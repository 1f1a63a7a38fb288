package main

import (
	"context"
	"fmt"
	"strings"
	"time"

	"example.org/rinkpane/internal/keep/queue"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/tell/table"
	"example.org/rinkpane/internal/tell/wire"
	"example.org/rinkpane/internal/tell/words"
)

// mostListed is how many jobs are listed, and idShown how much of an id people are shown.
const (
	mostListed = 200
	idShown    = 8
)

// listJobs lists the jobs that were asked for last.
func listJobs(ctx context.Context, a *app, q *queue.Queue) error {
	all, err := q.Listed(ctx, mostListed)
	if err != nil {
		return err
	}
	jobs := []wire.LeagueJob{}
	t := table.New("id", "kind", "about", "for", "state", "how far", "took", "why")
	for _, p := range all {
		took := p.Took(time.Now())
		jobs = append(jobs, wire.LeagueJob{ID: p.ID, Arena: p.About, Kind: p.Kind, State: string(p.State), Cause: p.Cause, TookS: took.Seconds()})
		far := ""
		if p.State == queue.AtWork && p.Stage != "" {
			far = fmt.Sprintf("%s, %.0f %%", p.Stage, 100*p.Share)
		}
		t.Add(p.ID[:idShown], p.Kind, p.About, p.Owner, string(p.State), far, words.Took(took), p.Cause)
	}
	return a.print(wire.Object{"jobs", jobs}, func() string {
		if len(all) == 0 {
			return "Nobody asked for a job.\n"
		}
		return t.Text()
	})
}

// giveJobUp gives up the job whose id begins with what was typed.
func giveJobUp(ctx context.Context, a *app, q *queue.Queue, begin string) error {
	all, err := q.Listed(ctx, mostListed)
	if err != nil {
		return err
	}
	var meant []queue.Piece
	for _, p := range all {
		if strings.HasPrefix(p.ID, begin) {
			meant = append(meant, p)
		}
	}
	switch {
	case len(meant) == 0:
		return fmt.Errorf("--give-up %s: no such job; --list shows them", form.Quote(begin))
	case len(meant) > 1:
		return fmt.Errorf("--give-up %s: %d jobs begin so; write more of the id", form.Quote(begin), len(meant))
	case meant[0].State.Ended():
		return fmt.Errorf("--give-up %s: the job is %s already", form.Quote(begin), meant[0].State)
	}
	if err := q.GiveUp(ctx, meant[0].ID); err != nil {
		return err
	}
	return a.print(wire.Object{"id", meant[0].ID}, func() string { return fmt.Sprintf("%s %s is given up.\n", meant[0].Kind, meant[0].About) })
}

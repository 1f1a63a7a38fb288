package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os/user"
	"time"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/keep/queue"
	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/keep/work"
	"example.org/rinkpane/internal/tell/wire"
)

// leagueJob is a job, what it is called here, and where its answer goes.
type leagueJob struct {
	queue.Piece
	name  string  // "choose", "choose-other", "book", "season", "recap"
	cause *string // of its row, for what went wrong
	ask   func(context.Context, *queue.Queue, queue.Asker) (queue.Piece, error)
	take  func(context.Context, *queue.Queue, string) error
}

// jobOf is a job of a kind about something; put is given its answer.
func jobOf[Q, A any](k queue.Kind[Q, A], about string, question Q, cause *string, put func(A)) leagueJob {
	return leagueJob{
		Piece: queue.Piece{Kind: k.Name, About: about}, name: k.Name, cause: cause,
		ask: func(ctx context.Context, q *queue.Queue, by queue.Asker) (queue.Piece, error) {
			return k.Ask(ctx, q, by, about, question)
		},
		take: func(ctx context.Context, q *queue.Queue, id string) error {
			a, err := k.Answer(ctx, q, id)
			if err == nil {
				put(a)
			}
			return err
		},
	}
}

// leagueBook is an arena's book, and the arena's file.
type leagueBook struct {
	work.BookAnswer
	arena string
	job   int // which of the run's
}

// leagueRun is one run of the command.
type leagueRun struct {
	a     *app
	f     leagueFlags
	l     league.League
	q     *queue.Queue
	jobs  []leagueJob
	set   []leagueBook
	books []outFile
}

// owner is for whom jobs are asked, where several people share a database.
func owner() string {
	if u, err := user.Current(); err == nil {
		return u.Username
	}
	return ""
}

// ask asks for the jobs.
func (r *leagueRun) ask(ctx context.Context) (err error) {
	by := queue.Asker{Owner: owner()}
	for i := range r.jobs {
		if r.jobs[i].Piece, err = r.jobs[i].ask(ctx, r.q, by); err != nil {
			return err
		}
	}
	return nil
}

// How often the jobs are looked at, and how long a database may be away meanwhile.
const (
	jobsEvery = 250 * time.Millisecond
	jobsAway  = 2 * time.Minute
)

// work works jobs, if this command is to, and tells how far they are until all have ended.
func (r *leagueRun) work(ctx context.Context) error {
	working, stop := context.WithCancel(ctx)
	ended := make(chan error, 1)
	if r.f.workers > 0 {
		go func() { ended <- r.q.Work(working, r.f.workers, kinds()...) }()
	} else {
		ended <- nil
	}
	err := r.await(ctx)
	stop()
	return errors.Join(err, <-ended)
}

// await looks at the jobs until all have ended.
func (r *leagueRun) await(ctx context.Context) error {
	bar := newProgress(r.a.err)
	defer bar.end()
	tick := time.NewTicker(jobsEvery)
	defer tick.Stop()
	begun, answered := time.Now(), time.Now()
	first := -1
	for {
		err := r.look(ctx)
		switch {
		case ctx.Err() != nil:
			return r.stopped()
		case errors.Is(err, revision.ErrDown) && time.Since(answered) < jobsAway:
		case err != nil:
			return err
		default:
			answered = time.Now()
		}
		left, all, now := r.left()
		if left == 0 && err == nil {
			return nil
		}
		if first < 0 {
			first = left
		}
		bar.tell(choose.Report{Stage: leftWords(left, all, first, time.Since(begun)) + now, Share: float64(all-left) / float64(all)})
		select {
		case <-tick.C:
		case <-ctx.Done():
			return r.stopped()
		}
	}
}

// stopped says that nothing is lost.
func (r *leagueRun) stopped() error {
	left, all, _ := r.left()
	return fmt.Errorf("stopped with %d of %d jobs left; the same command goes on from there", left, all)
}

// look asks how far the jobs are.
func (r *leagueRun) look(ctx context.Context) error {
	at := map[string][]*leagueJob{}
	var ids []string
	for i := range r.jobs {
		if j := &r.jobs[i]; !j.State.Ended() {
			at[j.ID] = append(at[j.ID], j)
			ids = append(ids, j.ID)
		}
	}
	found, err := r.q.Pieces(ctx, ids)
	for _, p := range found {
		for _, j := range at[p.ID] {
			j.Piece = p
		}
	}
	return err
}

// left counts the jobs that have not ended, and names one that is at work.
func (r *leagueRun) left() (left, all int, now string) {
	for _, j := range r.jobs {
		if !j.State.Ended() {
			left++
		}
		if j.State == queue.AtWork {
			now = fmt.Sprintf("; %s %s", j.name, j.About)
		}
	}
	return left, len(r.jobs), now
}

// leftWords says how many jobs are left, and about for how long once that can be told.
func leftWords(left, all, first int, since time.Duration) string {
	words := fmt.Sprintf("%d of %d jobs left", left, all)
	if done := first - left; done > 0 && left > 0 {
		words += fmt.Sprintf(", about %v", (since / time.Duration(done) * time.Duration(left)).Round(time.Second))
	}
	return words
}

// gather reads the answers, and the books if they are asked for.
func (r *leagueRun) gather(ctx context.Context) error {
	for _, j := range r.jobs {
		if j.State != queue.Done {
			*j.cause = fmt.Sprintf("%s %s: %s", j.name, j.State, cmp.Or(j.Cause, "by hand"))
		} else if err := j.take(ctx, r.q, j.ID); err != nil {
			return err
		}
	}
	if r.f.out.path == "" {
		return nil
	}
	for _, b := range r.set {
		data, err := r.q.Files.Get(ctx, b.File)
		if errors.Is(err, queue.ErrGone) {
			if err := r.q.Forget(ctx, r.jobs[b.job].ID); err != nil {
				return err
			}
			return fmt.Errorf("%w; the same command sets the book of %s anew", err, b.arena)
		}
		if err != nil {
			return err
		}
		r.books = append(r.books, outFile{bookFile(b.arena, r.books), data})
	}
	return nil
}

// told are the jobs as scripts read them.
func (r *leagueRun) told() []wire.LeagueJob {
	out := []wire.LeagueJob{}
	for _, j := range r.jobs {
		out = append(out, wire.LeagueJob{ID: j.ID, Arena: j.About, Kind: j.name, State: string(j.State), Cause: j.Cause, TookS: j.Took(time.Now()).Seconds()})
	}
	return out
}

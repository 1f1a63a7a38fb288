package queue

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"sync"
	"time"

	"github.com/riverqueue/river"
	"github.com/riverqueue/river/rivertype"

	"example.org/rinkpane/internal/keep/revision"
	"example.org/rinkpane/internal/keep/store"
)

// stopping is how long a worker that stops waits for its work to notice.
const stopping = 20 * time.Second

// lookEvery is how often a worker looks for pieces of which it was not told.
const lookEvery = 500 * time.Millisecond

// Work works pieces of these kinds, so many at once and one more that somebody waits for,
// until ctx ends. Pieces that are at work then are given back and cost no try. Work finds
// the values of ctx in its own context.
func (q *Queue) Work(ctx context.Context, places int, kinds ...Doer) error {
	w := &worker{q: q, kinds: map[string]Doer{}, stop: ctx.Done(), at: map[int64]bool{}}
	for _, k := range kinds {
		w.kinds[k.name()] = k
	}
	workers := river.NewWorkers()
	if err := river.AddWorkerSafely(workers, w); err != nil {
		return err
	}
	c, err := q.make(&river.Config{
		Workers: workers, Logger: q.Log, MaxAttempts: tries, FetchPollInterval: lookEvery,
		JobTimeout:  -1, // a kind has its own limit; see also [lease]
		Queues:      map[string]river.QueueConfig{q.line(false): {MaxWorkers: places}, q.line(true): {MaxWorkers: 1}},
		RetryPolicy: later{q.Options},
	})
	if err != nil {
		return err
	}
	if err := c.Start(context.WithoutCancel(ctx)); err != nil {
		return store.Plain(err)
	}
	alive, dead := context.WithCancel(context.WithoutCancel(ctx))
	var beats sync.WaitGroup
	beats.Go(func() { w.beatUntil(alive) })
	<-ctx.Done()
	limited, done := context.WithTimeout(context.WithoutCancel(ctx), stopping)
	defer done()
	err = c.StopAndCancel(limited)
	dead()
	beats.Wait()
	return err
}

// later says when a failed try is begun anew: after 1, 4, 16 ... seconds, five minutes at
// most. Own choice: a database that restarts is back by then.
type later struct{ Options }

func (l later) NextRetry(j *rivertype.JobRow) time.Time {
	wait := time.Second
	for range j.Attempt - 1 {
		wait = min(4*wait, 5*time.Minute)
	}
	return time.Now().Add(l.pace(wait))
}

// worker works pieces for River.
type worker struct {
	river.WorkerDefaults[args]
	q     *Queue
	kinds map[string]Doer
	stop  <-chan struct{} // closed when the worker stops

	mu sync.Mutex
	at map[int64]bool // jobs at work here
}

// Work works one piece: it looks whether the answer is there already, does the work and
// keeps the answer.
func (w *worker) Work(ctx context.Context, j *river.Job[args]) error {
	w.hold(j.ID, true)
	defer w.hold(j.ID, false)
	var kind, question string
	var answered, givenUp bool
	row := w.q.db.QueryRowContext(ctx, `SELECT kind, question, answered_us > 0, given_up = 1 FROM piece WHERE id = $1`, j.Args.Piece)
	if err := row.Scan(&kind, &question, &answered, &givenUp); err != nil {
		return w.failed(ctx, j, store.Plain(err))
	}
	switch {
	case answered:
		return nil
	case givenUp:
		return river.JobCancel(context.Canceled)
	}
	if err := w.q.begun(ctx, j.ScheduledAt.Unix()); err != nil {
		return w.failed(ctx, j, err)
	}
	k, ok := w.kinds[kind]
	if !ok {
		return w.failed(ctx, j, fmt.Errorf("no worker here does jobs of kind %q", kind))
	}
	if err := w.q.set(ctx, `begun_us = $2`, j.Args.Piece, time.Now().UnixMicro()); err != nil {
		return w.failed(ctx, j, err)
	}
	text, err := w.do(ctx, k, j.Args.Piece, []byte(question))
	if err == nil {
		err = w.q.keep(ctx, j.Args.Piece, text)
	}
	return w.failed(ctx, j, err)
}

// do works a piece; a panic in the work is an error of it.
func (w *worker) do(ctx context.Context, k Doer, id string, question []byte) (text []byte, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the program met a fault of its own: %v", r)
		}
	}()
	return k.do(ctx, question, Bench{Tell: w.q.telling(ctx, id), Keep: w.q.file})
}

// failed says what becomes of a piece whose try ended with an error: nothing if there was
// none; one that was at work when the worker stopped is given back; one that has failed
// too often is not begun again.
func (w *worker) failed(ctx context.Context, j *river.Job[args], err error) error {
	if err == nil {
		return nil
	}
	select {
	case <-w.stop:
		return river.JobSnooze(0)
	default:
	}
	if ctx.Err() != nil || errors.Is(err, revision.ErrDown) {
		return err
	}
	var failures int
	again := w.q.db.QueryRowContext(ctx, `UPDATE piece SET cause = $1, failures = failures + 1 WHERE id = $2 RETURNING failures`, err.Error(), j.Args.Piece).Scan(&failures)
	if again == nil && failures >= errorTries {
		return river.JobCancel(err)
	}
	return err
}

// keepTries is how often an answer is tried to be kept while the database does not answer,
// and keepPause how long each waits: what took minutes is not worked out again for that.
const (
	keepTries = 40
	keepPause = 500 * time.Millisecond
)

// keep keeps an answer unless there is one.
func (q *Queue) keep(ctx context.Context, id string, text []byte) (err error) {
	for range keepTries {
		err = q.set(ctx, `answer = $2, answered_us = $3, cause = '', stage = '', share = 1`, id, string(text), time.Now().UnixMicro())
		if !errors.Is(err, revision.ErrDown) {
			return err
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case <-time.After(keepPause):
		}
	}
	return err
}

// file keeps a large result.
func (q *Queue) file(ctx context.Context, data []byte) (Name, error) {
	if q.Files == nil {
		return "", errors.New("no place for large results is named (--files)")
	}
	return q.Files.Put(ctx, data)
}

// tellEvery is how often progress is kept.
const tellEvery = 500 * time.Millisecond

// telling returns what keeps a piece's progress, not each report of it. What cannot be
// kept is lost: the next report comes.
func (q *Queue) telling(ctx context.Context, id string) func(stage string, share float64) {
	var one sync.Mutex
	var last time.Time
	var at string
	return func(stage string, share float64) {
		if !one.TryLock() {
			return
		}
		defer one.Unlock()
		if stage == at && time.Since(last) < tellEvery {
			return
		}
		at, last = stage, time.Now()
		if err := q.set(ctx, `stage = $2, share = $3`, id, stage, min(max(share, 0), 1)); err != nil {
			q.Log.Debug("progress is not kept", slog.Any("error", err))
		}
	}
}

package queue

import (
	"context"
	"fmt"
	"log/slog"
	"strings"
	"time"

	"example.org/rinkpane/internal/keep/store"
)

// How often a worker says that it is alive, and how long a piece stays with a worker that
// does not. Own choice: a machine that is busy beyond that is slower than beginning anew.
const (
	beat  = 2 * time.Second
	lease = 12 * time.Second
)

func (w *worker) hold(job int64, at bool) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if at {
		w.at[job] = true
	} else {
		delete(w.at, job)
	}
}

func (w *worker) held() []string {
	w.mu.Lock()
	defer w.mu.Unlock()
	var out []string
	for id := range w.at {
		out = append(out, fmt.Sprint(id))
	}
	return out
}

// beatUntil says that the worker is alive, and looks after pieces whose worker is not, until
// ctx ends.
func (w *worker) beatUntil(ctx context.Context) {
	tick := time.NewTicker(w.q.beat())
	defer tick.Stop()
	for {
		if err := w.beat(ctx); err != nil && ctx.Err() == nil {
			w.q.Log.Warn("the database does not answer", slog.Any("error", err))
		}
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
	}
}

// beat renews the time at which each piece at work here was begun. River would give a
// piece to another only after a fixed time from its beginning, however long it may take.
// It is the database's clock that counts, so that those of the machines may differ.
func (w *worker) beat(ctx context.Context) error {
	if ids := w.held(); len(ids) > 0 {
		if _, err := w.q.db.ExecContext(ctx, `UPDATE river_job SET attempted_at = `+w.q.ago(0)+` WHERE state = 'running' AND id IN (`+strings.Join(ids, ", ")+`)`); err != nil {
			return store.Plain(err)
		}
	}
	return w.q.reclaim(ctx)
}

// reclaim lets pieces wait again whose worker has not been heard of, unless they were
// begun too often, and lets those that wait with a real time go first.
func (q *Queue) reclaim(ctx context.Context) error {
	state := `CASE WHEN attempt < max_attempts THEN 'available' ELSE 'discarded' END`
	if !q.sqlite {
		state = `CAST(` + state + ` AS river_job_state)`
	}
	first := q.moment(timeOf(0))
	_, err := q.db.ExecContext(ctx, `UPDATE river_job SET state = `+state+`, scheduled_at = `+first+`,
		finalized_at = CASE WHEN attempt < max_attempts THEN NULL ELSE `+q.ago(0)+` END
		WHERE state = 'running' AND kind = 'piece' AND attempted_at < `+q.ago(q.lease()))
	if err == nil {
		_, err = q.db.ExecContext(ctx, `UPDATE river_job SET scheduled_at = `+first+`
			WHERE state = 'available' AND kind = 'piece' AND scheduled_at > `+q.moment(timeOf(lastTag)))
	}
	return store.Plain(err)
}

// ago is the database's time so long before now, as SQL.
func (q *Queue) ago(d time.Duration) string {
	if q.sqlite {
		return fmt.Sprintf(`strftime('%%Y-%%m-%%d %%H:%%M:%%f', 'now', '-%.3f seconds')`, d.Seconds())
	}
	return fmt.Sprintf(`now() - interval '%.3f seconds'`, d.Seconds())
}

// moment is a time as SQL, as River writes it.
func (q *Queue) moment(t time.Time) string {
	text := `'` + t.UTC().Format("2006-01-02 15:04:05.000")
	if q.sqlite {
		return text + `'`
	}
	return `TIMESTAMPTZ ` + text + `+00'`
}

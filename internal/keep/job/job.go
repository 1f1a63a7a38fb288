package job

import (
	"context"
	"slices"
	"sync"
	"time"
)

// Job is one piece of work about A with its reports R and its outcome T.
type Job[A, R, T any] struct {
	ID     string
	About  A
	owner  string
	begin  chan struct{} // closed when it is its turn
	cancel context.CancelFunc
	done   chan struct{}

	mu       sync.Mutex
	idle     *time.Timer
	watchers int
	reports  []R
	news     chan struct{} // closed, and made anew, with each report
	outcome  T
	err      error
}

// mostReports bounds what is kept of a job's way; beyond it every second report
// is dropped, so that a chart of it keeps its shape.
const mostReports = 600

func (j *Job[A, R, T]) tell(r R) {
	j.mu.Lock()
	defer j.mu.Unlock()
	if len(j.reports) >= mostReports {
		half := j.reports[:0]
		for i := 0; i < len(j.reports); i += 2 {
			half = append(half, j.reports[i])
		}
		j.reports = half
	}
	j.reports = append(j.reports, r)
	close(j.news)
	j.news = make(chan struct{})
}

func (j *Job[A, R, T]) end(outcome T, err error) {
	j.mu.Lock()
	defer j.mu.Unlock()
	j.outcome, j.err = outcome, err
	j.idle.Stop()
	close(j.done)
}

// Ended reports whether the job is over.
func (j *Job[A, R, T]) Ended() bool {
	select {
	case <-j.done:
		return true
	default:
		return false
	}
}

// Done is closed when the job is over.
func (j *Job[A, R, T]) Done() <-chan struct{} { return j.done }

// Outcome returns what came of the job; call it after Done.
func (j *Job[A, R, T]) Outcome() (T, error) {
	j.mu.Lock()
	defer j.mu.Unlock()
	return j.outcome, j.err
}

// Reports returns the reports so far, and a channel that closes with the next.
func (j *Job[A, R, T]) Reports() ([]R, <-chan struct{}) {
	j.mu.Lock()
	defer j.mu.Unlock()
	return slices.Clone(j.reports), j.news
}

// Cancel gives the job up.
func (j *Job[A, R, T]) Cancel() { j.cancel() }

// Watch keeps the job going until the returned function is called; after the
// last watcher it goes on for [Patience].
func (j *Job[A, R, T]) Watch() (leave func()) {
	j.mu.Lock()
	defer j.mu.Unlock()
	j.watchers++
	j.idle.Stop()
	return sync.OnceFunc(func() {
		j.mu.Lock()
		defer j.mu.Unlock()
		if j.watchers--; j.watchers == 0 && !j.Ended() {
			j.idle.Reset(Patience)
		}
	})
}

package jobs

import (
	"context"
	"errors"
	"log/slog"
	"sync"
	"time"

	"example.org/rinkpane/internal/keep/queue"
	"example.org/rinkpane/internal/measure/cores"
)

// Backlog is a desk's queue of jobs: it is opened when they are first asked about, and
// worked until it is closed. It is safe for many requests at once.
type Backlog struct {
	Open    func(context.Context) (*queue.Queue, error)
	Workers int // jobs that this desk works at once, 0 for none
	Kinds   []queue.Doer
	Log     *slog.Logger

	mu     sync.Mutex
	queue  *queue.Queue
	closed bool
	stop   context.CancelFunc
	worked sync.WaitGroup
}

// workCores is how many cores a job on a desk takes where its work can be shared: the rest
// is for those who sit before the desk.
const workCores = 1

// opening is how long a database may take to be opened; own choice, below what an answer may
// take.
const opening = 20 * time.Second

var errClosing = errors.New("the desk is closing")

// Queue opens the queue unless it is open. One that could not be opened is tried again
// the next time.
func (b *Backlog) Queue(ctx context.Context) (*queue.Queue, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch {
	case b.closed:
		return nil, errClosing
	case b.queue != nil:
		return b.queue, nil
	}
	ctx, done := context.WithTimeout(context.WithoutCancel(ctx), opening) // whoever asked may leave meanwhile
	defer done()
	q, err := b.Open(ctx)
	if err != nil {
		return nil, err
	}
	b.queue = q
	if b.Workers > 0 {
		at, stop := context.WithCancel(context.Background())
		b.stop = stop
		b.worked.Go(func() {
			if err := q.Work(cores.AtMost(at, workCores), b.Workers, b.Kinds...); err != nil {
				b.Log.Error("jobs", slog.Any("error", err))
			}
		})
	}
	return q, nil
}

// Close gives back what is at work and closes the queue.
func (b *Backlog) Close() {
	b.mu.Lock()
	defer b.mu.Unlock()
	b.closed = true
	if b.stop != nil {
		b.stop()
	}
	b.worked.Wait()
	if b.queue != nil {
		if err := b.queue.Close(); err != nil {
			b.Log.Warn("jobs", slog.Any("error", err))
		}
		b.queue = nil
	}
}

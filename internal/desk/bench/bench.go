// Package bench runs long work of the desk beside the requests that asked for
// it: few jobs at a time, each watched, and given up when nobody looks any more.
//
//	Start -> waiting -> at work -> done        a page may come and go meanwhile
//	            |          |
//	            '---- given up: cancelled, nobody watching, the desk closes
//
// The model: a job belongs to nobody's request. Whoever shows its progress
// watches it; when the last one has left and none comes back within [Patience],
// it is cancelled. A job that is done keeps its outcome until newer ones push it
// out.
package bench

import (
	"context"
	"errors"
	"sync"
	"time"
)

// How many jobs are at work at once, how many may wait, and how many are kept;
// own choice for two cores.
const (
	atOnce  = 1
	waiting = 3
	kept    = 12
)

// Patience is how long a job goes on while nobody watches.
const Patience = 15 * time.Second

// ErrFull says that too many jobs wait already.
var ErrFull = errors.New("other choices are being worked out; wait until one is done")

// ErrClosed says that the desk closes.
var ErrClosed = errors.New("the desk closes")

// Bench holds the jobs. Make one with New.
type Bench[R, T any] struct {
	ctx   context.Context
	stop  context.CancelFunc
	slots chan struct{}
	jobs  sync.WaitGroup

	mu    sync.Mutex
	byID  map[string]*Job[R, T]
	order []string
}

// New makes a bench.
func New[R, T any]() *Bench[R, T] {
	ctx, stop := context.WithCancel(context.Background())
	return &Bench[R, T]{ctx: ctx, stop: stop, slots: make(chan struct{}, atOnce), byID: map[string]*Job[R, T]{}}
}

// Close cancels every job and waits until they have ended.
func (b *Bench[R, T]) Close() {
	b.stop()
	b.jobs.Wait()
}

// Closing is closed when the bench closes.
func (b *Bench[R, T]) Closing() <-chan struct{} { return b.ctx.Done() }

// Start begins a job under an id of its own: work reports how far it is and
// returns the outcome.
func (b *Bench[R, T]) Start(id string, work func(ctx context.Context, tell func(R)) (T, error)) (*Job[R, T], error) {
	if b.ctx.Err() != nil {
		return nil, ErrClosed
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	open := 0
	for _, j := range b.byID {
		if !j.Ended() {
			open++
		}
	}
	if open >= atOnce+waiting {
		return nil, ErrFull
	}
	ctx, cancel := context.WithCancel(b.ctx)
	j := &Job[R, T]{ID: id, cancel: cancel, done: make(chan struct{}), news: make(chan struct{})}
	j.idle = time.AfterFunc(Patience, cancel)
	b.byID[id], b.order = j, append(b.order, id)
	b.dropOld()
	b.jobs.Go(func() { b.run(ctx, j, work) })
	return j, nil
}

// dropOld forgets the oldest ended jobs beyond those kept.
func (b *Bench[R, T]) dropOld() {
	for i := 0; len(b.order) > kept && i < len(b.order); {
		if id := b.order[i]; b.byID[id].Ended() {
			delete(b.byID, id)
			b.order = append(b.order[:i], b.order[i+1:]...)
			continue
		}
		i++
	}
}

func (b *Bench[R, T]) run(ctx context.Context, j *Job[R, T], work func(context.Context, func(R)) (T, error)) {
	defer j.cancel()
	select {
	case b.slots <- struct{}{}:
		defer func() { <-b.slots }()
	case <-ctx.Done():
		var none T
		j.end(none, ctx.Err())
		return
	}
	j.end(work(ctx, j.tell))
}

// Job returns a job by its id.
func (b *Bench[R, T]) Job(id string) (*Job[R, T], bool) {
	b.mu.Lock()
	defer b.mu.Unlock()
	j, ok := b.byID[id]
	return j, ok
}

package job

import (
	"context"
	"slices"
	"sync"
	"time"
)

// Memory is a [Keeper] that keeps its jobs in memory. Make one with [InMemory].
type Memory[A, R, T any] struct {
	ctx  context.Context
	stop context.CancelFunc
	jobs sync.WaitGroup

	mu     sync.Mutex
	kept   []*Job[A, R, T] // oldest first
	queue  []*Job[A, R, T] // of them, those that wait
	atWork int
	served map[string]int // by owner: the turn in which one of its jobs began
	turn   int
}

// InMemory makes a keeper without jobs.
func InMemory[A, R, T any]() *Memory[A, R, T] {
	ctx, stop := context.WithCancel(context.Background())
	return &Memory[A, R, T]{ctx: ctx, stop: stop, served: map[string]int{}}
}

// Close cancels every job and waits until they have ended.
func (m *Memory[A, R, T]) Close() {
	m.stop()
	m.jobs.Wait()
}

// Closing is closed when the keeper closes.
func (m *Memory[A, R, T]) Closing() <-chan struct{} { return m.ctx.Done() }

// Job returns a job by its id.
func (m *Memory[A, R, T]) Job(id string) (*Job[A, R, T], bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	i := slices.IndexFunc(m.kept, func(j *Job[A, R, T]) bool { return j.ID == id })
	if i < 0 {
		return nil, false
	}
	return m.kept[i], true
}

// Open returns the newest job under way of those that are meant.
func (m *Memory[A, R, T]) Open(meant func(about A) bool) (*Job[A, R, T], bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	for _, j := range slices.Backward(m.kept) {
		if !j.Ended() && meant(j.About) {
			return j, true
		}
	}
	return nil, false
}

// Start begins a job: see [Keeper].
func (m *Memory[A, R, T]) Start(id, owner string, about A, work Work[R, T]) (*Job[A, R, T], error) {
	if m.ctx.Err() != nil {
		return nil, ErrClosed
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	open, own := 0, 0
	for _, j := range m.kept {
		if !j.Ended() {
			open++
			if j.owner == owner {
				own++
			}
		}
	}
	switch {
	case open >= atOnce+waiting:
		return nil, ErrFull
	case owner != "" && own >= atOnce+waiting-1:
		return nil, ErrTurns
	}
	ctx, cancel := context.WithCancel(m.ctx)
	j := &Job[A, R, T]{ID: id, About: about, owner: owner, cancel: cancel, begin: make(chan struct{}), done: make(chan struct{}), news: make(chan struct{})}
	j.idle = time.AfterFunc(Patience, cancel)
	m.kept, m.queue = append(m.kept, j), append(m.queue, j)
	for len(m.kept) > Kept { // the oldest that have ended; at most four have not
		k := slices.IndexFunc(m.kept, (*Job[A, R, T]).Ended)
		if k < 0 {
			break
		}
		m.kept = slices.Delete(m.kept, k, k+1)
	}
	m.next()
	m.jobs.Go(func() { m.run(ctx, j, work) })
	return j, nil
}

// next lets waiting jobs begin while there are free places, each that of the
// owner who was served longest ago, among them the oldest.
func (m *Memory[A, R, T]) next() {
	for m.atWork < atOnce && len(m.queue) > 0 {
		best := 0
		for k, j := range m.queue {
			if m.served[j.owner] < m.served[m.queue[best].owner] {
				best = k
			}
		}
		j := m.queue[best]
		m.queue = slices.Delete(m.queue, best, best+1)
		m.turn++
		m.served[j.owner] = m.turn
		m.atWork++
		close(j.begin)
	}
}

func (m *Memory[A, R, T]) run(ctx context.Context, j *Job[A, R, T], work Work[R, T]) {
	defer j.cancel()
	var outcome T
	err := error(nil)
	select {
	case <-j.begin:
		outcome, err = work(ctx, j.tell)
	case <-ctx.Done():
		err = ctx.Err()
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if k := slices.Index(m.queue, j); k >= 0 { // it never began
		m.queue = slices.Delete(m.queue, k, k+1)
	} else {
		m.atWork--
	}
	j.end(outcome, err)
	m.next()
}

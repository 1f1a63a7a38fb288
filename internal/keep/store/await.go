package store

import (
	"context"
	"sync"
	"time"
)

// lookAgain is how often it is asked whether another program kept something.
const lookAgain = 300 * time.Millisecond

// Await waits for an arena's next event; see [custody.Keeper]. What this program keeps
// is heard of at once, what others keep within 300 ms.
func (s *Store) Await(ctx context.Context, arena string, after int64) error {
	return s.lasts.await(ctx, arena, after)
}

// lastEvents asks for the last Seq of every arena that has events.
func (s *Store) lastEvents(ctx context.Context) (map[string]int64, error) {
	type last struct {
		arena string
		seq   int64
	}
	all, err := list(ctx, s.db, func(row scanner) (l last, err error) { return l, Plain(row.Scan(&l.arena, &l.seq)) }, `SELECT arena, seq FROM event_head`)
	out := make(map[string]int64, len(all))
	for _, l := range all {
		out[l.arena] = l.seq
	}
	return out, err
}

// lasts knows each arena's last event. As long as anybody waits for a later one it asks
// again and again: once for all who wait, however many arenas those are of.
type lasts struct {
	ask   func(ctx context.Context) (map[string]int64, error)
	every time.Duration

	mu      sync.Mutex
	known   map[string]int64 // by arena; may be less than what others kept, never more
	waiting map[*listening]bool
	asking  bool
}

// listening is one who waits for an event of an arena after another.
type listening struct {
	arena string
	after int64
	came  chan error // nil for an event
}

func newLasts(ask func(ctx context.Context) (map[string]int64, error), every time.Duration) *lasts {
	return &lasts{ask: ask, every: every, known: map[string]int64{}, waiting: map[*listening]bool{}}
}

func (l *lasts) await(ctx context.Context, arena string, after int64) error {
	me := &listening{arena, after, make(chan error, 1)}
	if l.join(me) {
		return nil
	}
	select {
	case err := <-me.came:
		return err
	case <-ctx.Done():
		l.mu.Lock()
		defer l.mu.Unlock()
		delete(l.waiting, me)
		return ctx.Err()
	}
}

// join lets one wait, unless what they wait for is known.
func (l *lasts) join(me *listening) (known bool) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.known[me.arena] > me.after {
		return true
	}
	l.waiting[me] = true
	if !l.asking {
		l.asking = true
		go l.follow()
	}
	return false
}

// follow asks until nobody waits.
func (l *lasts) follow() {
	for l.someWait() {
		ctx, cancel := context.WithTimeout(context.Background(), writeTimeout)
		now, err := l.ask(ctx)
		cancel()
		if err != nil {
			l.fail(err)
		}
		l.tell(now)
		time.Sleep(l.every)
	}
}

func (l *lasts) someWait() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.asking = len(l.waiting) > 0
	return l.asking
}

// tell lets those go whose event has come.
func (l *lasts) tell(now map[string]int64) {
	l.mu.Lock()
	defer l.mu.Unlock()
	for arena, seq := range now {
		l.known[arena] = max(l.known[arena], seq)
	}
	for w := range l.waiting {
		if l.known[w.arena] > w.after {
			l.end(w, nil)
		}
	}
}

// fail tells all who wait why they wait in vain.
func (l *lasts) fail(why error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	for w := range l.waiting {
		l.end(w, why)
	}
}

// end lets one go; l is locked.
func (l *lasts) end(w *listening, err error) {
	w.came <- err
	delete(l.waiting, w)
}

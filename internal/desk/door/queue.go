package door

import (
	"context"
	"errors"
	"slices"
	"sync"
	"time"
)

// ErrBusy says that too many sign in at this moment.
var ErrBusy = errors.New("too many sign in at this moment; try again")

// A password is checked alone: each check takes 64 MiB and both cores for some
// tenths of a second. How many may wait for that, and for how long; own choice.
const (
	mostWaiting = 64
	patience    = 40 * time.Second
)

// queue gives those who want a password checked their turns, one at a time. First
// go known browsers, then those from the address with the fewest wrong passwords,
// and among equals the latest, since whoever has waited longest is most likely
// gone. So a flood of guesses holds up nobody but itself.
type queue struct {
	wrong func(address string) float64 // how many wrong passwords came from there of late

	mu      sync.Mutex
	busy    bool
	waiting []*waiter // in order of arrival
}

type waiter struct {
	known bool
	at    string
	turn  chan error // nil when it is this one's turn, ErrBusy when there is no room
}

// turn waits until no other password is being checked; free ends the own turn.
// Errors: ErrBusy, and that of the context.
func (q *queue) turn(ctx context.Context, known bool, at string) (free func(), err error) {
	me := q.line(known, at)
	late := time.NewTimer(patience)
	defer late.Stop()
	select {
	case err := <-me.turn:
		if err != nil {
			return nil, err
		}
		return sync.OnceFunc(q.next), nil
	case <-ctx.Done():
		q.leave(me)
		return nil, ctx.Err()
	case <-late.C:
		q.leave(me)
		return nil, ErrBusy
	}
}

// line puts somebody in the queue, and sends the one away whose turn would be
// last when there is no room.
func (q *queue) line(known bool, at string) *waiter {
	q.mu.Lock()
	defer q.mu.Unlock()
	me := &waiter{known, at, make(chan error, 1)}
	if !q.busy {
		q.busy = true
		me.turn <- nil
		return me
	}
	q.waiting = append(q.waiting, me)
	if len(q.waiting) > mostWaiting {
		q.take(len(q.waiting) - 1).turn <- ErrBusy
	}
	return me
}

// next gives the next their turn.
func (q *queue) next() {
	q.mu.Lock()
	defer q.mu.Unlock()
	if q.busy = len(q.waiting) > 0; q.busy {
		q.take(0).turn <- nil
	}
}

// take takes the one out who has so many before them.
func (q *queue) take(place int) *waiter {
	order := slices.Clone(q.waiting)
	slices.Reverse(order) // the latest first
	slices.SortStableFunc(order, func(a, b *waiter) int {
		switch wa, wb := q.wrong(a.at), q.wrong(b.at); {
		case a.known != b.known && a.known, a.known == b.known && wa < wb:
			return -1
		case a.known != b.known, wa > wb:
			return 1
		}
		return 0
	})
	out := order[place]
	q.waiting = slices.DeleteFunc(q.waiting, func(w *waiter) bool { return w == out })
	return out
}

// leave takes somebody out who waits no more, or passes on the turn they got meanwhile.
func (q *queue) leave(me *waiter) {
	q.mu.Lock()
	waits := slices.Contains(q.waiting, me)
	q.waiting = slices.DeleteFunc(q.waiting, func(w *waiter) bool { return w == me })
	q.mu.Unlock()
	if !waits && <-me.turn == nil {
		q.next()
	}
}

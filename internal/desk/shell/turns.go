package shell

import (
	"context"
	"net/http"
	"slices"
	"sync"
	"time"

	"example.org/rinkpane/internal/desk/door"
)

// turns gives heavy requests their turns: books, drawings, archives, large pictures,
// trials. Few are at work at once, one person's never in every place, and the next is
// that of who was served longest ago; so whoever asks for twenty books waits for
// them alone.
// What a hand waits for, a drag and its preview, is no heavy request and waits
// for no turn.
type turns struct {
	mu      sync.Mutex
	atWork  map[string]int // by person
	busy    int            // at work in all
	waiting []*turn        // in order of arrival
	served  map[string]int // by person who waits or is at work: the last turn of theirs
	last    int
}

type turn struct {
	who   string
	begin chan struct{} // closed when it begins
}

// How many heavy requests are at work at once, how many may wait, of one person and
// in all, how long they wait, and how long with their work; own choice for two
// cores. An answer must be written within a minute of the question.
const (
	heavyAtOnce  = 3
	ownAtOnce    = heavyAtOnce - 1
	mostOwn      = 24
	mostWait     = 96
	longestWait  = 25 * time.Second
	longestHeavy = 50 * time.Second
)

// Why a heavy request is sent away.
var (
	errOwnWork = &Refusal{Status: http.StatusTooManyRequests, What: "Too much of your own work waits on this desk.",
		Cure: "Books, drawings, large pictures and trials of one person are made two at a time: wait until some are done, then ask again.", WaitUntil: "10"}
	errBusy = &Refusal{Status: http.StatusServiceUnavailable, What: "The desk is busy with other work.",
		Cure: "Nothing is lost: ask again in a moment.", WaitUntil: "10"}
)

func newTurns() *turns { return &turns{atWork: map[string]int{}, served: map[string]int{}} }

// Turns returns how many heavy requests are at work, and how many wait.
func (s *Shell) Turns() (atWork, waiting int) {
	s.turns.mu.Lock()
	defer s.turns.mu.Unlock()
	return s.turns.busy, len(s.turns.waiting)
}

// heavy lets an answer wait for its turn.
func (t *turns) heavy(next Answer) Answer {
	return func(w http.ResponseWriter, r *http.Request) error {
		ctx, stop := context.WithTimeout(r.Context(), longestHeavy)
		defer stop()
		who, _ := door.Person(ctx)
		leave, err := t.enter(ctx, who.Name)
		if err != nil {
			return err
		}
		defer leave()
		return next(w, r.WithContext(ctx))
	}
}

// enter waits for the turn of a person, "" where nobody signs in; leave ends it.
// Errors: errOwnWork, errBusy, and ctx's.
func (t *turns) enter(ctx context.Context, who string) (leave func(), err error) {
	me := &turn{who, make(chan struct{})}
	if err := t.join(me); err != nil {
		return nil, err
	}
	late := time.NewTimer(longestWait)
	defer late.Stop()
	select {
	case <-me.begin:
		return func() { t.leave(me) }, nil
	case <-ctx.Done():
		err = ctx.Err()
	case <-late.C:
		err = errBusy
	}
	t.leave(me)
	return nil, err
}

func (t *turns) join(me *turn) error {
	t.mu.Lock()
	defer t.mu.Unlock()
	own := 0
	for _, other := range t.waiting {
		if other.who == me.who {
			own++
		}
	}
	switch {
	case own >= mostOwn:
		return errOwnWork
	case len(t.waiting) >= mostWait:
		return errBusy
	}
	t.waiting = append(t.waiting, me)
	t.next()
	return nil
}

// leave takes a turn out, whether it has begun or still waits.
func (t *turns) leave(me *turn) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if i := slices.Index(t.waiting, me); i >= 0 {
		t.waiting = slices.Delete(t.waiting, i, i+1)
	} else {
		t.busy--
		t.atWork[me.who]--
	}
	if t.atWork[me.who] == 0 && !slices.ContainsFunc(t.waiting, func(o *turn) bool { return o.who == me.who }) {
		delete(t.served, me.who)
		delete(t.atWork, me.who)
	}
	t.next()
}

// next lets those begin whose turn it is; t is locked.
func (t *turns) next() {
	for t.busy < heavyAtOnce {
		best := -1
		for i, w := range t.waiting {
			if t.atWork[w.who] < ownAtOnce && (best < 0 || t.served[w.who] < t.served[t.waiting[best].who]) {
				best = i
			}
		}
		if best < 0 {
			return
		}
		w := t.waiting[best]
		t.waiting = slices.Delete(t.waiting, best, best+1)
		t.last++
		t.busy++
		t.atWork[w.who]++
		t.served[w.who] = t.last
		close(w.begin)
	}
}

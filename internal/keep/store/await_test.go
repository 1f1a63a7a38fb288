package store

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// others is what other programs keep, and how often it was asked for.
type others struct {
	mu    sync.Mutex
	last  map[string]int64
	down  error
	asked atomic.Int64
}

func (o *others) ask(context.Context) (map[string]int64, error) {
	o.asked.Add(1)
	o.mu.Lock()
	defer o.mu.Unlock()
	out := map[string]int64{}
	for arena, seq := range o.last {
		out[arena] = seq
	}
	return out, o.down
}

func (o *others) set(arena string, seq int64, down error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.last[arena], o.down = seq, down
}

// TestManyArenasAreAskedForOnce waits for a thousand arenas: the database is asked for
// all at once, whoever keeps an event lets those go who wait for its arena and nobody
// else, and nothing is asked once nobody waits.
func TestManyArenasAreAskedForOnce(t *testing.T) {
	const arenas, every = 1000, 10 * time.Millisecond
	o := &others{last: map[string]int64{}}
	l := newLasts(o.ask, every)
	begun := time.Now()
	heard := make(chan string, arenas)
	var all sync.WaitGroup
	ctx, leave := context.WithCancel(t.Context())
	for i := range arenas {
		all.Go(func() {
			arena := fmt.Sprint("rink ", i)
			if err := l.await(ctx, arena, 0); err == nil {
				heard <- arena
			} else if !errors.Is(err, context.Canceled) {
				t.Error(err)
			}
		})
	}
	o.set("rink 7", 1, nil)
	if got := <-heard; got != "rink 7" {
		t.Errorf("another program kept an event of rink 7, and %s heard of it", got)
	}
	l.tell(map[string]int64{"rink 8": 3})
	if got := <-heard; got != "rink 8" {
		t.Errorf("this program kept an event of rink 8, and %s heard of it", got)
	}
	leave()
	all.Wait()
	if len(heard) > 0 {
		t.Errorf("%s heard of nothing", <-heard)
	}
	if n, most := o.asked.Load(), int64(time.Since(begun)/every)+2; n > most {
		t.Errorf("asked %d times in %v, want at most %d", n, time.Since(begun), most)
	}
	for l.isAsking() {
		time.Sleep(time.Millisecond)
	}
	n := o.asked.Load()
	time.Sleep(5 * every)
	if more := o.asked.Load() - n; more > 0 {
		t.Errorf("asked %d times more though nobody waits", more)
	}
}

// isAsking reports whether the database is still being asked.
func (l *lasts) isAsking() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.asking
}

// TestWaitingForADatabaseThatIsDown: who waits is told why, may wait anew, and hears of
// what came meanwhile.
func TestWaitingForADatabaseThatIsDown(t *testing.T) {
	down := errors.New("down")
	o := &others{last: map[string]int64{}, down: down}
	l := newLasts(o.ask, time.Millisecond)
	for range 3 {
		if err := l.await(t.Context(), "east", 4); !errors.Is(err, down) {
			t.Fatalf("got %v", err)
		}
	}
	o.set("east", 5, nil)
	if err := l.await(t.Context(), "east", 4); err != nil {
		t.Error(err)
	}
	if err := l.await(t.Context(), "east", 4); err != nil {
		t.Errorf("what is known already: %v", err)
	}
}

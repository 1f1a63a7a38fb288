package door

import (
	"container/list"
	"sync"
	"time"
)

// A pace is how often something may be tried: so many at once, then one each
// interval. Own choice: a person who mistypes is never stopped; who guesses
// passwords gets 180 an hour from one address, and 60 an hour for one name.
type pace struct {
	burst float64
	every time.Duration
}

var (
	perAddress = pace{10, 20 * time.Second}
	perName    = pace{10, time.Minute}
)

// mostTried is how many addresses and names are remembered; the one that was
// tried the longest ago goes first.
const mostTried = 10_000

// tries counts tries by address and by name, each as a bucket that a try takes
// from and time fills up again.
type tries struct {
	mu    sync.Mutex
	order *list.List // of *bucket, the latest first
	at    map[string]*list.Element
}

type bucket struct {
	key  string
	left float64
	seen time.Time
}

func newTries() *tries {
	return &tries{order: list.New(), at: map[string]*list.Element{}}
}

// allow takes one try from a key's bucket and reports whether there was one left.
func (t *tries) allow(now time.Time, key string, p pace) bool {
	t.mu.Lock()
	defer t.mu.Unlock()
	e, ok := t.at[key]
	if !ok {
		e = t.order.PushFront(&bucket{key, p.burst, now})
		t.at[key] = e
		if t.order.Len() > mostTried {
			last := t.order.Back()
			delete(t.at, t.order.Remove(last).(*bucket).key)
		}
	}
	t.order.MoveToFront(e)
	b := e.Value.(*bucket)
	if passed := now.Sub(b.seen); passed > 0 {
		b.left = min(p.burst, b.left+float64(passed)/float64(p.every))
	}
	b.seen = now
	if b.left < 1 {
		return false
	}
	b.left--
	return true
}

// forget fills a key's bucket again.
func (t *tries) forget(key string) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if e, ok := t.at[key]; ok {
		t.order.Remove(e)
		delete(t.at, key)
	}
}

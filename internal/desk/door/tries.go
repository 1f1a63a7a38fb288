package door

import (
	"container/list"
	"sync"
	"time"
)

// A pace is how often something may be done, a password be wrong or a request be
// sent: so many times at once, then once each interval.
type pace struct {
	burst float64
	every time.Duration
}

// Own choice, but for a name: NIST SP 800-63B-4, section 3.2.2, allows 100 wrong
// passwords in a row on one account. A right password takes nothing, so that any
// number of people may sign in from one address.
var (
	perAddress = pace{30, 20 * time.Second}
	perPair    = pace{10, time.Minute} // one name from one address, or from one known browser
	perName    = pace{100, 36 * time.Second}
)

// A limit is a pace on what a key stands for.
type limit struct {
	key string
	pace
}

// limits are what a try must keep to: from a browser that has proved to be the
// person's before, its own pace; from elsewhere, those of name and address. A
// right password takes back what was wrong before it under the first.
func limits(name, at, known string) []limit {
	if known != "" {
		return []limit{{"browser " + known, perPair}}
	}
	return []limit{{"as " + name + " at " + at, perPair}, {"as " + name, perName}, {"at " + at, perAddress}}
}

// mostTried is how many addresses and names are remembered; the one that was
// tried the longest ago goes first.
const mostTried = 10_000

// tries counts by address, by name or by session, each as a bucket that a try takes
// from and time fills up again.
type tries struct {
	now   func() time.Time
	mu    sync.Mutex
	order *list.List // of *bucket, the latest first
	at    map[string]*list.Element
}

type bucket struct {
	key  string
	left float64
	seen time.Time
}

func newTries(now func() time.Time) *tries {
	return &tries{now: now, order: list.New(), at: map[string]*list.Element{}}
}

// left returns how many more a limit allows now.
func (t *tries) left(l limit) float64 {
	t.mu.Lock()
	defer t.mu.Unlock()
	e, ok := t.at[l.key]
	if !ok {
		return l.burst
	}
	return e.Value.(*bucket).fill(t.now(), l.pace)
}

// all reports whether every limit allows one more.
func (t *tries) all(limits []limit) bool {
	for _, l := range limits {
		if t.left(l) < 1 {
			return false
		}
	}
	return true
}

// take takes one from each limit.
func (t *tries) take(limits []limit) {
	t.mu.Lock()
	defer t.mu.Unlock()
	for _, l := range limits {
		e, ok := t.at[l.key]
		if !ok {
			e = t.order.PushFront(&bucket{l.key, l.burst, t.now()})
			t.at[l.key] = e
			if t.order.Len() > mostTried {
				delete(t.at, t.order.Remove(t.order.Back()).(*bucket).key)
			}
		}
		t.order.MoveToFront(e)
		b := e.Value.(*bucket)
		b.left = max(0, b.fill(t.now(), l.pace)-1)
	}
}

// fill adds what time has brought since the bucket was last looked into.
func (b *bucket) fill(now time.Time, p pace) float64 {
	if passed := now.Sub(b.seen); passed > 0 {
		b.left = min(p.burst, b.left+float64(passed)/float64(p.every))
	}
	b.seen = now
	return b.left
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

package store

import (
	"fmt"
	"slices"
	"sync"
	"time"

	"example.org/rinkpane/internal/decide/custody"
)

// waiting is one call that waits until its events are durable.
type waiting struct {
	now      time.Time
	events   []custody.Event   // that can be kept
	receipts []custody.Receipt // of all that were given, in their order
	err      error
	done     chan struct{} // closed once receipts and err are there
}

// note writes the receipt of an event that can be kept; kept is what stands under its
// id, and again says that it stood there before.
func (w *waiting) note(e, kept custody.Event, again bool) {
	i := slices.IndexFunc(w.receipts, func(r custody.Receipt) bool { return r.ID == e.ID && r.Refused == nil && r.Seq == 0 })
	if !kept.Same(e) {
		w.receipts[i].Refused = fmt.Errorf("event %s: %w", e.ID, custody.ErrForged)
		return
	}
	w.receipts[i].Seq, w.receipts[i].Again = kept.Seq, again
}

// together gathers what several calls want to keep into one transaction.
type together struct {
	turn chan struct{} // holds one: who has put something in writes

	mu  sync.Mutex
	all []*waiting
}

func newTogether() *together { return &together{turn: make(chan struct{}, 1)} }

func (t *together) add(w *waiting) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.all = append(t.all, w)
}

// mostTogether is how many events go into one transaction: enough to wait for the disk
// seldom, few enough that nobody waits long.
const mostTogether = 4000

// take takes those that waited longest.
func (t *together) take() []*waiting {
	t.mu.Lock()
	defer t.mu.Unlock()
	n, events := 0, 0
	for n < len(t.all) && (n == 0 || events+len(t.all[n].events) <= mostTogether) {
		events += len(t.all[n].events)
		n++
	}
	out := t.all[:n]
	t.all = t.all[n:]
	return out
}

// endAll tells those who wait what became of their events.
func endAll(all []*waiting, err error) {
	for _, w := range all {
		if w.err = err; err != nil {
			w.receipts = nil
		}
		close(w.done)
	}
}

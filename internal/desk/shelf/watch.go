package shelf

import (
	"errors"
	"sync"
)

// mostWatchers is how many may watch arenas at once; own choice: each holds one
// connection and some 40 kB.
const mostWatchers = 2000

// ErrCrowded says that as many watch as may.
var ErrCrowded = errors.New("too many watch already")

// watchers are those who want to hear of saves, by arena.
type watchers struct {
	mu     sync.Mutex
	by     map[string]map[chan struct{}]bool
	count  int
	closed chan struct{} // closed when the shelf closes
	once   sync.Once
}

func newWatchers() *watchers {
	return &watchers{by: map[string]map[chan struct{}]bool{}, closed: make(chan struct{})}
}

// Watch returns a channel that hears after each save of an arena by this program,
// once however many there were meanwhile; leave ends it. Error: [ErrCrowded].
func (s *Shelf) Watch(id string) (saved <-chan struct{}, leave func(), err error) {
	w := s.watchers
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.count >= mostWatchers {
		return nil, nil, ErrCrowded
	}
	w.count++
	me := make(chan struct{}, 1)
	if w.by[id] == nil {
		w.by[id] = map[chan struct{}]bool{}
	}
	w.by[id][me] = true
	return me, sync.OnceFunc(func() {
		w.mu.Lock()
		defer w.mu.Unlock()
		w.count--
		if delete(w.by[id], me); len(w.by[id]) == 0 {
			delete(w.by, id)
		}
	}), nil
}

// Tell wakes those who watch something of another kind than an arena's saves, under a
// name that no arena may have.
func (s *Shelf) Tell(id string) { s.watchers.tell(id) }

// tell wakes those who watch an arena.
func (w *watchers) tell(id string) {
	w.mu.Lock()
	defer w.mu.Unlock()
	for one := range w.by[id] {
		select {
		case one <- struct{}{}:
		default: // it has yet to look
		}
	}
}

// Closing is closed when the shelf closes: who watches leaves.
func (s *Shelf) Closing() <-chan struct{} { return s.watchers.closed }

// Close sends those away who watch.
func (s *Shelf) Close() { s.watchers.once.Do(func() { close(s.watchers.closed) }) }

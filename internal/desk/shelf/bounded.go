package shelf

import (
	"container/list"
	"sync"
)

// bounded keeps what was worked out for a key, at most so many; the one that
// was not asked for the longest goes first. Two that ask for the same key at
// once share the work.
type bounded[K comparable, V any] struct {
	most  int
	mu    sync.Mutex
	order *list.List // of *kept, the latest asked first
	at    map[K]*list.Element
}

type kept[K comparable, V any] struct {
	key  K
	work func() (V, error)
}

func newBounded[K comparable, V any](most int) *bounded[K, V] {
	return &bounded[K, V]{most: most, order: list.New(), at: map[K]*list.Element{}}
}

// get returns what is kept for a key, or works it out. An error is told to all
// who wait, and not kept.
func (b *bounded[K, V]) get(key K, work func() (V, error)) (V, error) {
	b.mu.Lock()
	e, ok := b.at[key]
	if ok {
		b.order.MoveToFront(e)
	} else {
		e = b.order.PushFront(&kept[K, V]{key, sync.OnceValues(work)})
		b.at[key] = e
		if b.order.Len() > b.most {
			last := b.order.Back()
			delete(b.at, b.order.Remove(last).(*kept[K, V]).key)
		}
	}
	do := e.Value.(*kept[K, V]).work
	b.mu.Unlock()
	v, err := do()
	if err != nil {
		b.drop(key, e)
	}
	return v, err
}

// drop forgets what is kept for a key, unless it is another by now.
func (b *bounded[K, V]) drop(key K, e *list.Element) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.at[key] == e {
		b.order.Remove(e)
		delete(b.at, key)
	}
}

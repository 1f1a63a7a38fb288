package shelf

import (
	"container/list"
	"context"
	"fmt"
	"sync"
)

// bounded keeps what was worked out for a key, at most so many; the one that
// was not asked for the longest goes first. Those who ask for the same key at
// once share the work, which goes on as long as one of them waits.
type bounded[K comparable, V any] struct {
	most  int
	mu    sync.Mutex
	order *list.List // of *kept, the latest asked first
	at    map[K]*list.Element
}

type kept[K comparable, V any] struct {
	key     K
	stop    context.CancelFunc
	waiting int           // who wait for it
	done    chan struct{} // closed when it is worked out
	value   V
	err     error
}

func newBounded[K comparable, V any](most int) *bounded[K, V] {
	return &bounded[K, V]{most: most, order: list.New(), at: map[K]*list.Element{}}
}

// get returns what is kept for a key, or works it out. An error is told to all
// who wait, and not kept. It returns ctx's error when ctx ends before; work ends
// early when nobody waits any longer.
func (b *bounded[K, V]) get(ctx context.Context, key K, work func(context.Context) (V, error)) (V, error) {
	b.mu.Lock()
	e, ok := b.at[key]
	if ok {
		b.order.MoveToFront(e)
	} else {
		e = b.begin(ctx, key, work)
	}
	k := e.Value.(*kept[K, V])
	k.waiting++
	b.mu.Unlock()
	select {
	case <-k.done:
		return k.value, k.err
	case <-ctx.Done():
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	if k.waiting--; k.waiting == 0 {
		k.stop()
		b.drop(e)
	}
	var none V
	return none, ctx.Err()
}

// begin starts the work for a key; b is locked.
func (b *bounded[K, V]) begin(ctx context.Context, key K, work func(context.Context) (V, error)) *list.Element {
	ctx, stop := context.WithCancel(context.WithoutCancel(ctx))
	k := &kept[K, V]{key: key, stop: stop, done: make(chan struct{})}
	e := b.order.PushFront(k)
	b.at[key] = e
	if b.order.Len() > b.most {
		b.drop(b.order.Back())
	}
	go func() {
		defer stop()
		value, err := whole(ctx, work)
		b.mu.Lock()
		defer b.mu.Unlock()
		if k.value, k.err = value, err; err != nil {
			b.drop(e)
		}
		close(k.done)
	}()
	return e
}

// whole does work whose faults would end the program as an error of its own.
func whole[V any](ctx context.Context, work func(context.Context) (V, error)) (v V, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			err = fmt.Errorf("a fault of the program: %v", fault)
		}
	}()
	return work(ctx)
}

// drop forgets what is kept at a place, unless it is gone by now; b is locked.
func (b *bounded[K, V]) drop(e *list.Element) {
	if key := e.Value.(*kept[K, V]).key; b.at[key] == e {
		b.order.Remove(e)
		delete(b.at, key)
	}
}

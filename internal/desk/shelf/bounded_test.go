package shelf

import (
	"context"
	"errors"
	"sync"
	"sync/atomic"
	"testing"
)

func TestBoundedKeepsTheLatestAsked(t *testing.T) {
	b := newBounded[int, int](2)
	worked := map[int]int{}
	get := func(k int) {
		if v, err := b.get(t.Context(), k, func(context.Context) (int, error) { worked[k]++; return 10 * k, nil }); v != 10*k || err != nil {
			t.Fatalf("%d: %d, %v", k, v, err)
		}
	}
	for _, k := range []int{1, 2, 1, 3, 1, 2} { // 3 puts 2 out, 2 puts 3 out
		get(k)
	}
	if worked[1] != 1 || worked[2] != 2 || worked[3] != 1 || len(b.at) != 2 || b.order.Len() != 2 {
		t.Errorf("worked %v, kept %d", worked, len(b.at))
	}
}

func TestBoundedSharesWorkAndForgetsErrors(t *testing.T) {
	b := newBounded[string, int](4)
	var works atomic.Int64
	start := make(chan struct{})
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			<-start
			if v, err := b.get(t.Context(), "a", func(context.Context) (int, error) { return int(works.Add(1)), nil }); v != 1 || err != nil {
				t.Errorf("%d, %v", v, err)
			}
		})
	}
	close(start)
	wg.Wait()
	if works.Load() != 1 {
		t.Errorf("worked %d times", works.Load())
	}
	bad := errors.New("bad")
	if _, err := b.get(t.Context(), "b", func(context.Context) (int, error) { return 0, bad }); !errors.Is(err, bad) {
		t.Error(err)
	}
	if v, err := b.get(t.Context(), "b", func(context.Context) (int, error) { return 7, nil }); v != 7 || err != nil {
		t.Errorf("an error was kept: %d, %v", v, err)
	}
}

// TestBoundedWorkEndsWithTheLastWhoWaits: of two who wait the first may leave; when
// both have, the work is told to end, and who asks next begins anew.
func TestBoundedWorkEndsWithTheLastWhoWaits(t *testing.T) {
	b := newBounded[string, int](4)
	began, ended := make(chan struct{}), make(chan error, 1)
	work := func(ctx context.Context) (int, error) {
		close(began)
		<-ctx.Done()
		ended <- ctx.Err()
		return 0, ctx.Err()
	}
	first, leave := context.WithCancel(t.Context())
	second, leaveToo := context.WithCancel(t.Context())
	left := make(chan error, 2)
	wait := func(ctx context.Context) {
		_, err := b.get(ctx, "a", work)
		left <- err
	}
	go wait(first)
	<-began
	go wait(second)
	for waiting := 0; waiting < 2; {
		b.mu.Lock()
		waiting = b.at["a"].Value.(*kept[string, int]).waiting
		b.mu.Unlock()
	}
	leave()
	if err := <-left; !errors.Is(err, context.Canceled) || len(ended) > 0 {
		t.Errorf("the first left: %v, work ended %v", err, len(ended) > 0)
	}
	leaveToo()
	if err := <-left; !errors.Is(err, context.Canceled) {
		t.Errorf("the second left: %v", err)
	}
	if err := <-ended; !errors.Is(err, context.Canceled) {
		t.Errorf("the work ended with %v", err)
	}
	if v, err := b.get(t.Context(), "a", func(context.Context) (int, error) { return 3, nil }); v != 3 || err != nil {
		t.Errorf("asked anew: %d, %v", v, err)
	}
	if _, err := b.get(t.Context(), "p", func(context.Context) (int, error) { panic("a slip") }); err == nil || len(b.at) != 1 {
		t.Errorf("a fault: %v, %d kept", err, len(b.at))
	}
}

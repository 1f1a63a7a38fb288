package shelf

import (
	"errors"
	"sync"
	"sync/atomic"
	"testing"
)

func TestBoundedKeepsTheLatestAsked(t *testing.T) {
	b := newBounded[int, int](2)
	worked := map[int]int{}
	get := func(k int) {
		if v, err := b.get(k, func() (int, error) { worked[k]++; return 10 * k, nil }); v != 10*k || err != nil {
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
			if v, err := b.get("a", func() (int, error) { return int(works.Add(1)), nil }); v != 1 || err != nil {
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
	if _, err := b.get("b", func() (int, error) { return 0, bad }); !errors.Is(err, bad) {
		t.Error(err)
	}
	if v, err := b.get("b", func() (int, error) { return 7, nil }); v != 7 || err != nil {
		t.Errorf("an error was kept: %d, %v", v, err)
	}
}

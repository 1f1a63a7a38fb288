package cores_test

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"sync/atomic"
	"testing"

	"example.org/rinkpane/internal/measure/cores"
)

// Every number is done once, whatever the number of cores.
func TestEachNumberOnce(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, procs := range []int{1, 2, 7} {
		runtime.GOMAXPROCS(procs)
		for _, n := range []int{-1, 0, 1, 2, 100} {
			done := make([]atomic.Int32, max(n, 0))
			cores.Each(n, func(i int) { done[i].Add(1) })
			for i := range done {
				if got := done[i].Load(); got != 1 {
					t.Errorf("%d cores, %d of %d: done %d times", procs, i, n, got)
				}
			}
		}
	}
}

func TestTryReturnsTheFirstErrorByNumber(t *testing.T) {
	err := cores.Try(50, func(i int) error {
		if i%10 == 7 {
			return fmt.Errorf("number %d", i)
		}
		return nil
	})
	if err == nil || err.Error() != "number 7" {
		t.Errorf("%v, expected number 7", err)
	}
	if err := cores.Try(3, func(int) error { return nil }); err != nil {
		t.Error(err)
	}
}

// The workers' scratch adds up to the same sum on any number of cores, and a
// context that ends stops the work.
func TestScratchAndContext(t *testing.T) {
	own, err := cores.With(t.Context(), 1000, func() *int { return new(int) }, func(sum *int, i int) { *sum += i })
	total := 0
	for _, s := range own {
		total += *s
	}
	if err != nil || total != 499500 {
		t.Errorf("%d, %v; expected 499500", total, err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	var begun atomic.Int32
	_, err = cores.With(ctx, 1e6, func() int { return 0 }, func(int, int) {
		if begun.Add(1) == 10 {
			cancel()
		}
	})
	if n := int(begun.Load()); !errors.Is(err, context.Canceled) || n > 10+2*runtime.GOMAXPROCS(0) {
		t.Errorf("%d begun after the tenth cancelled, %v", n, err)
	}
}

// TestWorkThatNobodyWaitsForTakesFewCores counts how many are at work at once.
func TestWorkThatNobodyWaitsForTakesFewCores(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(4))
	var now, most atomic.Int32
	own, err := cores.With(cores.AtMost(t.Context(), 1), 50, func() *int { return new(int) }, func(done *int, _ int) {
		most.Store(max(most.Load(), now.Add(1)))
		runtime.Gosched()
		now.Add(-1)
		*done++
	})
	if err != nil || len(own) != 1 || *own[0] != 50 || most.Load() != 1 {
		t.Errorf("%d workers, %d at once, %v", len(own), most.Load(), err)
	}
}

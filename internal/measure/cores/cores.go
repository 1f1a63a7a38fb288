// Package cores answers: how is work shared over the machine's cores?
//
// Work is numbered, and what one number computes depends on no other, so that
// results do not depend on how many cores there are. Workers take the numbers in
// rising order as they come free.
package cores

import (
	"context"
	"runtime"
	"sync"
	"sync/atomic"
)

// Each calls do for 0 to n-1.
func Each(n int, do func(i int)) {
	_, _ = With(context.Background(), n, func() struct{} { return struct{}{} }, func(_ struct{}, i int) { do(i) })
}

// Try calls do for 0 to n-1 and returns the error of the least number that
// failed, nil when none did. All numbers are tried.
func Try(n int, do func(i int) error) error {
	errs := make([]error, n)
	Each(n, func(i int) { errs[i] = do(i) })
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// With calls do for 0 to n-1; each worker makes scratch of its own first, which
// it hands to all its calls and leaves to the caller at the end. Which worker
// takes which number is left to chance, so what is added up from the scratch must
// not depend on it. When the context ends, no further number is begun, and its
// error is returned.
func With[T any](ctx context.Context, n int, scratch func() T, do func(own T, i int)) ([]T, error) {
	workers := min(n, runtime.GOMAXPROCS(0))
	if most, ok := ctx.Value(atMost{}).(int); ok {
		workers = min(workers, most)
	}
	all := make([]T, max(workers, 0))
	var next atomic.Int64
	work := func(w int) {
		all[w] = scratch()
		for ctx.Err() == nil {
			i := int(next.Add(1)) - 1
			if i >= n {
				return
			}
			do(all[w], i)
		}
	}
	var wait sync.WaitGroup
	for w := 1; w < workers; w++ {
		wait.Go(func() { work(w) })
	}
	if workers > 0 {
		work(0)
	}
	wait.Wait()
	return all, ctx.Err()
}

// atMost is the key of how many cores work in a context may take.
type atMost struct{}

// AtMost returns a context in which [With] and [EachUntil] take so many cores at most:
// for work that nobody waits for, beside work that somebody does.
func AtMost(ctx context.Context, most int) context.Context {
	return context.WithValue(ctx, atMost{}, most)
}

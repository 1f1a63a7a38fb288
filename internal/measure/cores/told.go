package cores

import (
	"context"
	"sync"
)

// teller is the key of who is told in a context.
type teller struct{}

// Told returns a context in which long work tells how far it is: stage by stage,
// with the share of the stage that is done, from 0 to 1. tell is never called by
// two goroutines at once. Work that nobody watches tells nobody.
func Told(ctx context.Context, tell func(stage string, share float64)) context.Context {
	return context.WithValue(ctx, teller{}, tell)
}

// Tell tells who watches how far a stage is. Of one stage it is called by one
// goroutine at a time.
func Tell(ctx context.Context, stage string, share float64) {
	if tell, ok := ctx.Value(teller{}).(func(string, float64)); ok {
		tell(stage, share)
	}
}

// Steps returns what is called after each of a stage's n steps, by any goroutine.
func Steps(ctx context.Context, stage string, n int) (done func()) {
	var one sync.Mutex
	steps := 0
	return func() {
		one.Lock()
		defer one.Unlock()
		steps++
		Tell(ctx, stage, float64(steps)/float64(n))
	}
}

// EachUntil is [Each] with the work's steps told as a stage's, until ctx ends,
// whose error it returns: no further number is begun then.
func EachUntil(ctx context.Context, stage string, n int, do func(i int)) error {
	step := Steps(ctx, stage, n)
	_, err := With(ctx, n, func() struct{} { return struct{}{} }, func(_ struct{}, i int) {
		do(i)
		step()
	})
	return err
}

package picture

import (
	"context"
	"runtime"
	"testing"
)

// TestDarkroomDropsWhatNobodyWants: a picture given up while it waits is never
// drawn, and too many waiting ones are refused.
func TestDarkroomDropsWhatNobodyWants(t *testing.T) {
	d := newDarkroom()
	hold, begun := make(chan struct{}), make(chan struct{}, drawnAtOnce)
	done := make(chan error, drawnAtOnce)
	for range drawnAtOnce {
		go func() {
			done <- d.draw(context.Background(), func() error { begun <- struct{}{}; <-hold; return nil })
		}()
	}
	for range drawnAtOnce {
		<-begun
	}
	gone, leave := context.WithCancel(context.Background())
	leave()
	drawn := false
	if err := d.draw(gone, func() error { drawn = true; return nil }); err == nil || drawn {
		t.Errorf("a picture that was given up: error %v, drawn %v", err, drawn)
	}
	waiting, stop := context.WithCancel(context.Background())
	ended := make(chan error, mostWaiting)
	for range mostWaiting {
		go func() { ended <- d.draw(waiting, func() error { return nil }) }()
	}
	for len(d.queue) < cap(d.queue) {
		runtime.Gosched()
	}
	if err := d.draw(context.Background(), func() error { return nil }); err != errQueue {
		t.Errorf("one too many: %v", err)
	}
	stop()
	for range mostWaiting {
		<-ended
	}
	close(hold)
	for range drawnAtOnce {
		if err := <-done; err != nil {
			t.Error(err)
		}
	}
}

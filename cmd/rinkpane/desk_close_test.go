package main

import (
	"testing"
	"time"
)

// A store that does not end, at work for others, does not hold the desk's end: with
// what the desk waits for itself (TestServeEndsWhateverRuns) it ends within 10 s.
func TestAStoreDoesNotHoldTheDesksEnd(t *testing.T) {
	release := make(chan struct{})
	defer close(release)
	began := time.Now()
	closeWithin(storeTimeout, func() error { <-release; return nil })
	if took := time.Since(began); took < storeTimeout || took > storeTimeout+time.Second {
		t.Errorf("left the store after %v", took)
	}
	closed := false
	closeWithin(storeTimeout, func() error { closed = true; return nil })
	if !closed {
		t.Error("the store was not closed")
	}
}

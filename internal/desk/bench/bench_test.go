package bench

import (
	"context"
	"errors"
	"testing"
	"time"
)

func TestJobsReportAndEnd(t *testing.T) {
	b := New[int, string]()
	defer b.Close()
	j, err := b.Start("one", func(_ context.Context, tell func(int)) (string, error) {
		for i := range 2000 {
			tell(i)
		}
		return "done", nil
	})
	if err != nil {
		t.Fatal(err)
	}
	<-j.Done()
	got, err := j.Outcome()
	reports, _ := j.Reports()
	if got != "done" || err != nil || len(reports) > mostReports || reports[len(reports)-1] != 1999 {
		t.Errorf("%q, %v, %d reports", got, err, len(reports))
	}
	if again, ok := b.Job("one"); !ok || again != j {
		t.Error("the job is not found again")
	}
}

// TestTooManyJobsAreRefused fills the bench, cancels one and starts another.
func TestTooManyJobsAreRefused(t *testing.T) {
	b := New[int, string]()
	wait := func(ctx context.Context, _ func(int)) (string, error) {
		<-ctx.Done()
		return "", ctx.Err()
	}
	var first *Job[int, string]
	for i := range atOnce + waiting {
		j, err := b.Start(string(rune('a'+i)), wait)
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = j
		}
	}
	if _, err := b.Start("z", wait); !errors.Is(err, ErrFull) {
		t.Errorf("one too many: %v", err)
	}
	first.Cancel()
	<-first.Done()
	last, err := b.Start("z", wait)
	if err != nil {
		t.Fatalf("after one was cancelled: %v", err)
	}
	b.Close()
	if _, err := last.Outcome(); !last.Ended() || !errors.Is(err, context.Canceled) {
		t.Errorf("after the bench closed: ended %v, %v", last.Ended(), err)
	}
	if _, err := b.Start("y", wait); !errors.Is(err, ErrClosed) {
		t.Errorf("on a closed bench: %v", err)
	}
}

// TestNobodyWatching: a job goes on while somebody watches and ends after the
// last one left; the patience is cut short here.
func TestNobodyWatching(t *testing.T) {
	b := New[int, string]()
	defer b.Close()
	j, err := b.Start("one", func(ctx context.Context, _ func(int)) (string, error) {
		<-ctx.Done()
		return "", ctx.Err()
	})
	if err != nil {
		t.Fatal(err)
	}
	leave := j.Watch()
	also := j.Watch()
	leave()
	leave() // counts once
	j.mu.Lock()
	if j.watchers != 1 {
		t.Errorf("%d watchers, want 1", j.watchers)
	}
	j.mu.Unlock()
	also()
	j.mu.Lock()
	j.idle.Reset(time.Millisecond)
	j.mu.Unlock()
	<-j.Done()
	if _, err := j.Outcome(); !errors.Is(err, context.Canceled) {
		t.Errorf("ended with %v", err)
	}
}

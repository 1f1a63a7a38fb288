package job

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"
)

func TestJobsReportAndEnd(t *testing.T) {
	b := InMemory[string, int, string]()
	defer b.Close()
	j, err := b.Start("one", "", "a choice", func(_ context.Context, tell func(int)) (string, error) {
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
	if again, ok := b.Job("one"); !ok || again != j || j.About != "a choice" {
		t.Error("the job is not found again")
	}
}

// TestTooManyJobsAreRefused fills the keeper, cancels one and starts another.
func TestTooManyJobsAreRefused(t *testing.T) {
	b := InMemory[string, int, string]()
	wait := func(ctx context.Context, _ func(int)) (string, error) {
		<-ctx.Done()
		return "", ctx.Err()
	}
	var first *Job[string, int, string]
	for i := range atOnce + waiting {
		j, err := b.Start(string(rune('a'+i)), "", "", wait)
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = j
		}
	}
	if _, err := b.Start("z", "", "", wait); !errors.Is(err, ErrFull) {
		t.Errorf("one too many: %v", err)
	}
	first.Cancel()
	<-first.Done()
	last, err := b.Start("z", "", "", wait)
	if err != nil {
		t.Fatalf("after one was cancelled: %v", err)
	}
	b.Close()
	if _, err := last.Outcome(); !last.Ended() || !errors.Is(err, context.Canceled) {
		t.Errorf("after the keeper closed: ended %v, %v", last.Ended(), err)
	}
	if _, err := b.Start("y", "", "", wait); !errors.Is(err, ErrClosed) {
		t.Errorf("of a closed keeper: %v", err)
	}
}

// TestOpenFindsWhatIsUnderWay: the newest that is meant and has not ended.
func TestOpenFindsWhatIsUnderWay(t *testing.T) {
	b := InMemory[string, int, string]()
	defer b.Close()
	start := func(id, about string) *Job[string, int, string] {
		j, err := b.Start(id, "", about, func(ctx context.Context, _ func(int)) (string, error) {
			<-ctx.Done()
			return "", ctx.Err()
		})
		if err != nil {
			t.Fatal(err)
		}
		return j
	}
	start("1", "here")
	newest := start("2", "here")
	start("3", "elsewhere")
	found := func() string {
		if j, ok := b.Open(func(about string) bool { return about == "here" }); ok {
			return j.ID
		}
		return "none"
	}
	if id := found(); id != "2" {
		t.Errorf("found %s, want 2", id)
	}
	newest.Cancel()
	<-newest.Done()
	if id := found(); id != "1" {
		t.Errorf("after 2 has ended: found %s, want 1", id)
	}
	if _, ok := b.Open(func(about string) bool { return about == "nowhere" }); ok {
		t.Error("found a job that nobody asked for")
	}
}

// TestNobodyWatching: a job goes on while somebody watches and ends after the
// last one left; the patience is cut short here.
func TestNobodyWatching(t *testing.T) {
	b := InMemory[string, int, string]()
	defer b.Close()
	j, err := b.Start("one", "", "a choice", func(ctx context.Context, _ func(int)) (string, error) {
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

// TestOwnersTakeTurns: who asked for much waits behind who asked for one, and
// never fills every place.
func TestOwnersTakeTurns(t *testing.T) {
	var m Keeper[string, int, string] = InMemory[string, int, string]()
	defer m.Close()
	began, release := make(chan string), make(chan struct{})
	start := func(id, owner string) (*Job[string, int, string], error) {
		return m.Start(id, owner, "", func(ctx context.Context, _ func(int)) (string, error) {
			began <- id
			<-release
			return "", ctx.Err()
		})
	}
	for _, id := range []string{"a1", "a2", "a3"} {
		if _, err := start(id, "ada"); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := start("a4", "ada"); !errors.Is(err, ErrTurns) {
		t.Errorf("a fourth of one owner: %v", err)
	}
	if _, err := start("b1", "bo"); err != nil {
		t.Fatal(err)
	}
	var order []string
	for range 4 {
		order = append(order, <-began)
		release <- struct{}{}
	}
	if got := strings.Join(order, " "); got != "a1 b1 a2 a3" {
		t.Errorf("began in the order %s", got)
	}
}

// TestOnlyTheLastAreKept: the number of jobs that are remembered is bounded.
func TestOnlyTheLastAreKept(t *testing.T) {
	m := InMemory[string, int, string]()
	defer m.Close()
	for i := range 2 * Kept {
		j, err := m.Start(fmt.Sprint(i), "", "", func(context.Context, func(int)) (string, error) { return "", nil })
		if err != nil {
			t.Fatal(err)
		}
		<-j.Done()
	}
	kept := 0
	for i := range 2 * Kept {
		if _, ok := m.Job(fmt.Sprint(i)); ok {
			kept++
		}
	}
	if kept != Kept {
		t.Errorf("%d jobs are kept, want %d", kept, Kept)
	}
}

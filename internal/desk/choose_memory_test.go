package desk

import (
	"runtime"
	"strings"
	"testing"
)

// heldByAChoice is the most that a finished choice may hold, in bytes: its
// answer and the arena it is about, but nothing of its study, whose scores alone
// take moments x places x 4.
const heldByAChoice = 1 << 20

// inUse returns the bytes in use after everything unused is gone.
func inUse() uint64 {
	var m runtime.MemStats
	runtime.GC()
	runtime.GC()
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// TestFinishedChoicesAreSmall makes two choices of 20,000 moments and weighs
// what stays: with their studies they held some 18 MB each.
func TestFinishedChoicesAreSmall(t *testing.T) {
	if testing.Short() {
		t.Skip("the race detector changes what memory holds; weighed without it")
	}
	h, d, _ := ownDesk(t, false)
	t.Cleanup(d.jobs.Close)
	finish := func(wishes string) {
		w := ask(t, h, "POST", choosePath, wishes)
		_, job, ok := strings.Cut(w.Header().Get("Location"), "job=")
		if !ok {
			t.Fatalf("started with %d\n%.300s", w.Code, w.Body)
		}
		j, _ := d.jobs.Job(job)
		<-j.Done()
		if _, err := j.Outcome(); err != nil {
			t.Fatal(err)
		}
	}
	finish(quickWishes) // what is made once, whoever asks
	before := inUse()
	const choices = 2
	for range choices {
		finish(strings.ReplaceAll(quickWishes, "moments=300", "moments=20000"))
	}
	after := inUse()
	if held := (int64(after) - int64(before)) / choices; held > heldByAChoice {
		t.Errorf("a finished choice holds %d bytes, at most %d are promised", held, heldByAChoice)
	} else {
		t.Logf("a finished choice holds %d bytes", held)
	}
}

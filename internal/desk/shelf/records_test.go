package shelf

import (
	"context"
	"fmt"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/custody"
)

// counting is a keeper with one event an arena that counts how often each was read anew.
type counting struct {
	custody.Keeper
	anew map[string]int
}

func (c *counting) Since(_ context.Context, arena string, after int64, _ int) ([]custody.Event, error) {
	if after > 0 {
		return nil, nil
	}
	c.anew[arena]++
	return []custody.Event{{ID: custody.IDOf("000000000000000a", 1), Arena: arena, Seq: 1, Told: time.Unix(1e9, 0), Fact: custody.Moved{Cover: "B1-1", State: custody.In}}}, nil
}

// TestRecordsAreBounded reads more arenas' records than are kept: one in use is read once,
// the one that was not asked for the longest is read anew, and says the same.
func TestRecordsAreBounded(t *testing.T) {
	k := &counting{anew: map[string]int{}}
	r := NewRecords(k)
	ask := func(arena string) {
		t.Helper()
		if l, err := r.Of(t.Context(), arena); err != nil || l.Seq() != 1 {
			t.Fatalf("%s: up to event %d, %v", arena, l.Seq(), err)
		}
	}
	ask("left")
	for i := range mostRecords {
		ask("in use")
		ask(fmt.Sprint("other ", i))
	}
	ask("left")
	if k.anew["in use"] != 1 || k.anew["left"] != 2 {
		t.Errorf("read anew: in use %d times, left %d times, want 1 and 2", k.anew["in use"], k.anew["left"])
	}
}

package door

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"
)

// turns lets people queue while one is busy, then gives all their turns and
// returns who came when.
func turns(t *testing.T, q *queue, people ...waiter) string {
	t.Helper()
	first := q.line(false, "first")
	if err := <-first.turn; err != nil {
		t.Fatal(err)
	}
	var waiting []*waiter
	for _, p := range people {
		waiting = append(waiting, q.line(p.known, p.at))
	}
	var order []string
	for range people {
		q.next()
		for i, w := range waiting {
			select {
			case err := <-w.turn:
				if err != nil {
					t.Error(err)
				}
				order = append(order, people[i].at)
			default:
			}
		}
	}
	q.next()
	if q.busy {
		t.Error("busy with nobody there")
	}
	return strings.Join(order, " ")
}

func TestWhoComesFirst(t *testing.T) {
	wrong := map[string]float64{"noisy": 3, "loud": 9}
	q := &queue{wrong: func(at string) float64 { return wrong[at] }}
	got := turns(t, q, waiter{at: "noisy"}, waiter{at: "quiet1"}, waiter{at: "loud"}, waiter{at: "quiet2"}, waiter{at: "known", known: true})
	if want := "known quiet2 quiet1 noisy loud"; got != want {
		t.Errorf("%s, expected %s", got, want)
	}
}

func TestTheQueueIsBounded(t *testing.T) {
	q := &queue{wrong: func(at string) float64 {
		if at == "flood" {
			return 1
		}
		return 0
	}}
	<-q.line(false, "first").turn
	var flood []*waiter
	for range mostWaiting {
		flood = append(flood, q.line(false, "flood"))
	}
	q.line(false, "quiet")
	if err := <-flood[0].turn; !errors.Is(err, ErrBusy) {
		t.Errorf("the first of the flood: %v, expected ErrBusy", err)
	}
	if len(q.waiting) != mostWaiting {
		t.Errorf("%d wait, expected %d", len(q.waiting), mostWaiting)
	}
}

// TestWhoLeavesHoldsNobodyUp leaves the queue while waiting, and at the moment of
// the turn.
func TestWhoLeavesHoldsNobodyUp(t *testing.T) {
	q := &queue{wrong: func(string) float64 { return 0 }}
	<-q.line(false, "first").turn
	ctx, gone := context.WithCancel(t.Context())
	left := make(chan error, 1)
	go func() {
		_, err := q.turn(ctx, false, "gone")
		left <- err
	}()
	for q.length() == 0 {
		time.Sleep(time.Millisecond)
	}
	gone()
	if err := <-left; !errors.Is(err, context.Canceled) || q.length() != 0 {
		t.Errorf("%v, %d wait", err, q.length())
	}
	both := q.line(false, "both")
	q.next() // gives both the turn
	q.leave(both)
	free, err := q.turn(t.Context(), false, "next")
	if err != nil {
		t.Fatal(fmt.Errorf("the turn was lost: %w", err))
	}
	free()
	free() // ends one turn only
	if q.busy {
		t.Error("busy with nobody there")
	}
}

func (q *queue) length() int {
	q.mu.Lock()
	defer q.mu.Unlock()
	return len(q.waiting)
}

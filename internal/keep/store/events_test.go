package store

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/keep/revision"
)

// device is the n-th phone's half of its ids.
func device(n int) string { return fmt.Sprintf("%016x", n+1) }

func coverEvent(phone, n int) custody.Event {
	return custody.Event{ID: custody.IDOf(device(phone), uint64(n)), Arena: "east", Told: noon.Add(time.Duration(n) * time.Second), Who: "Ada",
		Fact: custody.Moved{Cover: "B1-1", State: custody.States()[n%6]}}
}

// An event comes back as it was kept, in its place, once, however often it is sent;
// an id that says something else is refused, and the rest of its batch is kept.
func TestEventsAreKeptOnce(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		first, second := coverEvent(0, 1), coverEvent(0, 2)
		second.Ahead, second.Corrects = -90*time.Minute, first.ID
		for try, again := range []bool{false, true} {
			got, err := s.Append(ctx, noon, []custody.Event{first, second})
			if err != nil || len(got) != 2 || got[1] != (custody.Receipt{ID: second.ID, Seq: 2, Again: again}) {
				t.Fatalf("try %d: %+v, %v", try, got, err)
			}
		}
		forged, broken, third := coverEvent(0, 4), coverEvent(0, 5), coverEvent(0, 3)
		forged.ID, broken.ID = first.ID, "x\x00"
		got, err := s.Append(ctx, noon, []custody.Event{forged, broken, third, third})
		if err != nil || !errors.Is(got[0].Refused, custody.ErrForged) || got[1].Refused == nil || got[2].Seq != 3 || got[3].Seq != 3 || !got[3].Again {
			t.Fatalf("%+v, %v", got, err)
		}
		elsewhere := coverEvent(1, 1)
		elsewhere.Arena = "west"
		if got, err := s.Append(ctx, noon, []custody.Event{elsewhere}); err != nil || got[0].Seq != 1 {
			t.Errorf("the first of another arena: %+v, %v", got, err)
		}
		kept, err := s.Since(ctx, "east", 1, 10)
		if err != nil || len(kept) != 2 || !kept[0].Same(second) || kept[0].Ahead != second.Ahead || !kept[0].Kept.Equal(noon) || kept[1].Seq != 3 {
			t.Errorf("%+v, %v", kept, err)
		}
		if arenas, err := s.Arenas(ctx); err != nil || fmt.Sprint(arenas) != "[east west]" {
			t.Errorf("arenas %v, %v", arenas, err)
		}
	})
}

// Many phones at once, with what they sent already in between and out of order: every
// event has one place, and who follows the stream meets each once.
func TestPhonesAtOnce(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		const phones, each = 20, 15
		ctx, end := context.WithTimeout(t.Context(), time.Minute)
		defer end()
		var all sync.WaitGroup
		for p := range phones {
			all.Go(func() {
				lot := rand.New(rand.NewPCG(uint64(p), 7))
				for _, n := range lot.Perm(each) {
					got, err := s.Append(ctx, noon, []custody.Event{coverEvent(p, n), coverEvent(p, lot.IntN(each))})
					if err != nil || got[0].Refused != nil || got[1].Refused != nil {
						t.Errorf("phone %d: %+v, %v", p, got, err)
					}
				}
			})
		}
		seen := map[custody.ID]bool{}
		for after := int64(0); after < phones*each; {
			if err := s.Await(ctx, "east", after); err != nil {
				t.Fatalf("after %d: %v", after, err)
			}
			some, err := s.Since(ctx, "east", after, 1000)
			if err != nil {
				t.Fatal(err)
			}
			for _, e := range some {
				if after++; e.Seq != after || seen[e.ID] {
					t.Fatalf("event %s has place %d, expected %d", e.ID, e.Seq, after)
				}
				seen[e.ID] = true
			}
		}
		all.Wait()
		if more, err := s.Since(t.Context(), "east", phones*each, 10); len(more) != 0 || err != nil {
			t.Errorf("%d events too many, %v", len(more), err)
		}
	})
}

// Another program on the same store is heard of, too.
func TestEventsOfAnotherProgram(t *testing.T) {
	folder := t.TempDir()
	var both [2]*Store
	for i := range both {
		s, err := OpenFolder(t.Context(), folder)
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		both[i] = s
	}
	heard := make(chan error, 1)
	go func() { heard <- both[0].Await(t.Context(), "east", 0) }()
	if _, err := both[1].Append(t.Context(), noon, []custody.Event{coverEvent(0, 1)}); err != nil {
		t.Fatal(err)
	}
	if err := <-heard; err != nil {
		t.Fatal(err)
	}
	over, end := context.WithTimeout(t.Context(), 10*time.Millisecond)
	defer end()
	if err := both[0].Await(over, "east", 1); !errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("waiting for nothing: %v", err)
	}
}

// A full disk refuses events in plain words and keeps what was there; once there is
// room, the same events are kept.
func TestEventsOnAFullDisk(t *testing.T) {
	s, err := OpenFolder(t.Context(), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	s.db.SetMaxOpenConns(1)
	if _, err := s.Append(t.Context(), noon, []custody.Event{coverEvent(0, 0)}); err != nil {
		t.Fatal(err)
	}
	var many []custody.Event
	for n := range 300 {
		e := coverEvent(0, n)
		e.Fact = custody.Incident{What: custody.NearMiss, Hole: "B1", Words: strings.Repeat("x", 1500)}
		e.ID = custody.IDOf(device(1), uint64(n))
		many = append(many, e)
	}
	limit := func(pages int) {
		t.Helper()
		if _, err := s.db.ExecContext(t.Context(), fmt.Sprintf("PRAGMA max_page_count = %d", pages)); err != nil {
			t.Fatal(err)
		}
	}
	limit(1) // SQLite: at least as many as in use
	if _, err := s.Append(t.Context(), noon, many); !errors.Is(err, revision.ErrFull) {
		t.Fatalf("got %v, want ErrFull", err)
	}
	if kept, err := s.Since(t.Context(), "east", 0, 10); len(kept) != 1 || err != nil {
		t.Errorf("%d events, %v", len(kept), err)
	}
	limit(1 << 20)
	if got, err := s.Append(t.Context(), noon, many); err != nil || got[299].Seq != 301 || got[299].Again {
		t.Errorf("%v", err)
	}
	checkSound(t, s)
}

// A photo opens under the arena that it was taken in, and under no other.
func TestPhotosAreTheArenas(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		p := custody.Photo{Kind: "image/png", Data: []byte("\x89PNG\x00\xff")}
		for range 2 {
			if err := s.KeepPhoto(t.Context(), noon, "east", "Ada", p); err != nil {
				t.Fatal(err)
			}
		}
		if got, err := s.Photo(t.Context(), "east", p.Key()); err != nil || got.Key() != p.Key() || got.Kind != p.Kind {
			t.Errorf("%+v, %v", got, err)
		}
		for arena, key := range map[string]string{"west": p.Key(), "east": "x", "east\x00": p.Key(), "": "\xff"} {
			if _, err := s.Photo(t.Context(), arena, key); !errors.Is(err, custody.ErrNoPhoto) {
				t.Errorf("%q %.5q: %v", arena, key, err)
			}
		}
	})
}

// PostgreSQL stopped and started under load: what cannot be kept says that the database
// does not answer, and once it is back the same events are kept, none twice.
func TestEventsWhileTheServerRestarts(t *testing.T) {
	s, err := OpenDSN(t.Context(), server.Database(t))
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	const phones, each = 40, 12
	var all sync.WaitGroup
	var failed, sent atomic.Int64
	var restarted atomic.Bool
	for p := range phones {
		all.Go(func() {
			for n := 0; n < each || !restarted.Load(); n++ { // so that the load lasts over the restart
				sent.Add(1)
				for {
					got, err := s.Append(t.Context(), noon, []custody.Event{coverEvent(p, n)})
					if err == nil && got[0].Refused == nil {
						break
					}
					if failed.Add(1); !errors.Is(err, revision.ErrDown) {
						t.Errorf("phone %d: %+v, %v", p, got, err)
						return
					}
					time.Sleep(20 * time.Millisecond)
				}
				time.Sleep(5 * time.Millisecond)
			}
		})
	}
	if err := s.Await(t.Context(), "east", phones); err != nil {
		t.Fatal(err)
	}
	err = errors.Join(server.Down(), server.Up())
	restarted.Store(true)
	all.Wait()
	if err != nil {
		t.Fatal(err)
	}
	kept, err := s.Since(t.Context(), "east", 0, int(sent.Load())+1)
	seen := map[custody.ID]bool{}
	for i, e := range kept {
		if e.Seq != int64(i+1) || seen[e.ID] {
			t.Fatalf("event %s has place %d, expected %d once", e.ID, e.Seq, i+1)
		}
		seen[e.ID] = true
	}
	if err != nil || len(kept) != int(sent.Load()) || failed.Load() == 0 {
		t.Errorf("%d events, %d failures, %v", len(kept), failed.Load(), err)
	}
}

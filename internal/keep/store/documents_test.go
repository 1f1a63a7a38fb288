package store

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"example.org/rinkpane/internal/keep/revision"
)

var noon = time.Date(2027, 1, 9, 12, 0, 0, 123456000, time.UTC)

func draft(what, text string) revision.Draft {
	return revision.Draft{At: noon, Who: "Ada", What: what, Text: text}
}

func mustAdd(t *testing.T, s *Store, id string) revision.Version {
	t.Helper()
	v, err := s.Add(t.Context(), revision.Arena, id, "Hall "+id, draft("first", "text of "+id+" ½\n"))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestHistoryOfADocument(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		first := mustAdd(t, s, "east")
		second, err := s.Save(ctx, "east", "", 1, draft("move H1", "two\n"))
		if err != nil {
			t.Fatal(err)
		}
		third, err := s.Save(ctx, "east", "East Hall", 2, draft("restore 1", first.Text))
		if err != nil {
			t.Fatal(err)
		}
		for number, want := range map[int]revision.Version{1: first, 2: second, 3: third, 0: third} {
			got, err := s.Version(ctx, "east", number)
			if d := cmp.Diff(want, got); d != "" || err != nil {
				t.Errorf("version %d: %v\n%s", number, err, d)
			}
		}
		if third.Number != 3 || third.Parent != 2 || first.Parent != 0 {
			t.Errorf("numbers: %+v", third)
		}
		history, err := s.History(ctx, "east", 2)
		if err != nil || len(history) != 2 || history[0].Number != 3 || history[1].What != "move H1" || history[0].Text != "" {
			t.Errorf("history %+v, %v", history, err)
		}
		doc, err := s.Document(ctx, "east")
		if want := (revision.Document{Kind: revision.Arena, ID: "east", Name: "East Hall", Head: 3}); doc != want || err != nil {
			t.Errorf("document %+v, %v, want %+v", doc, err, want)
		}
	})
}

func TestStaleSaveIsToldWhatCameBetween(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		mustAdd(t, s, "east")
		theirs, err := s.Save(t.Context(), "east", "", 1, draft("theirs", "theirs\n"))
		if err != nil {
			t.Fatal(err)
		}
		for _, base := range []int{1, 7, 0, -1} {
			_, err = s.Save(t.Context(), "east", "", base, draft("mine", "mine\n"))
			var stale *revision.Stale
			if !errors.As(err, &stale) || stale.Base != base {
				t.Fatalf("saving from %d: got %v, want Stale", base, err)
			}
			if d := cmp.Diff(theirs, stale.Head); d != "" {
				t.Error(d)
			}
		}
		if head, err := s.Version(t.Context(), "east", 0); err != nil || head.Text != "theirs\n" {
			t.Errorf("head %+v, %v: a stale save must change nothing", head, err)
		}
	})
}

func TestSavesAtTheSameTimeLoseNothing(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		mustAdd(t, s, "east")
		const writers, each = 4, 5
		var wg sync.WaitGroup
		for w := range writers {
			wg.Go(func() {
				for i := range each {
					if err := saveOnTop(t.Context(), s, fmt.Sprintf("w%d.%d", w, i)); err != nil {
						t.Error(err)
					}
				}
			})
		}
		wg.Wait()
		history, err := s.History(t.Context(), "east", 1000)
		if err != nil || len(history) != 1+writers*each {
			t.Fatalf("%d versions, %v", len(history), err)
		}
		seen := map[string]bool{}
		for i, v := range history {
			seen[v.What] = true
			if v.Number != len(history)-i || v.Parent != v.Number-1 {
				t.Errorf("version %d from %d at place %d", v.Number, v.Parent, i)
			}
		}
		if len(seen) != len(history) {
			t.Errorf("%d different versions of %d", len(seen), len(history))
		}
	})
}

// saveOnTop saves as a patient person does: look at the head, try again when stale.
func saveOnTop(ctx context.Context, s *Store, what string) error {
	base := 1
	for {
		_, err := s.Save(ctx, "east", "", base, draft(what, what))
		var stale *revision.Stale
		if !errors.As(err, &stale) {
			return err
		}
		base = stale.Head.Number
	}
}

func TestListingAndPuttingAway(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		mustAdd(t, s, "west")
		mustAdd(t, s, "east")
		if err := s.SetAway(ctx, "west", true); err != nil {
			t.Fatal(err)
		}
		east := revision.Document{Kind: revision.Arena, ID: "east", Name: "Hall east", Head: 1}
		west := revision.Document{Kind: revision.Arena, ID: "west", Name: "Hall west", Head: 1, Away: true}
		for away, want := range map[bool][]revision.Document{false: {east}, true: {east, west}} {
			got, err := s.Documents(ctx, revision.Arena, away)
			if d := cmp.Diff(want, got); d != "" || err != nil {
				t.Errorf("away %v: %v\n%s", away, err, d)
			}
		}
	})
}

func TestWhatIsNotThere(t *testing.T) {
	eachStore(t, func(t *testing.T, s *Store) {
		ctx := t.Context()
		mustAdd(t, s, "east")
		_, noDoc := s.Document(ctx, "nowhere")
		_, noVersion := s.Version(ctx, "east", 2)
		_, negative := s.Version(ctx, "east", -1)
		_, noSave := s.Save(ctx, "nowhere", "", 1, draft("x", "x"))
		for name, err := range map[string]error{"document": noDoc, "version": noVersion, "negative": negative,
			"save": noSave, "away": s.SetAway(ctx, "nowhere", true)} {
			if !errors.Is(err, revision.ErrNone) {
				t.Errorf("%s: got %v, want ErrNone", name, err)
			}
		}
		if _, err := s.Add(ctx, revision.Arena, "east", "again", draft("x", "x")); !errors.Is(err, revision.ErrTaken) {
			t.Errorf("adding twice: %v, want ErrTaken", err)
		}
		if _, err := s.Add(ctx, revision.Arena, "../etc", "x", draft("x", "x")); err == nil {
			t.Error("an id with a path in it was taken")
		}
		if _, err := s.Save(ctx, "east", "", 1, draft("x", "\xff")); err == nil {
			t.Error("a text that is not UTF-8 was taken")
		}
	})
}

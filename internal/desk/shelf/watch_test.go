package shelf

import (
	"errors"
	"testing"
)

// TestWatchersAreBounded lets as many watch as may: one more is told so, and may watch
// once another has left, however often that one says so.
func TestWatchersAreBounded(t *testing.T) {
	s := &Shelf{watchers: newWatchers()}
	var leave func()
	for range mostWatchers {
		_, left, err := s.Watch("east")
		if err != nil {
			t.Fatal(err)
		}
		leave = left
	}
	if _, _, err := s.Watch("east"); !errors.Is(err, ErrCrowded) {
		t.Fatalf("one more: %v", err)
	}
	leave()
	leave()
	if _, _, err := s.Watch("west"); err != nil {
		t.Errorf("in the place of who left: %v", err)
	}
	if _, _, err := s.Watch("west"); !errors.Is(err, ErrCrowded) {
		t.Errorf("one more: %v", err)
	}
}

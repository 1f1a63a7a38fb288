package plan

import (
	"testing"

	"example.org/rinkpane/internal/survey/rink"
)

func TestNearSlotIsOfTheOwnEnd(t *testing.T) {
	r, err := rink.Standard(rink.International)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range rink.Corners() {
		at, ok := r.Landmark(c, rink.GoalLine)
		if got := nearSlot(r, at); !ok || got != "slot-"+c.End() {
			t.Errorf("corner %s looks at %s", c, got)
		}
	}
}

package wire_test

import (
	"encoding/json"
	"math"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/tell/wire"
)

// The contract's fields of choose, an answer with nothing in it, and a hole.
func TestChoice(t *testing.T) {
	raw, err := json.Marshal(wire.ChoiceOf(choose.Answer{Status: solve.Stopped, Value: 0.75, Bound: 1, Took: 1500 * time.Millisecond}, unit.Metric))
	if err != nil {
		t.Fatal(err)
	}
	var got map[string]any
	if err := json.Unmarshal(raw, &got); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"status", "value", "bound", "gap", "holes", "seconds", "candidates", "moments", "alternatives", "clash", "excluded", "prices", "unfinished"} {
		if v, ok := got[name]; !ok || v == nil {
			t.Errorf("%s is %v", name, v)
		}
	}
	if got["gap"] != 0.25 || got["seconds"] != 1.5 || got["status"] != "limit reached" {
		t.Errorf("%s", raw)
	}
	c := choose.Candidate{New: true, Place: arena.FromLandmark(rink.BBench, rink.GoalLine, -unit.Inch)}
	c.Hole = glass.Hole{ID: "P017+460", Pane: "P017", Size: unit.Size{W: 5.5 * unit.Inch, H: 4.5 * unit.Inch}}
	h := wire.ChoiceOf(choose.Answer{Holes: []choose.Choice{{Candidate: c}}}, unit.Imperial).Holes[0]
	if h.ID != "P017+460" || h.Landmark != "goal-line" || h.Offset != -0.0254 || h.State != "new" || math.Abs(h.Wide-139.7) > 1e-9 || h.Loss != nil {
		t.Errorf("%+v", h)
	}
}

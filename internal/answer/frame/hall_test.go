package frame

import (
	"slices"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
)

// The coloured panels on the boards are the same ones from wherever they are seen.
func TestPanelsStayWhereTheyAre(t *testing.T) {
	r := shot(t, nil).Arena.Rink
	at := func(eye geom.Vec2) map[int]panel {
		out := map[int]panel{}
		for _, p := range newHall(r, eye).panels() {
			out[p.run[0].n] = p
		}
		return out
	}
	middle := at(geom.Vec2{})
	if len(middle) < 10 {
		t.Fatalf("%d panels on the boards", len(middle))
	}
	for _, eye := range []geom.Vec2{{X: 3}, {X: 16.5, Y: -13}, {X: 16.6, Y: -13.1}, {X: -25, Y: 12.9}} {
		seen := at(eye)
		for n, p := range seen {
			if same, ok := middle[n]; !ok || same.paint != p.paint || !slices.Equal(same.run, p.run) {
				t.Errorf("from %v a panel stands at post %d that is not there from the middle", eye, n)
			}
		}
		if len(seen) < len(middle)/2 {
			t.Errorf("from %v %d panels, from the middle %d", eye, len(seen), len(middle))
		}
	}
}

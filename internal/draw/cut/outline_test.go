package cut

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/unit"
)

// The outline of a curved pane says that it is unrolled, and on which face.
func TestCurvedOutlineSaysThatItIsUnrolled(t *testing.T) {
	p := shopPlan(t, unit.Metric)
	for id, curved := range map[string]bool{"bent": true, "flat": false} {
		said := false
		for _, w := range wordsOf(p.PaneOutline(jobOf(t, p, id, DefaultOptions()))) {
			said = said || strings.Contains(w.text, "CURVED PANE, inner radius 8530 mm (") && strings.Contains(w.text, "unrolled, lengths along the rink face")
		}
		if said != curved {
			t.Errorf("%s: said %v", id, said)
		}
	}
}

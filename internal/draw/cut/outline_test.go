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
		words := ""
		for _, w := range wordsOf(p.PaneOutline(jobOf(t, p, id, DefaultOptions()))) {
			words += w.text + " "
		}
		if said := strings.Contains(words, "CURVED PANE, inner radius 8530 mm (") && strings.Contains(words, "unrolled, lengths along the shooting face"); said != curved {
			t.Errorf("%s: said %v", id, said)
		}
	}
}

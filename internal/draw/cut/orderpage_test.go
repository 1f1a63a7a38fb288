package cut

import (
	"strings"
	"testing"

	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// A pane that is never cut is ordered on a form that asks what its material needs and
// leaves blank what nobody surveyed; a pane that is cut, or that stands, has no form.
func TestOrderForm(t *testing.T) {
	paper, err := sheet.ParsePaper("letter")
	if err != nil {
		t.Fatal(err)
	}
	p := shopPlan(t, unit.Metric)
	words := func(j Job) string {
		all := ""
		for _, d := range p.document(paper, "", 1, func(s *set) { s.orderPage(p.paneJob(j)) }) {
			checkWords(t, d.Title, d)
			for _, w := range wordsOf(d) {
				all += w.text + " "
			}
		}
		return all
	}
	order := jobOf(t, p, "order", DefaultOptions())
	for _, w := range []string{"Quantity: 1", "edge bite", "corner fillets R 20 mm", "BEFORE tempering", "Heat soak", "stamp", "THIS FACE TO ICE, pane P3", "not surveyed: " + blank, "govern over this form"} {
		if !strings.Contains(words(order), w) {
			t.Errorf("the form lacks %q", w)
		}
	}
	order.Material.Name = glass.Laminated
	if s := words(order); !strings.Contains(s, "Interlayer") || !strings.Contains(s, "BEFORE laminating") {
		t.Errorf("laminated: %s", s)
	}
	order.Hole.State = glass.Cut
	if words(order) != "" || words(jobOf(t, p, "flat", DefaultOptions())) != "" {
		t.Error("a form for a pane that is not ordered")
	}
}

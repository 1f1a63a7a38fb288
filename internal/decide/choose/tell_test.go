package choose_test

import (
	"testing"

	"example.org/rinkpane/internal/decide/choose"
)

// TestReportsComeOneByOne: whoever is told needs no lock (the race detector
// watches), and the share of scoring never falls.
func TestReportsComeOneByOne(t *testing.T) {
	a, sets, k := demo(t)
	o := few()
	told, last := 0, 0.0
	o.Moments = 3000
	stages := map[string]int{}
	fell := false
	o.Tell = func(r choose.Report) {
		told++
		stages[r.Stage]++
		if r.Stage == "scoring" {
			fell = fell || r.Share < last
			last = r.Share
		}
	}
	answer(t, a, sets, k, o)
	if stages["scoring"] < 3 || told <= stages["scoring"] || fell || last != 1 {
		t.Errorf("told %v, last share of scoring %g, fell %v", stages, last, fell)
	}
}

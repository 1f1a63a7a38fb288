package choosing

import (
	"math"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/choose"
)

func at(seconds, value, bound float64) Progress {
	return Progress{choose.Report{Stage: "choosing", Value: value, Bound: bound}, seconds}
}

// TestChartOfASearch: both lines are drawn from the search's own reports, one
// search that was over at once has none: its scale of hundredths of a second tells nothing.
func TestChartOfASearch(t *testing.T) {
	scoring := Progress{choose.Report{Stage: "scoring", Share: 1}, 1}
	for _, reports := range [][]Progress{{at(2, 0.8, 1), at(3, 0.8, 1)}, {scoring, at(2, 0.8, 1), at(4, 0.9, 0.9)}} {
		drawn := string(chartOf(reports))
		for _, want := range []string{`data-series="best so far"`, `data-series="no set is worth more"`, "time, s"} {
			if !strings.Contains(drawn, want) {
				t.Errorf("%d reports: the chart lacks %s", len(reports), want)
			}
		}
	}
	for _, reports := range [][]Progress{{scoring}, {at(2, 0.8, 1)}, {at(1.26, 1, 1.3), at(1.32, 1, 1)}} {
		if none := chartOf(reports); none != "" {
			t.Errorf("%v: %.80s", reports, none)
		}
	}
	if n := newsOf([]Progress{at(2, 0.8, 1)}); n.Best != "Best set so far: value 0.8000. It can still get better by 20.00 % at most." {
		t.Errorf("told as %+v", n)
	}
}

// TestLastReportOfAStageIsTold: reports come faster than they are told, but the
// one in which value and bound meet is told before the next stage begins.
func TestLastReportOfAStageIsTold(t *testing.T) {
	now := time.Date(2027, 1, 9, 12, 0, 0, 0, time.UTC)
	var told []Progress
	tell := noted(now, func() time.Time { return now }, func(p Progress) { told = append(told, p) })
	for i, bound := range []float64{1.2, 1.1, 1} {
		now = now.Add(tellEvery / 10)
		tell(choose.Report{Stage: "choosing", Value: 1, Bound: bound, Share: float64(i)})
	}
	tell(choose.Report{Stage: "alternatives"})
	now = now.Add(tellEvery)
	tell(choose.Report{Stage: "alternatives", Share: 1})
	if n := newsOf(told); len(told) != 4 || n.Best != "Best set so far: value 1.0000. It is the best: none is worth more." {
		t.Errorf("%d reports told, the end of the search as %+v", len(told), n)
	}
}

// TestProgressOfAWholeChoice: the share of the work never falls from stage to
// stage, every stage has words, and before its first value a choice has no chart.
func TestProgressOfAWholeChoice(t *testing.T) {
	before, all := 0.0, 0.0
	var reports []Progress
	for _, s := range stages {
		for _, share := range []float64{0, 0.5, 1} {
			reports = append(reports, Progress{choose.Report{Stage: s.name, Share: share}, 1})
			n := newsOf(reports)
			if n.Whole < before || n.Whole > 1+1e-9 || !strings.Contains(n.Words, s.words) {
				t.Errorf("%s at %g: %+v after %g", s.name, share, n, before)
			}
			if n.Best != "" || n.Chart != "" {
				t.Errorf("%s: told before the first value: %+v", s.name, n)
			}
			before = n.Whole
		}
		all += s.share
	}
	if math.Abs(all-1) > 1e-9 {
		t.Errorf("the stages make up %g of the work, want 1", all)
	}
}

package choosing

import (
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/choose"
)

func at(seconds, value, bound float64) Progress {
	return Progress{choose.Report{Stage: "choosing", Value: value, Bound: bound}, seconds}
}

// TestChartOfASearch: both lines are drawn from the search's own reports, one
// report alone draws level lines, and none no chart.
func TestChartOfASearch(t *testing.T) {
	scoring := Progress{choose.Report{Stage: "scoring", Share: 1}, 1}
	for _, reports := range [][]Progress{{at(2, 0.8, 1)}, {scoring, at(2, 0.8, 1), at(4, 0.9, 0.9)}} {
		drawn := string(chartOf(reports))
		for _, want := range []string{`data-series="best so far"`, `data-series="no set is worth more"`, "time, s"} {
			if !strings.Contains(drawn, want) {
				t.Errorf("%d reports: the chart lacks %s", len(reports), want)
			}
		}
	}
	if none := chartOf([]Progress{scoring}); none != "" {
		t.Errorf("no report of the search: %.80s", none)
	}
	if n := newsOf([]Progress{at(2, 0.8, 1)}); n.Gap != "20.00 %" || n.Value != "0.8000" {
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
	if n := newsOf(told); len(told) != 4 || n.Bound != "1.0000" || n.Gap != "0.00 %" {
		t.Errorf("%d reports told, the end of the search as %+v", len(told), n)
	}
}

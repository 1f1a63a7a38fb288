package desk

import (
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/choose"
)

// TestChartOfASearch: the bound starts at the top, the value at the foot, each
// holds until the next report, and one report alone draws level lines.
func TestChartOfASearch(t *testing.T) {
	at := func(seconds, value, bound float64) progress {
		return progress{choose.Report{Stage: "choosing", Value: value, Bound: bound}, seconds}
	}
	one := chartOf([]progress{at(2, 0.8, 1)})
	if one.Bound != "0.0,4.0 600.0,4.0 " || one.Value != "0.0,136.0 600.0,136.0 " {
		t.Errorf("one report: %+v", one)
	}
	two := chartOf([]progress{{choose.Report{Stage: "scoring", Share: 1}, 1}, at(2, 0.8, 1), at(4, 0.9, 0.9)})
	if two.Bound != "0.0,4.0 600.0,4.0 600.0,70.0 600.0,70.0 " || !strings.HasSuffix(two.Value, "600.0,70.0 ") || two.End != "2.0 s" {
		t.Errorf("two reports: %+v", two)
	}
	if none := chartOf(nil); none != (chartView{}) {
		t.Errorf("no report: %+v", none)
	}
	if n := newsOf([]progress{at(2, 0.8, 1)}); n.Gap != "20.00 %" || n.Value != "0.8000" {
		t.Errorf("told as %+v", n)
	}
}

// TestLastReportOfAStageIsTold: reports come faster than they are told, but the
// one in which value and bound meet is told before the next stage begins.
func TestLastReportOfAStageIsTold(t *testing.T) {
	now := time.Date(2027, 1, 9, 12, 0, 0, 0, time.UTC)
	var told []progress
	tell := noted(now, func() time.Time { return now }, func(p progress) { told = append(told, p) })
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

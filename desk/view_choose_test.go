package desk

import (
	"strings"
	"testing"

	"example.org/rinkpane/choose"
)

func TestAnswerWords(t *testing.T) {
	holes := []choose.Choice{{}}
	tests := []struct {
		answer choose.Answer
		want   string
	}{
		{choose.Answer{Status: choose.Infeasible}, "No set of holes keeps"},
		{choose.Answer{Status: choose.Optimal}, "The best set is empty"},
		{choose.Answer{Status: choose.Stopped}, "Stopped before a set"},
		{choose.Answer{Status: choose.Stopped, Holes: holes, Bound: 1, Gap: 0.01}, "so far; none is worth more than 1.0000, a gap of 1.00 %"},
		{choose.Answer{Status: choose.Optimal, Holes: holes, Bound: 1}, "proved: no legal set is worth more than 1.0000."},
		{choose.Answer{Status: choose.Optimal, Holes: holes, Unfinished: []string{"prices", "losses"}}, "Stopped before these were complete: prices, losses."},
	}
	for _, tt := range tests {
		if got := answerWords(tt.answer); !strings.Contains(got, tt.want) {
			t.Errorf("%s, %d holes: %q lacks %q", tt.answer.Status, len(tt.answer.Holes), got, tt.want)
		}
	}
}

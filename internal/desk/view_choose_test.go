package desk

import (
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/decide/choose"
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

// A price whose search was cut short is told as a range.
func TestPriceRows(t *testing.T) {
	rows := priceRows(choose.Answer{Value: 1, Prices: []choose.Price{
		{Rule: "a", Value: 1.25, Bound: 1.25, Gain: 0.25, Holes: []string{"H1"}},
		{Rule: "b", Value: 1.01, Bound: 1.02, Gain: 0.01},
	}})
	want := []priceRow{{"a", "0.2500", "1"}, {"b", "0.0100 to 0.0200", "0"}}
	if !slices.Equal(rows, want) {
		t.Errorf("rows %v, want %v", rows, want)
	}
}

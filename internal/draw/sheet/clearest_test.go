package sheet

import "testing"

func TestClearest(t *testing.T) {
	for _, c := range []struct {
		what           string
		places, others []float64
		want           float64
	}{
		{"nothing in the way", []float64{5, 1, 9}, nil, 5},
		{"the first that is far enough", []float64{5, 1, 9}, []float64{4}, 1},
		{"none is: the farthest", []float64{5, 1, 9}, []float64{4, 0, 8.5}, 5},
	} {
		if got := Clearest(c.places, c.others, 2); got != c.want {
			t.Errorf("%s: %g, want %g", c.what, got, c.want)
		}
	}
}

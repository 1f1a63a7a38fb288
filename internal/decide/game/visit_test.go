package game

import (
	"slices"
	"testing"

	"example.org/rinkpane/internal/survey/play"
)

// Every bag of a size is tried, each by itself, and none is better than the one told.
func TestPackedBagsAreTheBest(t *testing.T) {
	s := read(t, small, nil)
	a := s.Arena
	a.Lenses = []string{"24-70", "70-200", "135-2", "300-2.8"}
	v := Visitor{Follows: Away, Ends: play.EndsFrom(+1)}
	told, err := Pack(t.Context(), a, s.Kit, "B2", v)
	if err != nil {
		t.Fatal(err)
	}
	if len(told) != 4 || !slices.Equal(told[3].Lenses, a.Lenses) {
		t.Fatalf("bags %v, want the best one, two, three and all", told)
	}
	sets := bags(a.Lenses)
	table, err := Score(t.Context(), a, s.Kit, []string{"B2"}, sets)
	if err != nil {
		t.Fatal(err)
	}
	for _, set := range sets {
		if got, best := v.over(table, "B2", set).Value, told[len(set)-1].Value; got > best+1e-12 {
			t.Errorf("%v is worth %v, more than the best of its size, %v", set, got, best)
		}
	}
	if len(sets) != 15 {
		t.Errorf("tried %d sets", len(sets))
	}
	for k := 1; k < len(told); k++ {
		if told[k].Value < told[k-1].Value {
			t.Errorf("a lens more is worth less: %v, %v", told[k-1], told[k])
		}
	}
	if got := told[3].Of(told[3].View); got != 1 {
		t.Errorf("all is %v of all", got)
	}
}

func TestSetsStayFew(t *testing.T) {
	all := make([]string, 20)
	for i := range all {
		all[i] = string(rune('a' + i))
	}
	for n, want := range map[int]int{1: 1, 3: 7, 6: 6 + 15 + 20 + 1, 20: 20 + 190 + 1} {
		if got := len(setsOf(all[:n])); got != want {
			t.Errorf("%d lenses: %d sets, want %d", n, got, want)
		}
	}
}

func TestHolesToAskForComeBestFirst(t *testing.T) {
	s := read(t, small, nil)
	stands, err := AskFor(t.Context(), s.Arena, s.Kit, []string{"70-200"}, Visitor{Follows: EndB})
	if err != nil {
		t.Fatal(err)
	}
	for k := 1; k < len(stands); k++ {
		if stands[k].Value > stands[k-1].Value {
			t.Errorf("%v before %v", stands[k-1], stands[k])
		}
	}
	if first := stands[0].Hole[0]; len(stands) != 5 || first != 'B' {
		t.Errorf("for end B first of %d holes: %s", len(stands), stands[0].Hole)
	}
	if _, err := AskFor(t.Context(), s.Arena, s.Kit, []string{"70-20"}, Visitor{Follows: Home}); err == nil {
		t.Error("a lens that nobody has")
	}
}

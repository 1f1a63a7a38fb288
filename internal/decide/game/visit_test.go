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
	bags, err := Pack(t.Context(), a, s.Kit, "B2", v)
	if err != nil {
		t.Fatal(err)
	}
	if len(bags) != 4 || !slices.Equal(bags[3].Lenses, a.Lenses) {
		t.Fatalf("bags %v, want the best one, two, three and all", bags)
	}
	tried := 0
	for mask := 1; mask < 1<<len(a.Lenses); mask++ {
		var set []string
		for i, id := range a.Lenses {
			if mask>>i&1 == 1 {
				set = append(set, id)
			}
		}
		stands, err := AskFor(t.Context(), a, s.Kit, set, v)
		if err != nil {
			t.Fatal(err)
		}
		k := slices.IndexFunc(stands, func(s Stand) bool { return s.Hole == "B2" })
		if got, best := stands[k].Value, bags[len(set)-1].Value; got > best+1e-12 {
			t.Errorf("%v is worth %v, more than the best of its size, %v", set, got, best)
		}
		tried++
	}
	if tried != 15 {
		t.Errorf("tried %d sets", tried)
	}
	for k := 1; k < len(bags); k++ {
		if bags[k].Value < bags[k-1].Value {
			t.Errorf("a lens more is worth less: %v, %v", bags[k-1], bags[k])
		}
	}
	if got := bags[3].Of(bags[3].View); got != 1 {
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

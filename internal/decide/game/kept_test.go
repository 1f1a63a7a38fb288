package game

import (
	"fmt"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/seat"
)

// under returns the small season, changed, under one rule of a set of its own.
func under(t *testing.T, rule string, changes ...string) Season {
	t.Helper()
	set, err := rules.Read("own.yaml", strings.NewReader("rinkpane: rules 1\nid: own\nname: An invented agreement\nstatus: invented\nrules:\n  - {id: corners, kind: kept-for-camera, for: broadcast"+rule+"}\n"))
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(changes...).Replace(small)
	return read(t, text, nil).Under(sets)
}

// keptAt says what is kept at a game, a line for each period and hole.
func keptAt(n seat.Night) string {
	var out []string
	for _, k := range n.Kept {
		out = append(out, fmt.Sprintf("%d %s %s", k.Period, k.Hole, k.Rule))
	}
	for _, u := range n.Unkept {
		out = append(out, fmt.Sprintf("%d lacks %d in %s", u.Period, u.Lacks, u.Where))
	}
	return strings.Join(out, ", ")
}

// TestARuleSetKeepsHoles: a rule keeps the hole of each corner, end or rink that is worth
// most to the cameras that it names, at the games and in the periods that it names, and
// counts what is kept already. The cut holes are B1, B2 (B-bench), B3 (B-box), A1 (A-bench)
// and A3 (A-box); the camera asks for the periods 1 and 2 of g1.
func TestARuleSetKeepsHoles(t *testing.T) {
	none := []string{`  - {holes: [A1, B1], for: broadcast, rule: "broadcast agreement, part 4"}` + "\n", "", "reservations:\n", "", "{who: tv, games: [g1], periods: [1, 2]}", "{who: tv, games: [g1]}"}
	with := func(changes ...string) []string { return append(append([]string{}, changes...), none...) }
	s := under(t, "")
	table, err := s.Score(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		rule    string
		changes []string
		want    string
	}{
		"one in each corner":       {", periods: [1]", none, "1 B1 own/corners, 1 B3 own/corners, 1 A1 own/corners, 1 A3 own/corners"},
		"one at each end":          {", in: end, periods: [2]", none, "2 B1 own/corners, 2 A1 own/corners"},
		"of the whole rink":        {", in: rink, holes: 2, periods: [1]", none, "1 A1 own/corners, 1 B1 own/corners"},
		"where home attacks":       {", in: end, attacked-by: home", none, "1 B1 own/corners, 2 A1 own/corners, 3 B1 own/corners"},
		"where the guests attack":  {", in: end, attacked-by: away, periods: [1]", none, "1 A1 own/corners"},
		"of games that are marked": {", games: [televised]", none, ""},
		"a marked game":            {", games: [televised], in: end, periods: [3]", with("series: cup,", "series: cup, marks: [televised],"), "3 B1 own/corners, 3 A1 own/corners"},
		"a series":                 {", games: [cup], in: end, periods: [3]", none, "3 B1 own/corners, 3 A1 own/corners"},
		"nobody asks":              {"", with("{who: tv, games: [g1], periods: [1, 2]}", "{who: tv, games: [g1], withdrawn: yes}"), ""},
		"what is reserved counts":  {", in: end, periods: [1]", []string{"[A1, B1]", "[B1]"}, "1 B1 broadcast agreement, part 4, 2 B1 broadcast agreement, part 4, 3 B1 broadcast agreement, part 4, 1 A1 own/corners"},
		"reserved for a whole game": {", periods: [2]", []string{"[A1, B1]", "[B1]", "requests:\n", "requests:\n  - {who: tv2, games: [g1], periods: [1]}\n", "people:\n", "people:\n  - {id: tv2, camera: broadcast, lenses: [70-200]}\n"},
			"1 B1 broadcast agreement, part 4, 2 B1 broadcast agreement, part 4, 3 B1 broadcast agreement, part 4, 2 B3 own/corners, 2 A1 own/corners, 2 A3 own/corners"},
		"given by hand to another": {", periods: [1]", with("seats:\n", "seats:\n  - {game: g1, who: ann, hole: B3, periods: [1]}\n"), "1 B1 own/corners, 1 A1 own/corners, 1 A3 own/corners, 1 lacks 1 in corner B-box"},
		"given by hand to one":     {", in: end, periods: [1]", with("seats:\n", "seats:\n  - {game: g1, who: tv, hole: B3, periods: [1]}\n"), "1 B3 own/corners, 1 A1 own/corners"},
		"a closed hole":            {", periods: [1]", with("games: g2}", "games: g1}", "hole: B3}", "hole: B2}"), "1 B1 own/corners, 1 B3 own/corners, 1 A1 own/corners, 1 lacks 1 in corner A-box"},
	} {
		s := under(t, c.rule, c.changes...)
		g, _ := s.Game("g1")
		if got := keptAt(s.Night(table, g)); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", name, got, c.want)
		}
	}
}

// TestRulesAndGamesCallCamerasAlike: a rule names the cameras that people work with.
func TestRulesAndGamesCallCamerasAlike(t *testing.T) {
	for _, camera := range []Camera{Stills, Broadcast, Remote} {
		text := fmt.Sprintf("rinkpane: rules 1\nid: own\nname: n\nstatus: s\nrules: [{kind: kept-for-camera, for: %s}]\n", camera)
		if _, err := rules.Read("own.yaml", strings.NewReader(text)); err != nil {
			t.Error(err)
		}
	}
}

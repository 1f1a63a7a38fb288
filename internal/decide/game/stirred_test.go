package game

import (
	"strings"
	"testing"
)

// TestWhatAChangeStirs: a change of a season stirs the games that it is about, and no other.
func TestWhatAChangeStirs(t *testing.T) {
	was := read(t, small, nil)
	for name, c := range map[string]struct{ old, new, want string }{
		"nothing":                {"name: A small season", "name: The same", ""},
		"a seat by hand":         {"seats:\n", "seats:\n  - {game: g1, who: ann, hole: B3}\n", "g1"},
		"another seat":           {"who: bo, hole: B3", "who: bo, hole: B2", "g2"},
		"a request for one":      {"requests:\n", "requests:\n  - {who: bo, games: g2}\n", "g2"},
		"a request for all":      {"{who: ann, firm: must,", "{who: ann,", "g1 g2"},
		"a request for a series": {"{who: bo, games: cup,", "{who: bo, games: cup, firm: must,", "g1"},
		"did not come":           {"games: [g1], periods", "games: [g1], came: no, periods", "g1"},
		"a hole opens":           {"closed:\n  - {hole: A3, why: the inspection refused it, games: g2}\n", "", "g2"},
		"a reservation goes":     {"[A1, B1]", "[A1]", "g1 g2"},
		"another lens":           {"[300-2.8]", "[70-200]", "g1 g2"},
		"what a move costs":      {"0.02", "0.03", "g1 g2"},
	} {
		text := strings.Replace(small, c.old, c.new, 1)
		if text == small {
			t.Fatalf("%s: the document was not changed", name)
		}
		stirred := read(t, text, nil).Stirred(was)
		var got []string
		for _, g := range was.Games {
			if stirred(g) {
				got = append(got, g.ID)
			}
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s stirs %v, want %s", name, got, c.want)
		}
	}
}

// TestPartIsTheWholeInSmall: one field parsed alone says what it says in the whole text,
// however the document is written.
func TestPartIsTheWholeInSmall(t *testing.T) {
	flow := "{rinkpane: games 1, arena: x.yaml, seats: [{game: g2}]}"
	dashes := "rinkpane: games 1\nseats:\n- {game: g2}\n# seats:\narena: x.yaml\n"
	quoted := "rinkpane: games 1\n\"seats\":\n  - {game: g2}\narena: x.yaml\n"
	spaced := "rinkpane: games 1\nseats : [{game: g2}]\n"
	for _, text := range []string{small, flow, dashes, quoted, spaced, strings.ReplaceAll(small, "\n", "\r\n")} {
		doc, err := Part("x", text, "seats")
		if err != nil || len(doc.Items("seats")) != 1 || doc.Value("seats[#1].game") != "g2" {
			t.Errorf("%.40q: %v, %v", text, err, doc)
		}
	}
	doc, err := Part("x", "rinkpane: games 1\narena: x.yaml\n", "seats")
	if err != nil || doc.Has("seats") {
		t.Errorf("seats that are not there: %v", err)
	}
}

package league_test

import (
	"encoding/json"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/decide/league"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/decide/seat"
)

// season is the example's season with all that it names.
func season(t *testing.T) league.Season {
	t.Helper()
	games, err := examples.Games.ReadFile("games/" + examples.Demo)
	if err != nil {
		t.Fatal(err)
	}
	arena, err := examples.Files.ReadFile(examples.Demo)
	if err != nil {
		t.Fatal(err)
	}
	return league.Season{
		Games:  league.Document{Name: "season.yaml", Text: string(games) + "\nbodies:\n  - {body: \"0042\", who: ada}\n"},
		Beside: []league.Document{{Name: "../quillhaven.yaml", Text: string(arena)}},
		Rules:  []league.Document{{Name: "common-practice"}},
	}
}

// TestASeasonIsSeatedAsTheCommandDoes plays the example and finds what [seat.Solve] says of
// the same nights; the answer is kept as JSON and read the same.
func TestASeasonIsSeatedAsTheCommandDoes(t *testing.T) {
	q := season(t)
	got, err := q.Play(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	s, err := q.Open()
	if err != nil {
		t.Fatal(err)
	}
	table, err := s.Score(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	want, err := seat.Solve(t.Context(), s.Nights(table), seat.Question{})
	if err != nil {
		t.Fatal(err)
	}
	if got.Games != 4 || got.Proved != 4 || got.Even != want.Season.Spread() || math.Abs(got.Share()-want.Season.Ledger.Level()) > 1e-12 {
		t.Errorf("%+v", got)
	}
	requests, without, value := 0, 0, 0.0
	for _, n := range want.Season.Nights {
		requests, value = requests+len(n.People), value+n.Value
	}
	for _, s := range got.Short {
		without += s.Requests
	}
	if got.Requests != requests || got.Met+without != requests || without == 0 || math.Abs(got.Value-value) > 1e-12 {
		t.Errorf("of %d requests %d met, %d not; worth %g, expected %g", got.Requests, got.Met, without, got.Value, value)
	}
	text, err := json.Marshal(got)
	if err != nil {
		t.Fatal(err)
	}
	var again league.Played
	if err := json.Unmarshal(text, &again); err != nil || !reflect.DeepEqual(got, again) {
		t.Errorf("read back: %v\n%+v\n%+v", err, got, again)
	}
}

// TestTheFramesOfAGameAreLookedBackOn matches a frame of ada's body to a hole that the season
// gives her, by the rule where no hand did.
func TestTheFramesOfAGameAreLookedBackOn(t *testing.T) {
	q := league.Look{Season: season(t), Game: "nov-07", Readings: league.Document{Name: "nov-07.csv", Text: `file,taken,body,focal_mm,shutter_s,stop,iso,rating,width_px,height_px
a.jpg,2026-11-07T19:12:00,0042,85,0.001,2.8,3200,1,6000,4000
b.jpg,2026-11-07T19:13:00,0042,85,0.001,2.8,3200,,6000,4000
c.jpg,2026-11-07T19:14:00,0099,85,0.001,2.8,3200,,6000,4000
`}}
	got, err := q.Ask(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	if got.Frames != 3 || got.Bursts != 3 || got.Kept != 1 || got.Sure[recap.Certain] != 2 || got.Title != "Herons - Otters" || len(got.Holes) != 2 || got.Holes[0].Hole != "" || got.Holes[1].Kept != 1 {
		t.Errorf("%+v", got)
	}
	text, err := json.Marshal(got)
	if err != nil {
		t.Fatal(err)
	}
	var again league.Looked
	if err := json.Unmarshal(text, &again); err != nil || !reflect.DeepEqual(got, again) {
		t.Errorf("read back: %v\n%+v\n%+v", err, got, again)
	}
}

// TestWhatASeasonLacksIsNamed: a file that it names, a rule set, a line of it, a game, a
// line of the readings.
func TestWhatASeasonLacksIsNamed(t *testing.T) {
	for part, spoil := range map[string]func(*league.Look){
		"../quillhaven.yaml": func(q *league.Look) { q.Beside = nil },
		"nowhere":            func(q *league.Look) { q.Rules = []league.Document{{Name: "nowhere"}} },
		"season.yaml:":       func(q *league.Look) { q.Games.Text = "rinkpane: games 1\nname: [x" },
		"no game nov-99":     func(q *league.Look) { q.Game = "nov-99" },
		"r.csv:":             func(q *league.Look) { q.Readings.Text = "file,taken\na.jpg,yesterday\n" },
	} {
		q := league.Look{Season: season(t), Game: "nov-07", Readings: league.Document{Name: "r.csv", Text: "file,taken\n"}}
		spoil(&q)
		if _, err := q.Ask(t.Context()); err == nil || !strings.Contains(err.Error(), part) {
			t.Errorf("%s: %v", part, err)
		}
	}
}

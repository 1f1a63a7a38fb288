package words_test

import (
	"regexp"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/solve"
	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/words"
)

func choice(t *testing.T) choose.Answer {
	t.Helper()
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	set, err := rules.Shipped(rules.Default)
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(set)
	if err != nil {
		t.Fatal(err)
	}
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	o := choose.FolderOptions()
	o.Moments = 800
	c, err := choose.ForArena(t.Context(), a, sets, k, o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestChoiceTellsAndDraws(t *testing.T) {
	c := choice(t)
	if c.Status != solve.Optimal || len(c.Holes) != 8 || len(c.Alternatives) != 2 {
		t.Fatalf("%s, %d holes, %d alternatives", c.Status, len(c.Holes), len(c.Alternatives))
	}
	text := words.Choice(c, unit.Imperial)
	for _, want := range []string{"Best set: 8 holes", c.Holes[0].Say(unit.Imperial), "Cut today: 5 holes", "next best", "the pane is a gate"} {
		if !strings.Contains(text, want) {
			t.Errorf("the text lacks %q", want)
		}
	}
	for _, line := range strings.Split(text, "\n") {
		if len([]rune(line)) > 100 {
			t.Errorf("%d columns: %s", len([]rune(line)), line)
		}
	}
	drawn := chart.OfChoice(c, 0, unit.Metric)
	if len(drawn.Arena.Holes) != 8 || len(drawn.Others) == 0 {
		t.Errorf("%d holes and %d alternatives on the map", len(drawn.Arena.Holes), len(drawn.Others))
	}
	// Each stretch lies in one pane and is as good as a chosen hole there.
	if len(drawn.AsGood) == 0 {
		t.Error("no stretch is drawn as good")
	}
	for _, v := range drawn.AsGood {
		if p, ok := c.Arena.PaneAt(v.From); !ok || v.To <= v.From || v.To > p.To() {
			t.Errorf("as good from %g to %g m: no piece of one pane", v.From.Metres(), v.To.Metres())
		}
	}
}

func TestChoiceTellsWhatIsUndone(t *testing.T) {
	c := choice(t)
	c.Unfinished = []string{"prices", "losses"}
	if text := words.Choice(c, unit.Metric); !strings.Contains(text, "\nStopped before these were complete: prices, losses.\n") {
		t.Errorf("nothing is said of what is undone:\n%s", text)
	}
}

// TestOutcomes: each way in which a search ends is said.
func TestOutcomes(t *testing.T) {
	holes := []choose.Choice{{}}
	for _, c := range []struct {
		answer choose.Answer
		want   string
	}{
		{choose.Answer{Status: solve.Infeasible, Candidates: 1}, "No set of holes keeps"},
		{choose.Answer{Status: solve.Infeasible}, "No pane may hold a hole"},
		{choose.Answer{Status: solve.Optimal, Candidates: 1}, "The best set is empty"},
		{choose.Answer{Status: solve.Stopped}, "Stopped before a set"},
		{choose.Answer{Status: solve.Stopped, Holes: holes, Value: 0.99, Bound: 1}, "so far: 1 hole, value 0.9900; none is worth more than 1.0000 (gap 1.00 %)."},
		{choose.Answer{Status: solve.Optimal, Holes: holes, Bound: 1}, "proved: no legal set is worth more than 1.0000."},
		{choose.Answer{Status: solve.Optimal, Holes: holes, Unfinished: []string{"prices", "losses"}}, "Stopped before these were complete: prices, losses."},
	} {
		if got := words.ChoiceOutcome(c.answer); !strings.Contains(got, c.want) {
			t.Errorf("%s, %d holes: %q lacks %q", c.answer.Status, len(c.answer.Holes), got, c.want)
		}
	}
}

// TestNoIdOfAPlaceIsShown: people read places, in the reader's units.
func TestNoIdOfAPlaceIsShown(t *testing.T) {
	c := choice(t)
	if text := words.Choice(c, unit.Metric); strings.Contains(text, "P0") && idOfAPlace.MatchString(text) {
		t.Errorf("shown: %q", idOfAPlace.FindString(text))
	}
	for i, h := range c.Holes {
		if h.New && !strings.Contains(words.Choice(c, unit.Imperial), c.Holes[i].Place.Name(unit.Imperial)) {
			t.Errorf("the place of %s is not told", h.Hole.ID)
		}
	}
}

// A price whose search was cut short is told as a range.
func TestPricesAreToldAsRanges(t *testing.T) {
	rows := words.ChoicePrices.Of("", []choose.Price{
		{Rule: "a", Value: 1.25, Bound: 1.25, Gain: 0.25, Holes: make([]choose.Candidate, 1)},
		{Rule: "b", Value: 1.01, Bound: 1.02, Gain: 0.01},
	}, unit.Metric).Texts()
	if rows[0][1] != "1.2500" || rows[0][2] != "+0.2500" || rows[1][1] != "1.0100 to 1.0200" || rows[1][3] != "0" {
		t.Errorf("rows %q", rows)
	}
}

var idOfAPlace = regexp.MustCompile(`P\d+\+\d+`)

package plan

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/unit"
)

func choice(t *testing.T) Choice {
	t.Helper()
	o := ChoiceOptions()
	o.Moments = 800
	c, err := maker(t).Choose(t.Context(), document(t, examples.Demo), o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestChoiceTellsAndDraws(t *testing.T) {
	c := choice(t)
	if c.Status != choose.Optimal || len(c.Holes) != 8 || len(c.Alternatives) != 2 {
		t.Fatalf("%s, %d holes, %d alternatives", c.Status, len(c.Holes), len(c.Alternatives))
	}
	text := c.Text(unit.Imperial)
	for _, want := range []string{"Best set: 8 holes", c.Holes[0].ID, "Cut today: 5 holes", "next best", "the pane is a gate"} {
		if !strings.Contains(text, want) {
			t.Errorf("the text lacks %q", want)
		}
	}
	for _, line := range strings.Split(text, "\n") {
		if len([]rune(line)) > 100 {
			t.Errorf("%d columns: %s", len([]rune(line)), line)
		}
	}
	drawn := c.Chart(unit.Metric)
	if len(drawn.Arena.Holes) != 8 || len(drawn.Others) == 0 {
		t.Errorf("%d holes and %d alternatives on the map", len(drawn.Arena.Holes), len(drawn.Others))
	}
}

func TestChoiceTellsWhatIsUndone(t *testing.T) {
	c := choice(t)
	c.Unfinished = []string{"prices", "losses"}
	if text := c.Text(unit.Metric); !strings.Contains(text, "\nStopped before these were complete: prices, losses.\n") {
		t.Errorf("nothing is said of what is undone:\n%s", text)
	}
}

func TestChoiceFilesAreTheSameEachTime(t *testing.T) {
	one, err := choice(t).Files(unit.Metric)
	if err != nil {
		t.Fatal(err)
	}
	two, err := choice(t).Files(unit.Metric)
	if err != nil {
		t.Fatal(err)
	}
	if len(one) != 3 {
		t.Fatalf("%d files", len(one))
	}
	for i := range one {
		if one[i].Name != two[i].Name || !bytes.Equal(one[i].Data, two[i].Data) {
			t.Errorf("%s differs", one[i].Name)
		}
	}
	var back choose.Answer
	if err := json.Unmarshal(one[2].Data, &back); err != nil || len(back.Holes) != 8 {
		t.Errorf("choice.json: %v, %d holes", err, len(back.Holes))
	}
}

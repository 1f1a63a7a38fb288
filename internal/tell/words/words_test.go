package words_test

import (
	"flag"
	"os"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/words"
)

var update = flag.Bool("update", false, "write the golden files anew")

func maker(t testing.TB) plan.Maker {
	t.Helper()
	k, err := kit.Default()
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
	return plan.Maker{Kit: k, Rules: sets}
}

func demo(t testing.TB) *arena.Document {
	t.Helper()
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// TestSummaryGolden compares the demo's summary with the one that was read and found good.
func TestSummaryGolden(t *testing.T) {
	const golden = "testdata/summary.golden"
	p, err := maker(t).Make(t.Context(), demo(t))
	if err != nil {
		t.Fatal(err)
	}
	got := words.Summary(p, unit.Imperial)
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("the summary changed; read it, and if it is good run go test ./internal/tell/words -update.\ngot:\n%s\nwant:\n%s", got, want)
	}
}

func TestVerdict(t *testing.T) {
	pass := rules.Finding{Rule: "a", Status: rules.Pass}
	fail := rules.Finding{Rule: "b", Status: rules.Fail}
	unknown := rules.Finding{Rule: "c", Status: rules.Unknown}
	for _, c := range []struct {
		findings []rules.Finding
		want     string
	}{
		{nil, "no rule applies"},
		{[]rules.Finding{pass, pass}, "every rule is kept"},
		{[]rules.Finding{pass, fail, fail}, "1 rule broken"},
		{[]rules.Finding{fail, unknown}, "1 rule broken, 1 rule with a number missing"},
	} {
		if got := words.Verdict(c.findings); got != c.want {
			t.Errorf("%v read %q, expected %q", c.findings, got, c.want)
		}
	}
}

func TestRuleNamesTheTightest(t *testing.T) {
	m := func(v float64) unit.Maybe[rules.Amount] {
		return unit.Known(rules.Amount{Of: rules.AlongBoards, N: v})
	}
	got := plan.ByRule([]rules.Finding{
		{Rule: "a", Holes: []string{"H1"}, Status: rules.Pass, Margin: m(2)},
		{Rule: "b", Holes: []string{"H1"}, Status: rules.Unknown},
		{Rule: "a", Holes: []string{"H2"}, Status: rules.Fail, Margin: m(-1)},
		{Rule: "a", Holes: []string{"H3"}, Status: rules.Pass},
	})
	if len(got) != 2 || got[0].Status != rules.Fail || got[1].Status != rules.Unknown {
		t.Fatalf("summed up to %+v", got)
	}
	if said := words.Rule(got[0], unit.Metric); said != "broken by H2; tightest H2: 1 m short" {
		t.Errorf("rule a reads %q", said)
	}
	if said := words.Rule(got[1], unit.Metric); said != "not known for H1" {
		t.Errorf("rule b reads %q", said)
	}
}

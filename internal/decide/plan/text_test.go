package plan

import (
	"flag"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/rinkpane/examples"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
)

var update = flag.Bool("update", false, "write the golden files anew")

// TestSummaryGolden compares the demo's summary with the one that was read and found good.
func TestSummaryGolden(t *testing.T) {
	const golden = "testdata/summary.golden"
	got := planOf(t, examples.Demo).Summary(unit.Imperial)
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
		t.Errorf("the summary changed; read it, and if it is good run go test ./plan -update.\ngot:\n%s\nwant:\n%s", got, want)
	}
}

// TestTextsFitTheirColumns prints every text of every example in both systems.
func TestTextsFitTheirColumns(t *testing.T) {
	lines := 0
	for _, name := range exampleNames(t) {
		p := planOf(t, name)
		for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
			for _, f := range p.Files(sys) {
				if !strings.HasSuffix(f.Name, ".txt") {
					continue
				}
				for line := range strings.Lines(string(f.Data)) {
					lines++
					line = strings.TrimSuffix(line, "\n")
					if n := utf8.RuneCountInString(line); n > textWidth {
						t.Errorf("%s, %s, %s: %d columns: %s", name, sys, f.Name, n, line)
					}
					if strings.TrimRight(line, " ") != line {
						t.Errorf("%s, %s, %s: space at the end of %q", name, sys, f.Name, line)
					}
				}
			}
		}
	}
	if lines < 500 {
		t.Errorf("read %d lines", lines)
	}
}

func TestVerdictWords(t *testing.T) {
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
		if got := VerdictWords(c.findings); got != c.want {
			t.Errorf("%v read %q, expected %q", c.findings, got, c.want)
		}
	}
}

func TestByRuleFindsTheTightest(t *testing.T) {
	m := func(v float64) unit.Maybe[rules.Amount] {
		return unit.Known(rules.Amount{Of: rules.AlongBoards, N: v})
	}
	got := ByRule([]rules.Finding{
		{Rule: "a", Holes: []string{"H1"}, Status: rules.Pass, Margin: m(2)},
		{Rule: "b", Holes: []string{"H1"}, Status: rules.Unknown},
		{Rule: "a", Holes: []string{"H2"}, Status: rules.Fail, Margin: m(-1)},
		{Rule: "a", Holes: []string{"H3"}, Status: rules.Pass},
	})
	if len(got) != 2 || got[0].Status != rules.Fail || got[1].Status != rules.Unknown {
		t.Fatalf("summed up to %+v", got)
	}
	if words := got[0].Words(unit.Metric); words != "broken by H2; tightest H2: 1 m short" {
		t.Errorf("rule a reads %q", words)
	}
	if words := got[1].Words(unit.Metric); words != "not known for H1" {
		t.Errorf("rule b reads %q", words)
	}
}

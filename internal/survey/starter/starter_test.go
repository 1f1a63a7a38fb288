package starter_test

import (
	"bytes"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
	"example.org/rinkpane/internal/survey/starter"
)

func standard(t rapid.TB, name string) rink.Rink {
	t.Helper()
	r, err := rink.Standard(name)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func commonPractice(t rapid.TB) rules.Sets {
	t.Helper()
	s, err := rules.Shipped("common-practice")
	if err != nil {
		t.Fatal(err)
	}
	sets, err := rules.InForce(s)
	if err != nil {
		t.Fatal(err)
	}
	return sets
}

func TestStandardStarters(t *testing.T) {
	sets := commonPractice(t)
	for _, c := range []struct {
		name  string
		units unit.System
		panes []unit.Length
	}{
		{"north-american", unit.Imperial, []unit.Length{starter.UsualPane(unit.Imperial), 3 * unit.Foot, 4 * unit.Foot, 5 * unit.Foot, 6 * unit.Foot, 45 * unit.Inch}},
		{"north-american", unit.Metric, []unit.Length{starter.UsualPane(unit.Metric), 1, 1.21}},
		{"international", unit.Metric, []unit.Length{starter.UsualPane(unit.Metric), 1, 1.5, 2}},
		{"international", unit.Imperial, []unit.Length{unit.Length(1.2), starter.UsualPane(unit.Imperial)}},
	} {
		for _, pane := range c.panes {
			text, a, err := starter.Begin(starter.Layout{Rink: standard(t, c.name), Standard: c.name, Pane: pane, Units: c.units})
			if err != nil {
				t.Errorf("%s, panes of %v: %v", c.name, pane, err)
				continue
			}
			again, _, err := starter.Begin(starter.Layout{Rink: standard(t, c.name), Standard: c.name, Pane: pane, Units: c.units})
			if err != nil || !bytes.Equal(text, again) {
				t.Errorf("%s, panes of %v: written again it differs", c.name, pane)
			}
			if len(a.Holes) != 6 || len(a.Zones) != 6 {
				t.Errorf("%s, panes of %v: %d holes, %d zones", c.name, pane, len(a.Holes), len(a.Zones))
			}
			for _, kind := range []string{"bench", "penalty-box", "ice machine"} {
				if !strings.Contains(string(text), "gate: "+kind+"}") {
					t.Errorf("%s, panes of %v: no gate for the %s", c.name, pane, kind)
				}
			}
			if rep := sets.Check(a); rep.Verdict != rules.Pass || len(rep.Findings) < 20 {
				t.Errorf("%s, panes of %v: verdict %s of %d findings", c.name, pane, rep.Verdict, len(rep.Findings))
			}
			whole(t, a, c.units)
		}
	}
}

// whole proves that the panes go all round but for the benches, closely.
func whole(t rapid.TB, a arena.Arena, sys unit.System) {
	t.Helper()
	rep := starter.Missing(a)
	if len(rep.Unsurveyed) > 0 {
		t.Errorf("%s: not surveyed: %v", a.Name, rep.Unsurveyed)
	}
	if sum := rep.Glazed + rep.Open; sum > a.Rink.Perimeter() || sum < a.Rink.Perimeter()-unit.Length(len(a.Panes))*100*unit.Millimetre {
		t.Errorf("panes and benches sum to %v of %v", sum, a.Rink.Perimeter())
	}
	mark := unit.Inch / 16
	if sys == unit.Metric {
		mark = unit.Millimetre
	}
	for i, p := range a.Panes {
		if marks := float64(p.Width / mark); marks-float64(int(marks+0.5)) > 1e-6 {
			t.Errorf("pane %s is %v wide: not on the scale", p.ID, p.Width)
		}
		if i > 0 && p.From < a.Panes[i-1].To()-1e-4 {
			t.Errorf("pane %s overlaps", p.ID)
		}
	}
}

func TestStarterForAnyRink(t *testing.T) {
	sets := commonPractice(t)
	rapid.Check(t, func(t *rapid.T) {
		mm := func(least, most int, name string) unit.Length {
			return unit.Length(rapid.IntRange(least, most).Draw(t, name)) * unit.Millimetre
		}
		length := mm(20_000, 70_000, "length")
		width := mm(10_000, min(int(length.Millimetres()), 34_000), "width")
		d := rink.Dimensions{Length: length, Width: width, CornerRadius: mm(1000, int(width.Millimetres()/2), "radius")}
		r, err := rink.New(d)
		if err != nil {
			t.Fatal(err)
		}
		sys := rapid.SampledFrom([]unit.System{unit.Metric, unit.Imperial}).Draw(t, "units")
		pane := mm(300, 3000, "pane")
		_, a, err := starter.Begin(starter.Layout{Rink: r, Pane: pane, Units: sys})
		if err != nil {
			t.Fatal(err)
		}
		if got := a.Rink.Dimensions(); got != d {
			t.Fatalf("dimensions %v came back as %v", d, got)
		}
		if rep := sets.Check(a); rep.Verdict != rules.Pass {
			t.Fatalf("verdict %s", rep.Verdict)
		}
		whole(t, a, sys)
	})
}

// On a rink that is all but a circle the boards on both sides of the red line
// are too short for a pane each; they are no gap in the survey either.
func TestStarterOnAnAllButRoundRink(t *testing.T) {
	for half := unit.Length(60); half <= 110; half += 2 {
		r, err := rink.New(rink.Dimensions{Length: 29.782 + 2*half*unit.Millimetre, Width: 29.783, CornerRadius: 14.891})
		if err != nil {
			t.Fatal(err)
		}
		for _, sys := range []unit.System{unit.Metric, unit.Imperial} {
			_, a, err := starter.Begin(starter.Layout{Rink: r, Pane: 507 * unit.Millimetre, Units: sys})
			if err != nil {
				t.Fatal(err)
			}
			whole(t, a, sys)
		}
	}
}

func TestStarterRefuses(t *testing.T) {
	for _, pane := range []unit.Length{0, 0.1, 7, -1} {
		if _, _, err := starter.Begin(starter.Layout{Rink: standard(t, "international"), Pane: pane}); err == nil || !strings.Contains(err.Error(), "write a width from") {
			t.Errorf("panes of %v: %v", pane, err)
		}
	}
}

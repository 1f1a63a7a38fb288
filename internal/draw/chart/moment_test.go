package chart_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"example.org/rinkpane/internal/draw/chart"
	"example.org/rinkpane/internal/draw/sheet"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

// phaseMoment returns the first moment of a phase at end B among the shipped
// sampler's with seed 1.
func phaseMoment(t *testing.T, r rink.Rink, p play.Phase) play.Moment {
	t.Helper()
	set, err := play.Sample(t.Context(), r, play.DefaultAssumptions(), 1, 500)
	if err != nil {
		t.Fatal(err)
	}
	for i := range set.Len() {
		if m := set.At(i); m.Phase == p && m.End > 0 {
			return m
		}
	}
	t.Fatalf("no moment of %s among 500", p)
	return play.Moment{}
}

// The pictures of docs/moments.md are what the program draws today.
func TestMomentPictures(t *testing.T) {
	r, err := rink.Standard("north-american")
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range play.Phases() {
		m := phaseMoment(t, r, p)
		got := sheet.SVG(chart.MomentMap(r, m, 160))
		file := filepath.Join("..", "..", "..", "docs", "pictures", "moment-"+p.String()+".svg")
		if *update {
			if err := os.WriteFile(file, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s is not what is drawn; look at both, then run go test ./internal/draw/chart -update", file)
		}
	}
}

func TestMomentMapShowsEverybody(t *testing.T) {
	r, err := rink.Standard("international")
	if err != nil {
		t.Fatal(err)
	}
	d := chart.MomentMap(r, phaseMoment(t, r, play.Rush), 10)
	if d.W < 120 {
		t.Errorf("drawn %g mm wide", d.W)
	}
	svg := sheet.SVG(d)
	for class, least := range map[string]int{"attacker": 7, "defender": 7, "official": 5, "gaze": play.People, "subject": 2, "puck": 2} {
		if n := bytes.Count(svg, []byte(`"`+class+`"`)) + bytes.Count(svg, []byte(` `+class+`"`)); n < least {
			t.Errorf("%d elements of class %s, want at least %d", n, class, least)
		}
	}
}

package recap_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/answer/sight"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// luxAt is a hall that is brighter in the slots than elsewhere.
func luxAt(r arena.Arena, p geom.Vec2) float64 {
	for _, z := range light.Zones(r.Rink) {
		if (z.ID == "slot-A" || z.ID == "slot-B") && z.Contains(p) {
			return 1100
		}
	}
	return 850
}

// photographed are frames of a game that is not the one that a look samples: of moments
// that a hole sees, by a lens that frames a player about half as high as the picture,
// exposed by the light there less what the hole takes at that pan.
func photographed(t *testing.T, a arena.Arena, k kit.Kit, hole string) (frames []recap.Matched) {
	t.Helper()
	h, _ := a.Hole(hole)
	o, err := a.Opening(hole)
	if err != nil {
		t.Fatal(err)
	}
	set, err := play.Sample(t.Context(), a.Rink, a.Playing(), 77, 1500)
	if err != nil {
		t.Fatal(err)
	}
	scorer, err := sight.NewScorer(a, k, sight.DefaultJudgement())
	if err != nil {
		t.Fatal(err)
	}
	scores, err := scorer.Score(t.Context(), []glass.Hole{h}, set, nil)
	if err != nil {
		t.Fatal(err)
	}
	lens, _ := k.Lens("70-200")
	e := sight.EyeOf(a, o)
	r := rand.New(rand.NewPCG(5, 5))
	for i, score := range scores.Row(0) {
		m := set.At(i)
		if float64(score) < r.Float64() {
			continue
		}
		who := m.People[m.Subject]
		at := geom.Vec2{X: who.X, Y: who.Y}
		way := at.Sub(e.At)
		focal := unit.Length(0.5 * 0.024 * way.Len() / 1.88 * math.Exp(0.3*r.NormFloat64()))
		focal = max(lens.FocalMin, min(lens.FocalMax, focal))
		use, err := fit.Use(lens, unit.Known(focal), unit.Known(unit.Stop(2.8)), false, false)
		if err != nil {
			t.Fatal(err)
		}
		c, err := fit.FromKit(o, lens, k.BodyOf(lens), use)
		if err != nil {
			t.Fatal(err)
		}
		pass := c.At(unit.Angle(math.Atan2(way.Dot(e.Along), way.Dot(e.In))), 0).Centre
		if pass < 0.5 {
			continue
		}
		f := frame("x", "19:20:00")
		f.Focal = unit.Known(focal)
		f.ISO = unit.Known(unit.ISO(optics.DefaultCalibration.ISO(unit.Illuminance(luxAt(a, at)*pass*math.Exp2(0.3*r.NormFloat64())), 0.001, 2.8)))
		frames = append(frames, recap.Matched{Frame: f, Hole: hole, Stage: "period-1"})
	}
	return frames
}

// TestLightByZoneRoundTrip finds the light of each zone within a third of a stop from
// frames that tell nothing but hole and exposure, and what the hole took.
func TestLightByZoneRoundTrip(t *testing.T) {
	doc, a := demo(t)
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	var frames []recap.Matched
	for _, hole := range []string{"A1", "B1"} {
		frames = append(frames, photographed(t, a, k, hole)...)
	}
	o, err := recap.Look(t.Context(), a, k, []string{"A1", "B1"})
	if err != nil {
		t.Fatal(err)
	}
	o.See(frames)
	dimmed := 0
	for _, m := range frames {
		if m.Pass < 0.5 || m.Pass > 1 {
			t.Fatalf("%v passes %g", m.Focal, m.Pass)
		}
		if m.Pass < 1-1e-9 {
			dimmed++
		}
	}
	seen := recap.Light(a, frames)
	zones := 0
	for _, s := range seen {
		if s.Zone == "" || s.Lux.N < 20 {
			continue
		}
		zones++
		for _, z := range light.Zones(a.Rink) {
			if z.ID != s.Zone {
				continue
			}
			if off := math.Abs(math.Log2(s.Lux.Median / luxAt(a, z.Centre()))); off > 1.0/3 {
				t.Errorf("%s: %.0f lx of %d frames, %.0f in truth, %.2f stops off", s.Zone, s.Lux.Median, s.Lux.N, luxAt(a, z.Centre()), off)
			}
			if s.Lux.Low >= s.Lux.Median || s.Lux.High <= s.Lux.Median || s.Survey.IsZero() {
				t.Errorf("%+v", s)
			}
		}
	}
	if zones < 3 || dimmed == 0 {
		t.Errorf("%d zones of %d frames, %d of them dimmed by the hole: %+v", zones, len(frames), dimmed, seen)
	}
	edits := recap.LightReadings(a, seen)
	next, _, err := edit.Editor{}.Apply(doc, edits)
	if err != nil || len(edits) < 2 {
		t.Fatalf("%d edits: %v", len(edits), err)
	}
	lit, err := next.Check()
	if err != nil || len(lit.Light.Readings) != len(a.Light.Readings)+len(edits) {
		t.Fatalf("the document is not sound then: %v", err)
	}
	// Another game's frames note the same places anew, and add none.
	for i := range seen {
		seen[i].Lux.Median *= 2
	}
	twice, _, err := edit.Editor{}.Apply(next, recap.LightReadings(lit, seen))
	if err != nil {
		t.Fatal(err)
	}
	brighter, err := twice.Check()
	if err != nil || len(brighter.Light.Readings) != len(lit.Light.Readings) {
		t.Fatalf("%d readings after another game, %d before: %v", len(brighter.Light.Readings), len(lit.Light.Readings), err)
	}
	for i, r := range brighter.Light.Readings {
		noted := i >= len(a.Light.Readings)
		if path := fmt.Sprintf("light.readings[#%d]", i+1); noted != (brighter.Source(path) == arena.Frames) || noted != (r.Lux > lit.Light.Readings[i].Lux*19/10) {
			t.Errorf("reading %d: %v after %v, from %q", i+1, r.Lux, lit.Light.Readings[i].Lux, brighter.Source(path))
		}
	}
}

// TestBlurFollowsTheMoments: a faster shutter smears less in proportion, and a hole's blur
// differs from the general rule, which knows no hole.
func TestBlurFollowsTheMoments(t *testing.T) {
	_, a := demo(t)
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	o, err := recap.Look(t.Context(), a, k, []string{"B1"})
	if err != nil {
		t.Fatal(err)
	}
	var frames []recap.Matched
	for _, shutter := range []unit.Shutter{1.0 / 250, 1.0 / 500, 1.0 / 1000, 1.0 / 4000} {
		f := frame("x", "19:20:00")
		f.Shutter = unit.Known(shutter)
		frames = append(frames, recap.Matched{Frame: f, Hole: "B1"})
	}
	o.See(frames)
	last := recap.Smear{Mean: math.Inf(1), Risk: 1.1}
	for i, m := range frames {
		s, ok := m.Smear.Get()
		if !ok || s.Mean >= last.Mean || s.Risk > last.Risk || s.Mean <= 0 {
			t.Errorf("%v: %+v after %+v", m.Shutter, s, last)
		}
		if first, _ := frames[0].Smear.Get(); math.Abs(s.Mean-first.Mean*m.Shutter.Or(0).Seconds()*250) > 1e-12 {
			t.Errorf("%v: not in proportion", m.Shutter)
		}
		if last = s; i == len(frames)-1 && s.Risk > 0.01 {
			t.Errorf("1/4000 s is at risk: %+v", s)
		}
	}
	unseen := []recap.Matched{{Frame: frame("x", "19:20:00"), Hole: "no hole"}, {Frame: recap.Frame{}, Hole: "B1"}}
	if o.See(unseen); unseen[0].Zone != "" || unseen[1].Pass != 0 || !unseen[0].Smear.IsZero() {
		t.Errorf("%+v", unseen)
	}
}

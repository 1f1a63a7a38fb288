package recap_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/edit"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

func demo(t testing.TB) (*arena.Document, arena.Arena) {
	t.Helper()
	d, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.Check()
	if err != nil {
		t.Fatal(err)
	}
	return d, a
}

func at(clock string) time.Time {
	t, err := time.Parse(time.DateTime, "2026-11-28 "+clock)
	if err != nil {
		panic(err)
	}
	return t
}

// evening is a game of two periods with Ann at B1, and at A1 in the second; Bo at A1 in
// the first.
func evening() recap.Evening {
	return recap.Evening{Game: "g1", Title: "Herons - Otters", Place: "Tidewater Pavilion",
		Stages: []recap.Stage{
			{Name: "period-1", Period: 1, From: at("19:00:00"), To: at("19:40:00")},
			{Name: "intermission-1", From: at("19:40:00"), To: at("19:55:00")},
			{Name: "period-2", Period: 2, From: at("19:55:00"), To: at("20:35:00")},
		},
		Seats: []recap.Seat{{Who: "ann", Name: "Ann", Hole: "B1", Periods: []int{1}}, {Who: "ann", Name: "Ann", Hole: "A1", Periods: []int{2}}, {Who: "bo", Hole: "A1", Periods: []int{1}}},
	}
}

func frame(body, clock string) recap.Frame {
	return recap.Frame{File: body + clock, Body: body, Taken: at(clock), Pixels: [2]int{6000, 4000},
		Shutter: unit.Known(unit.Shutter(0.001)), Stop: unit.Known(unit.Stop(2.8)), ISO: unit.Known(unit.ISO(3200)), Focal: unit.Known(200 * unit.Millimetre)}
}

func TestMatching(t *testing.T) {
	e := evening()
	owners := map[string]recap.Owner{"x": {Who: "ann"}, "y": {Who: "bo"}, "z": {Hole: "B3"}}
	slow := map[string]recap.Clock{"x": {Ahead: -5 * time.Minute, Spread: time.Second}}
	for _, c := range []struct {
		body, clock string
		clocks      map[string]recap.Clock
		hole, stage string
		sure        recap.Sure
	}{
		{"x", "19:20:00", nil, "B1", "period-1", recap.Certain},
		{"x", "20:10:00", nil, "A1", "period-2", recap.Certain},
		{"y", "19:20:00", nil, "A1", "period-1", recap.Certain},
		{"x", "19:39:00", nil, "B1", "period-1", recap.Likely},        // the clock is not checked
		{"x", "19:52:00", slow, "A1", "period-2", recap.Certain},      // 19:57 by the rink's clock
		{"y", "20:10:00", nil, "", "period-2", recap.Unmatched},       // no seat then
		{"w", "19:20:00", nil, "", "period-1", recap.Ambiguous},       // whose body?
		{"w", "20:10:00", nil, "A1", "period-2", recap.Certain},       // only one seat is left
		{"x", "19:47:00", nil, "", "intermission-1", recap.Ambiguous}, // Ann has two holes that day
		{"x", "23:00:00", nil, "", "", recap.Unmatched},
		{"z", "19:20:00", nil, "B3", "period-1", recap.Certain},
	} {
		got := e.Match([]recap.Frame{frame(c.body, c.clock)}, c.clocks, owners)[0]
		if got.Hole != c.hole || got.Stage != c.stage || got.Sure != c.sure || got.Why == "" {
			t.Errorf("%s at %s: %q in %q, %s (%s); want %q in %q, %s", c.body, c.clock, got.Hole, got.Stage, got.Sure, got.Why, c.hole, c.stage, c.sure)
		}
	}
}

// TestUniversalTime takes frames that tell their zone by it.
func TestUniversalTime(t *testing.T) {
	e := evening()
	e.Universal = true
	f := frame("x", "19:20:00")
	f.Taken, f.Zoned = f.Taken.In(time.FixedZone("", -5*3600)), true
	if got := e.Match([]recap.Frame{f}, nil, map[string]recap.Owner{"": {Who: "ann"}})[0]; got.Hole != "B1" || !got.At.Equal(at("19:20:00")) {
		t.Errorf("%q at %v", got.Hole, got.At)
	}
}

// TestClocks corrects a body by the scoreboard: exactly by a time of day, at a period's
// begin and end, and within what stops in play allow between.
func TestClocks(t *testing.T) {
	e := evening()
	f := []recap.Frame{frame("x", "20:00:00")}
	for _, c := range []struct {
		mark   recap.ClockMark
		ahead  time.Duration
		spread time.Duration // at most
	}{
		{recap.ClockMark{Shown: game.Shown{Day: 19*time.Hour + 30*time.Minute}}, 30 * time.Minute, 3 * time.Second},
		{recap.ClockMark{Shown: game.Shown{Period: 1, Left: 20 * time.Minute}}, time.Hour, 3 * time.Second},
		{recap.ClockMark{Shown: game.Shown{Period: 1, Left: 0}}, 20 * time.Minute, 3 * time.Second},
		{recap.ClockMark{Shown: game.Shown{Period: 1, Left: 10 * time.Minute}}, 40 * time.Minute, 6 * time.Minute}, // 20 min of stops, half of them so far
	} {
		c.mark.File = f[0].File
		got, err := e.Clocks(f, []recap.ClockMark{c.mark})
		x := got["x"]
		if err != nil || x.Ahead.Round(time.Second) != c.ahead || x.Spread > c.spread || x.Spread <= 0 || x.Marks != 1 {
			t.Errorf("%+v: %+v, %v; want %v ahead", c.mark, x, err, c.ahead)
		}
	}
	two := append(f, frame("x", "20:30:00"))
	got, err := e.Clocks(two, []recap.ClockMark{{File: two[0].File, Shown: game.Shown{Period: 1, Left: 10 * time.Minute}}, {File: two[1].File, Shown: game.Shown{Day: 19*time.Hour + 50*time.Minute}}})
	if x := got["x"]; err != nil || x.Marks != 2 || math.Abs((x.Ahead-40*time.Minute).Seconds()) > 1 || x.Spread > 3*time.Second {
		t.Errorf("two marks: %+v, %v", x, err)
	}
	for says, marks := range map[string][]recap.ClockMark{
		"no such frame":     {{File: "nothing", Shown: game.Shown{Day: time.Hour}}},
		"no period 7":       {{File: f[0].File, Shown: game.Shown{Period: 7, Left: time.Minute}}},
		"write minutes":     {{File: f[0].File, Shown: game.Shown{Period: 1, Left: 21 * time.Minute}}},
		"check both frames": {{File: two[0].File, Shown: game.Shown{Day: 19 * time.Hour}}, {File: two[1].File, Shown: game.Shown{Day: 21 * time.Hour}}},
	} {
		if _, err := e.Clocks(two, marks); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
	}
}

// TestUsed counts by hand: three frames in a second are one picture.
func TestUsed(t *testing.T) {
	e := evening()
	var frames []recap.Frame
	for _, c := range []string{"19:10:00", "19:10:01", "19:10:02", "19:20:00"} {
		frames = append(frames, frame("x", c))
	}
	frames[1].Rating = unit.Known(3)
	frames[3].Rating = unit.Known(1)
	matched := e.Match(frames, map[string]recap.Clock{"x": {Spread: time.Second}}, map[string]recap.Owner{"x": {Who: "ann"}})
	open := map[string]time.Duration{"B1": 50 * time.Minute}
	uses := e.Used(matched, recap.Options{KeptFrom: 2, Open: open})
	if len(uses) != 2 || uses[0].Stage != "" || uses[1].Stage != "period-1" {
		t.Fatalf("%+v", uses)
	}
	u := uses[0]
	perHour, _ := u.PerHour.Get()
	perMinute, _ := u.PerOpenMin.Get()
	// 1 keeper in 40 min: 1.5 an hour; Garwood's interval of 1 is 0.0253 to 5.572 (chance).
	if u.Hole != "B1" || u.Frames != 4 || u.Bursts != 2 || u.Kept != 1 || math.Abs(u.Hours-2.0/3) > 1e-9 ||
		math.Abs(perHour.Rate-1.5) > 1e-9 || math.Abs(perHour.Low-1.5*0.02532) > 1e-4 || math.Abs(perHour.High-1.5*5.5716) > 1e-3 || math.Abs(perMinute.Rate-0.02) > 1e-9 {
		t.Errorf("%+v, %+v an hour, %+v a minute", u, perHour, perMinute)
	}
	// 5 m/s for 1/1000 s over 2000 px for 1.8812 m: 5.3 px, less than 4000/500.
	if math.Abs(u.Blur.Median-5*0.001*2000/1.8812) > 0.01 || u.AtRisk != 0 {
		t.Errorf("blur %+v, %g at risk", u.Blur, u.AtRisk)
	}
	if isos := recap.ByISO(matched, recap.Options{}); len(isos) != 1 || isos[0].ISO != 3200 || isos[0].Bursts != 2 || math.Abs(isos[0].Noise-math.Sqrt(32)) > 1e-9 {
		t.Errorf("%+v", isos)
	}
}

// TestLightRoundTrip exposes for a light by third stops with a photographer's errors, a
// tenth of the frames with flash, and finds the light within a third of a stop; what is
// accepted stands in the survey.
func TestLightRoundTrip(t *testing.T) {
	doc, a := demo(t)
	r := rand.New(rand.NewPCG(1, 2))
	for _, lux := range []float64{300, 800, 1600} {
		var frames []recap.Matched
		for i := range 300 {
			shutter := []unit.Shutter{1.0 / 640, 1.0 / 1000, 1.0 / 1250}[i%3]
			iso := optics.DefaultCalibration.ISO(unit.Illuminance(lux*math.Exp2(0.3*r.NormFloat64())), shutter, 2.8)
			f := frame("x", "19:20:00")
			f.Shutter, f.ISO = unit.Known(shutter), unit.Known(unit.ISO(optics.NearestISO(iso).Nominal))
			if i%10 == 0 {
				f.ISO = unit.Known(unit.ISO(100)) // flash
			}
			frames = append(frames, recap.Matched{Frame: f, Hole: "B1", Stage: "period-1", Zone: []string{"", "corner-B-box"}[i%2]})
		}
		half := slices.Clone(frames)
		for i := range half {
			half[i].Pass = 0.5
		}
		for want, frames := range map[float64][]recap.Matched{lux: frames, 2 * lux: half} {
			for _, s := range recap.Light(a, frames) {
				if s.Zone != "" {
					s.Lux.N *= 2
				}
				if stops := math.Abs(math.Log2(s.Lux.Median / want)); stops > 1.0/3 || s.Lux.N != 300 || s.Survey.IsZero() {
					t.Errorf("%g lx: %+v, %.2f stops off", want, s, stops)
				}
			}
		}
		edits := recap.LightReadings(a, recap.Light(a, frames))
		next, _, err := edit.Editor{}.Apply(doc, edits)
		if err != nil || len(edits) != 1 {
			t.Fatalf("%d edits: %v", len(edits), err)
		}
		lit, err := next.Check()
		if err != nil {
			t.Fatal(err)
		}
		last := lit.Light.Readings[len(lit.Light.Readings)-1]
		if len(lit.Light.Readings) != len(a.Light.Readings)+1 || last.At.X < 15 || !last.Facing.Upright() || math.Abs(math.Log2(last.Lux.Lux()/lux)) > 1.0/3 {
			t.Errorf("noted %+v", last)
		}
	}
	if got := recap.LightReadings(a, recap.Light(a, nil)); len(got) != 0 {
		t.Errorf("no frames, %d readings", len(got))
	}
}

// TestOneGameMovesLittle, ten in the same way move more, and no frames move nothing; the
// file is one that choose takes.
func TestOneGameMovesLittle(t *testing.T) {
	_, a := demo(t)
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	o, err := recap.Look(t.Context(), a, k, []string{"B1", "A3", "no hole"})
	if err != nil {
		t.Fatal(err)
	}
	moved := func(n int) float64 {
		t.Helper()
		// The goal line's holes far more used than planned, and kept.
		uses := []recap.Use{{Hole: "B1", InPlay: recap.Taken{Bursts: 9 * n, Kept: 3 * n}, Hours: 2}, {Hole: "A3", InPlay: recap.Taken{Bursts: n}, Hours: 2}}
		got := recap.Learn(o, uses)
		most := 0.0
		for _, p := range play.Phases() {
			most = max(most, math.Abs(got.Assumptions.Share[p]/got.Before.Share[p]-1))
		}
		if n > 0 {
			back, err := play.ReadAssumptions("learnt.yaml", strings.NewReader(string(got.YAML())))
			if err != nil || math.Abs(back.Share[play.Rush]-got.Assumptions.Share[play.Rush]) > 0.01 {
				t.Errorf("the file: %v\n%s", err, got.YAML())
			}
			if f := got.Facts[0]; f.Seen < 0.89 || f.Seen > 0.91 || f.Expected > 0.8 {
				t.Errorf("%+v", f)
			}
		}
		return most
	}
	one, ten := moved(30), moved(3000)
	if none := moved(0); none != 0 || one > 0.15 || ten <= one {
		t.Errorf("a share moves by %.3f for one game, %.3f for a hundred, %.3f for none", one, ten, none)
	}
}

package recap_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

// TestFramesOfAnotherGameCountNowhere: neither light nor what was used and kept is told of
// them, only that they are there.
func TestFramesOfAnotherGameCountNowhere(t *testing.T) {
	_, a := demo(t)
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	here, other := frame("x", "19:20:00"), frame("x", "23:20:00")
	other.ISO, other.Rating = unit.Known(unit.ISO(100)), unit.Known(5)
	got, err := recap.Ask(t.Context(), recap.Question{Arena: a, Kit: k, Evening: evening(), Frames: []recap.Frame{here, other}, Owners: map[string]recap.Owner{"": {Who: "ann"}}})
	if err != nil || len(got.Frames) != 2 || got.Count(recap.Unmatched) != 1 {
		t.Fatalf("%+v, %v", got, err)
	}
	if len(got.Uses) != 2 || got.Uses[0].Frames != 1 || got.Uses[0].Kept != 0 || len(got.ISOs) != 1 || got.ISOs[0].ISO != 3200 {
		t.Errorf("%+v, %+v", got.Uses, got.ISOs)
	}
	if s := got.Light[0]; s.Lux.N != 1 {
		t.Errorf("%+v", got.Light)
	}
	// Without a game all frames count.
	if got.Evening.Stages = nil; len(got.Here()) != 2 {
		t.Errorf("%d frames of no game", len(got.Here()))
	}
}

// TestKeepersOfPeriods: what is kept of the warm-up is no keeper in an hour worked, for the
// hours are those of periods.
func TestKeepersOfPeriods(t *testing.T) {
	e := evening()
	e.Stages = slices.Insert(e.Stages, 0, recap.Stage{Name: "warm-up", From: at("18:30:00"), To: at("19:00:00")})
	e.Seats = e.Seats[:1]
	frames := []recap.Frame{frame("x", "18:40:00"), frame("x", "19:10:00")}
	for i := range frames {
		frames[i].Rating = unit.Known(4)
	}
	u := e.Used(e.Match(frames, nil, map[string]recap.Owner{"": {Who: "ann"}}), recap.Options{})[0]
	rate, _ := u.PerHour.Get()
	if u.Kept != 2 || u.InPlay != (recap.Taken{Bursts: 1, Kept: 1}) || rate.Rate != 1.5 { // 1 in 40 min
		t.Errorf("%+v, %+v an hour", u, rate)
	}
	// None kept: from 0 to 3.69 (Garwood 1936) in 40 min; all kept is a rate like any other.
	for i := range frames {
		frames[i].Rating = unit.Known(0)
	}
	u = e.Used(e.Match(frames, nil, map[string]recap.Owner{"": {Who: "ann"}}), recap.Options{})[0]
	if rate, ok := u.PerHour.Get(); !ok || rate.Rate != 0 || rate.Low != 0 || rate.High < 5.53 || rate.High > 5.54 {
		t.Errorf("none kept: %+v", rate)
	}
}

// TestUnknownIsNotZero: frames without pixels tell their risk of blur and no blur in pixels;
// those without shutter neither; without exposure no light.
func TestUnknownIsNotZero(t *testing.T) {
	_, a := demo(t)
	blind, mute := frame("x", "19:10:00"), frame("x", "19:20:00")
	blind.Pixels, blind.Shutter = [2]int{}, unit.Known(unit.Shutter(0.1))
	mute.Shutter, mute.Focal = unit.Maybe[unit.Shutter]{}, unit.Maybe[unit.Length]{}
	e := evening()
	matched := e.Match([]recap.Frame{blind, mute}, nil, map[string]recap.Owner{"": {Who: "ann"}})
	u := e.Used(matched, recap.Options{})[0]
	if u.Blur.N != 0 || u.AtRisk != 1 || u.Shutter.N != 1 || u.Focal.N != 1 || u.Stop.N != 2 {
		t.Errorf("%+v", u)
	}
	if lit := recap.Light(a, matched); lit[0].Lux.N != 1 {
		t.Errorf("%+v", lit)
	}
}

// TestStagesOfOddGames: two periods have two stages; before an overtime the third period
// does not end an intermission early, and a break shorter than usual shortens no period.
func TestStagesOfOddGames(t *testing.T) {
	names := func(e recap.Evening) (out []string) {
		for _, s := range e.Stages {
			out = append(out, s.Name+" "+s.From.Format("15:04")+"-"+s.To.Format("15:04"))
		}
		return out
	}
	stage := func(p int, clock string) game.Stage { return game.Stage{Name: game.PeriodStage(p), At: at(clock)} }
	for _, c := range []struct {
		g    game.Game
		want string
	}{
		{game.Game{ID: "g", Start: at("19:00:00"), Periods: 2}, "period-1 19:00-19:38, intermission-1 19:38-19:53, period-2 19:53-20:31, after 20:31-21:31"},
		{game.Game{ID: "g", Start: at("19:00:00"), Periods: 4, Day: []game.Stage{stage(3, "20:46:00"), stage(4, "21:27:00")}},
			"period-1 19:00-19:38, intermission-1 19:38-19:53, period-2 19:53-20:31, intermission-2 20:31-20:46, period-3 20:46-21:24, intermission-3 21:24-21:27, period-4 21:27-22:05, after 22:05-23:05"},
		{game.Game{ID: "g", Start: at("19:00:00"), Periods: 2, Day: []game.Stage{stage(2, "19:30:00")}}, "period-1 19:00-19:30, period-2 19:30-20:08, after 20:08-21:08"},
	} {
		if got := strings.Join(names(recap.EveningOf(game.Season{}, c.g)), ", "); got != c.want {
			t.Errorf("%s\nwant %s", got, c.want)
		}
	}
}

// TestCaptions say universal times as such, and whose frames a hole's are that was said.
func TestCaptions(t *testing.T) {
	e := evening()
	e.Universal = true
	f := frame("x", "19:20:00")
	f.File, f.Zoned = "card/a.jpg", true
	list := e.Sidecars(e.Match([]recap.Frame{f}, nil, map[string]recap.Owner{"x": {Who: "ann", Hole: "B3"}}))
	if len(list) != 1 || list[0].Path != "card/a.xmp" {
		t.Fatalf("%+v", list)
	}
	for _, want := range []string{"<photoshop:DateCreated>2026-11-28T19:20:00Z<", "<photoshop:Credit>Ann<", "photo hole B3"} {
		if !strings.Contains(string(list[0].Data), want) {
			t.Errorf("no %s in\n%s", want, list[0].Data)
		}
	}
	f.Zoned, f.Taken = false, f.Taken.Add(-5*time.Hour)
	if m := e.Match([]recap.Frame{f}, nil, nil)[0]; !strings.Contains(m.Why, "does not tell its zone") {
		t.Errorf("%s", m.Why)
	}
}

// TestTheBestSetByWhatWasLearnt is that which choose has for the file of it.
func TestTheBestSetByWhatWasLearnt(t *testing.T) {
	_, a := demo(t)
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
	o, err := recap.Look(t.Context(), a, k, []string{"B1", "A3"})
	if err != nil {
		t.Fatal(err)
	}
	learnt := recap.Learn(o, []recap.Use{{Hole: "B1", InPlay: recap.Taken{Bursts: 9000, Kept: 3000}, Hours: 2}, {Hole: "A3", InPlay: recap.Taken{Bursts: 1000}, Hours: 2}})
	opt := recap.BestOptions()
	opt.Moments, opt.Nodes = 500, 20
	best, err := learnt.Choose(t.Context(), a, sets, k, opt)
	if err != nil {
		t.Fatal(err)
	}
	if opt.Play, err = play.ReadAssumptions("learnt.yaml", strings.NewReader(string(learnt.YAML()))); err != nil {
		t.Fatal(err)
	}
	filed, err := choose.ForArena(t.Context(), a, sets, k, opt)
	if err != nil {
		t.Fatal(err)
	}
	places := func(ans choose.Answer) (out []string) {
		for _, h := range ans.Holes {
			out = append(out, h.Hole.ID)
		}
		return out
	}
	now, before := best.By, best.Before
	if !slices.Equal(places(now), places(filed)) || len(now.Holes) == 0 || now.Value == before.Value {
		t.Errorf("%v by what was learnt (%g), %v by its file (%g), %v before (%g)", places(now), now.Value, places(filed), filed.Value, places(before), before.Value)
	}
}

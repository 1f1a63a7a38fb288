package recap_test

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"example.org/rinkpane/internal/decide/game"
	"example.org/rinkpane/internal/decide/recap"
)

// day is a mark of a scoreboard that shows the time of day.
func day(t *testing.T, f recap.Frame, clock string) recap.ClockMark {
	t.Helper()
	at, err := time.Parse(time.TimeOnly, clock)
	if err != nil {
		t.Fatal(err)
	}
	return recap.ClockMark{File: f.File, Shown: game.Shown{Day: time.Duration(at.Hour())*time.Hour + time.Duration(at.Minute())*time.Minute + time.Duration(at.Second())*time.Second}}
}

// TestDriftByHand: marks at 18:00 and 22:00 put a clock 10 s and 18 s ahead, each within 2 s.
// Their middle is 14 s at 20:00, within 2/sqrt 2 = 1.414 s. Weights of 1/4, levers of 2 h and
// a drift of 1 s/h about none beside them: (1/4 2 4 + 1/4 2 4) / (1/4 4 + 1/4 4 + 1) = 4/3
// s/h, within 1/sqrt 3. At 23:00 the clock is 14 + 3 4/3 = 18 s ahead.
func TestDriftByHand(t *testing.T) {
	e := evening()
	e.Stages[2].To = at("23:59:00")
	frames := []recap.Frame{frame("x", "18:00:10"), frame("x", "22:00:18"), frame("x", "23:00:14"), frame("y", "18:00:10")}
	clocks, err := e.Clocks(frames, []recap.ClockMark{day(t, frames[0], "18:00:00"), day(t, frames[1], "22:00:00"), day(t, frames[3], "18:00:00")})
	if err != nil {
		t.Fatal(err)
	}
	c := clocks["x"]
	if c.Marks != 2 || c.At != at("20:00:14") || math.Abs(c.Ahead.Seconds()-14) > 0.01 || math.Abs(c.Spread.Seconds()-math.Sqrt2) > 0.01 ||
		math.Abs(c.Drift-4.0/3) > 0.005 || math.Abs(c.DriftSpread-1/math.Sqrt(3)) > 0.005 {
		t.Errorf("%+v", c)
	}
	// The other body's one mark tells an offset, and no drift.
	if y := clocks["y"]; y.Marks != 1 || y.Ahead != 10*time.Second || y.Drift != 0 || y.DriftSpread != 1 || y.Spread != 2*time.Second {
		t.Errorf("%+v", y)
	}
	for _, m := range e.Match(frames[2:3], clocks, nil) {
		if off := m.At.Sub(at("22:59:56")).Abs(); off > 20*time.Millisecond {
			t.Errorf("at %v", m.At)
		}
	}
}

// TestDriftRoundTrip draws clocks with an offset and a drift, shows each two or three
// scoreboards read with an error of 2 s, and finds the rink's time of other frames within
// two standard deviations as often as that says: 93 to 97 of 100.
func TestDriftRoundTrip(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 8))
	e := evening()
	in, all := 0, 0
	for range 600 {
		offset, drift := 600*r.NormFloat64(), r.NormFloat64() // s, s/h
		shown := func(hours float64) recap.Frame {
			f := frame("x", "18:00:00")
			f.Taken = f.Taken.Add(time.Duration((hours*3600 + offset + drift*hours) * float64(time.Second)))
			f.File = f.Taken.String()
			return f
		}
		var frames []recap.Frame
		var marks []recap.ClockMark
		for _, hours := range []float64{0.2, 2.5, 5}[:2+r.IntN(2)] {
			f := shown(hours)
			frames = append(frames, f)
			read := 18*3600 + hours*3600 + 2*r.NormFloat64()
			marks = append(marks, recap.ClockMark{File: f.File, Shown: game.Shown{Day: time.Duration(read * float64(time.Second))}})
		}
		clocks, err := e.Clocks(frames, marks)
		if err != nil {
			continue // one in some hundred is refused
		}
		c, hours := clocks["x"], 4*r.Float64()
		f := shown(hours)
		off := e.Match([]recap.Frame{f}, clocks, nil)[0].At.Sub(at("18:00:00")).Seconds() - hours*3600
		h := f.Taken.Sub(c.At).Hours()
		all++
		if math.Abs(off) <= 2*math.Hypot(c.Spread.Seconds(), c.DriftSpread*h) {
			in++
		}
	}
	if share := float64(in) / float64(all); all < 580 || share < 0.93 || share > 0.975 {
		t.Errorf("%d of %d within two standard deviations", in, all)
	}
}

// TestMarksThatCannotBe are refused with the reason: contradictions, a drift beyond any
// camera's, an overtime of unknown length, a time of day beside universal times.
func TestMarksThatCannotBe(t *testing.T) {
	early, late := frame("x", "19:00:00"), frame("x", "21:00:00")
	over := evening()
	over.Stages = append(over.Stages, recap.Stage{Name: "period-4", Period: 4, From: at("21:00:00"), To: at("21:20:00")})
	universal := evening()
	universal.Universal = true
	for _, c := range []struct {
		e     recap.Evening
		marks []recap.ClockMark
		says  string
	}{
		{evening(), []recap.ClockMark{day(t, early, "19:00:00"), day(t, late, "20:59:00")}, "2h0m0s apart, put it 60 s apart; reading errors and a drift of 3 s an hour explain 14 s"},
		{evening(), []recap.ClockMark{day(t, early, "19:00:00"), day(t, late, "20:59:48")}, ""},
		{evening(), []recap.ClockMark{day(t, early, "19:00:00"), day(t, early, "19:00:20")}, "0s apart, put it 20 s apart"},
		{over, []recap.ClockMark{{File: late.File, Shown: game.Shown{Period: 4, Left: time.Minute}}}, "overtimes take 5, 10 or 20 minutes"},
		{universal, []recap.ClockMark{day(t, early, "19:00:00")}, "does not tell its zone"},
	} {
		_, err := c.e.Clocks([]recap.Frame{early, late}, c.marks)
		if (err == nil) != (c.says == "") || err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v, want %q", err, c.says)
		}
	}
}

// TestScoreboardsAfterMidnight and in another zone than the game's times.
func TestScoreboardsAfterMidnight(t *testing.T) {
	e := evening()
	for i := range e.Stages { // a game from 22:30 on
		e.Stages[i].From, e.Stages[i].To = e.Stages[i].From.Add(210*time.Minute), e.Stages[i].To.Add(210*time.Minute)
	}
	f := frame("x", "00:02:00")
	f.Taken = f.Taken.AddDate(0, 0, 1)
	got, err := e.Clocks([]recap.Frame{f}, []recap.ClockMark{day(t, f, "00:01:00")})
	if err != nil || got["x"].Ahead != time.Minute {
		t.Errorf("after midnight: %+v, %v", got, err)
	}
	// Without a game: a camera that is a little behind a scoreboard just after midnight.
	f.Taken = at("23:59:50")
	if got, err = (recap.Evening{}).Clocks([]recap.Frame{f}, []recap.ClockMark{day(t, f, "00:00:05")}); err != nil || got["x"].Ahead != -15*time.Second {
		t.Errorf("without a game: %+v, %v", got, err)
	}
	// Times in universal time, a scoreboard five hours behind it, a camera that tells its zone.
	u := evening()
	u.Universal = true
	zoned := frame("x", "14:20:00")
	zoned.Taken, zoned.Zoned = time.Date(2026, 11, 28, 14, 20, 0, 0, time.FixedZone("", -5*3600)), true
	if got, err = u.Clocks([]recap.Frame{zoned}, []recap.ClockMark{day(t, zoned, "14:19:00")}); err != nil || got["x"].Ahead != time.Minute {
		t.Errorf("universal: %+v, %v", got, err)
	}
}

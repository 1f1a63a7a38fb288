package gain

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/fit"
	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/survey/play"
)

func ask(t testing.TB) (arena.Arena, frame.Request, *play.Set) {
	t.Helper()
	d, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := d.Check()
	if err != nil {
		t.Fatal(err)
	}
	k, err := kit.Default()
	if err != nil {
		t.Fatal(err)
	}
	l, _ := k.Lens("70-200")
	set, err := play.Sample(t.Context(), a.Rink, play.DefaultAssumptions(), 1, 400)
	if err != nil {
		t.Fatal(err)
	}
	return a, frame.Request{
		Hole: "B1", Lens: l, Body: k.Bodies[0],
		Use: fit.Setting{Focal: l.FocalMax, Stop: l.StopLong}, Shutter: 0.001,
	}, set
}

func gained(t testing.TB, change func(*arena.Arena, *frame.Request)) Answer {
	t.Helper()
	a, q, set := ask(t)
	if change != nil {
		change(&a, &q)
	}
	ans, err := Of(a, q, set)
	if err != nil {
		t.Fatal(err)
	}
	return ans
}

// Each row is the hole's own fit and the pane's own physics at that angle.
func TestRowsAreTheRoomsOwnAnswers(t *testing.T) {
	ans := gained(t, nil)
	a, q, _ := ask(t)
	o, err := a.Opening("B1")
	if err != nil {
		t.Fatal(err)
	}
	c, err := fit.FromKit(o, q.Lens, q.Body, q.Use)
	if err != nil {
		t.Fatal(err)
	}
	if len(ans.Rows) != 9 {
		t.Fatalf("%d rows", len(ans.Rows))
	}
	for i, r := range ans.Rows {
		angle := unit.Angle(10*i) * unit.Degree
		v := c.At(angle, 0)
		seen, err := optics.Pane{Plate: ans.Worn.Plate, Haze: ans.Worn.Haze}.See(angle, optics.Surround{Detail: frame.UsualDetail, Mirror: frame.UsualMirror})
		if err != nil {
			t.Fatal(err)
		}
		if r.Hole != (View{v.Centre, v.WorstCorner()}) || r.Worn != seen {
			t.Errorf("%v: %+v", angle.Degrees(), r)
		}
		if r.New.Contrast < r.Worn.Contrast {
			t.Errorf("%v deg: a worn pane leaves more than a new one", angle.Degrees())
		}
	}
}

// The ghost in pixels by hand: apart x f/(s-f) / pitch at the median distance.
func TestGhostInPixelsByHand(t *testing.T) {
	ans := gained(t, nil)
	_, q, _ := ask(t)
	r := ans.Rows[4]
	f, z := ans.Focal.Millimetres(), ans.Distance.Millimetres()
	pitch := q.Body.Sensor.W.Millimetres() / float64(q.Body.PixelsW)
	if want := r.New.Ghost.Apart.Millimetres() * f / (z - f) / pitch; math.Abs(r.GhostPx-want) > 1e-9*want {
		t.Errorf("%v px, by hand %v", r.GhostPx, want)
	}
}

// Shares are shares of the moments, means lie between the rows' ends.
func TestSharesAndMeans(t *testing.T) {
	ans := gained(t, nil)
	sum := 0.0
	for _, r := range ans.Rows {
		sum += r.Share
	}
	if math.Abs(sum-1) > 1e-9 || !(ans.Reached > 0 && ans.Reached < 1) {
		t.Errorf("shares sum to %v, reached %v", sum, ans.Reached)
	}
	if m := ans.All; !(m.WornContrast < m.NewContrast && m.NewContrast <= 1 && m.PanePass < ans.Rows[0].New.Transmission+1e-9 && m.PanePass > 0.4) {
		t.Errorf("%+v", m)
	}
	if w := ans.Within; !(w.HolePass >= 0.5 && w.HolePass <= 1) {
		t.Errorf("where the hole reaches it passes %v", w.HolePass)
	}
}

// A measured haze takes the place of the worn pane's, and is never less than
// a new pane's share of it.
func TestMeasuredHaze(t *testing.T) {
	ans := gained(t, func(_ *arena.Arena, q *frame.Request) { q.Haze = unit.Known(0.03) })
	if ans.Worn.Haze != 0.03 || ans.New.Haze != 0.005 {
		t.Errorf("haze %v worn, %v new", ans.Worn.Haze, ans.New.Haze)
	}
}

func TestGainIsRefused(t *testing.T) {
	a, q, set := ask(t)
	q.Hole = "LW1"
	if _, err := Of(a, q, set); err == nil || !strings.Contains(err.Error(), "low window") {
		t.Errorf("a low window: %v", err)
	}
	a, q, _ = ask(t)
	if _, err := Of(a, q, play.NewSet(set.Layout, 0)); err == nil || !strings.Contains(err.Error(), "no moment") {
		t.Errorf("no moments: %v", err)
	}
}

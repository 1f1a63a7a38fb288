package puck

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/play"
	"example.org/rinkpane/internal/survey/rink"
)

func demo(t testing.TB) arena.Arena {
	t.Helper()
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	a, err := doc.Check()
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestAssessDemo(t *testing.T) {
	a := demo(t)
	guards, err := Assess(t.Context(), a, DefaultOptions())
	if err != nil {
		t.Fatal(err)
	}
	if len(guards) != len(a.Working()) || len(guards) < 8 {
		t.Fatalf("%d guards for %d holes", len(guards), len(a.Working()))
	}
	for i, g := range guards {
		if g.Hole != a.Working()[i].ID {
			t.Errorf("guard %d is of hole %s", i, g.Hole)
		}
		if at := g.ShareAtPane.Or(0); !(g.ShareOfShots > 0 && g.ShareOfShots < at && at < 0.01) {
			t.Errorf("%s: share %g, at the pane %g", g.Hole, g.ShareOfShots, at)
		}
		if want := g.ShareOfShots * DefaultOptions().GameShots; g.Game.PerHour != want {
			t.Errorf("%s: %g pucks an hour, want %g", g.Hole, g.Game.PerHour, want)
		}
		if g.ShareHigh < 2*gamesOverModel*g.ShareOfShots || g.Game.PerHourHigh != g.ShareHigh*DefaultOptions().GameShots {
			t.Errorf("%s: high bound %g of a share of %g", g.Hole, g.ShareHigh, g.ShareOfShots)
		}
		s, limit := g.Sector, g.AnyLimit.Or(0)
		if !s.Passing || s.From >= s.To || -limit > s.From || s.To > limit {
			t.Errorf("%s: sector %+v", g.Hole, s)
		}
		if !(0 < s.Typical && s.Typical <= s.Far && s.Far <= s.Farthest && s.Farthest < 80) {
			t.Errorf("%s: landings %+v", g.Hole, s)
		}
		if g.MeanJ < 10 || g.MostJ < g.MeanJ || g.MostJ > Energy(45) {
			t.Errorf("%s: %g J mean, %g most", g.Hole, g.MeanJ, g.MostJ)
		}
	}
}

func TestAssessIsReproducible(t *testing.T) {
	a := demo(t)
	one, err1 := Assess(t.Context(), a, DefaultOptions())
	two, err2 := Assess(t.Context(), a, DefaultOptions())
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	if x, y := fmt.Sprintf("%+v", one), fmt.Sprintf("%+v", two); x != y {
		t.Error("two runs differ")
	}
}

// Mirroring hole and shots along the rink mirrors the sector and keeps the share.
func TestMirror(t *testing.T) {
	a := demo(t)
	per := a.Rink.Perimeter()
	shot := Stray().At(geom.Vec2{X: 20, Y: -3}, geom.Vec2{X: 27}, 1)
	back := Stray().At(geom.Vec2{X: -20, Y: -3}, geom.Vec2{X: -27}, 1)
	p := glass.Pane{ID: "p", From: 20, Width: 1, Height: 2, Thickness: unit.Known(12 * mm)}
	q := p
	q.ID, q.From = "q", per-21
	h := glass.Hole{ID: "h", Pane: "p", Station: 20.4, Height: 1.5, Size: unit.Size{W: 140 * mm, H: 114 * mm}}
	k := h
	k.ID, k.Pane, k.Station = "k", "q", per-20.4
	a.Panes, a.Holes = []glass.Pane{p, q}, []glass.Hole{h, k}
	o := DefaultOptions()
	o.Shots = []Shot{shot, back}
	g, err := Assess(t.Context(), a, o)
	if err != nil {
		t.Fatal(err)
	}
	if g[0].ShareOfShots == 0 || math.Abs(g[0].ShareOfShots/g[1].ShareOfShots-1) > 0.02 {
		t.Errorf("shares %g and %g", g[0].ShareOfShots, g[1].ShareOfShots)
	}
	if math.Abs((g[0].Sector.From + g[1].Sector.To).Degrees()) > 1e-6 {
		t.Errorf("sectors %+v and %+v", g[0].Sector, g[1].Sector)
	}
}

// A goal between shot and hole catches the low pucks: all of a shot from one
// place, and of one that stands for others round it those that cross between
// the posts, by geometry.
func TestGoalCatches(t *testing.T) {
	const overBar = 11.9772 // degrees, struck at 30 m/s 7 m off: 1.2 m high, by time integration
	dir, g := geom.Vec2{X: 1}, goalFrames{play.Layout{GoalX: 27, GoalHeight: 1.2}.Goals(), 0.9, 1.2}
	for _, c := range []struct {
		name   string
		up     float64 // degrees
		at     geom.Vec2
		spread unit.Length
		far    float64
		want   float64
	}{
		{"a low shot", 2, geom.Vec2{X: 20}, 0, 10, 1},
		{"a high one", 20, geom.Vec2{X: 20}, 0, 10, 0},
		{"one beside the goal", 2, geom.Vec2{X: 20, Y: 3}, 0, 10, 0},
		{"one from behind it", 2, geom.Vec2{X: 28}, 0, 5, 0},
		{"shots from 1.5 m to either side cross over 0.9 m", 2, geom.Vec2{X: 20}, 1.5, 10, 1},
		{"shots from 6 m to either side cross over 3.6 m", 2, geom.Vec2{X: 20}, 6, 10, 0.5},
		{"half of them beside a post", 2, geom.Vec2{X: 20, Y: 0.9}, 3, 10, 0.5},
		{"shots from 2 m before and behind, half of them under the bar", overBar, geom.Vec2{X: 20}, 2, 10, 0.5},
	} {
		s, slack := Shot{From: c.at, Spread: c.spread}, 1e-12
		if c.up == overBar {
			slack = 1e-3 // its angle has so many digits
		}
		if got := g.caught(FlatBody(), 30, unit.Angle(c.up)*unit.Degree, s, dir, c.far); math.Abs(got-c.want) > slack {
			t.Errorf("%s: %v caught, by hand %v", c.name, got, c.want)
		}
	}
}

func TestRank(t *testing.T) {
	if twins := Rank([]Guard{{Hole: "b", ShareOfShots: 2e-7 + 1e-14, MeanJ: 5}, {Hole: "a", ShareOfShots: 2e-7, MeanJ: 5 - 1e-9}}); twins[0].Hole != "a" {
		t.Error("places that mirror one another are ranked by rounding")
	}
	order := Rank([]Guard{{Hole: "c", ShareOfShots: 1}, {Hole: "b", ShareOfShots: 2}, {Hole: "a", ShareOfShots: 1}, {Hole: "d", ShareOfShots: 1, MeanJ: 5}})
	got := ""
	for _, g := range order {
		got += g.Hole
	}
	if got != "bdac" {
		t.Errorf("order %s", got)
	}
}

func TestNoGoalLineNoShots(t *testing.T) {
	r, err := rink.New(rink.Dimensions{Length: 60, Width: 30, CornerRadius: 8})
	if err != nil {
		t.Fatal(err)
	}
	if shots, err := DefaultShots(t.Context(), r, play.Game{}); len(shots) != 0 || err != nil {
		t.Errorf("%d shots, %v", len(shots), err)
	}
}

func TestOptionsAreChecked(t *testing.T) {
	a := demo(t)
	for name, change := range map[string]func(*Options){
		"shots per hour": func(o *Options) { o.GameShots = -1 },
		"open minutes":   func(o *Options) { o.PracticeMinutes = math.NaN() },
		"floor":          func(o *Options) { o.Floor = 50 },
		"shot speed":     func(o *Options) { o.Shots = []Shot{{Aim: geom.Vec2{X: 1}}} },
		"shot from":      func(o *Options) { o.Shots = []Shot{Slap().At(geom.Vec2{}, geom.Vec2{}, 1)} },
		"shot spreads":   func(o *Options) { s := Slap(); s.SideSD = 0; o.Shots = []Shot{s.At(geom.Vec2{}, geom.Vec2{X: 1}, 1)} },
		"shot weight":    func(o *Options) { o.Shots = []Shot{Slap().At(geom.Vec2{}, geom.Vec2{X: 1}, -1)} },
	} {
		o := DefaultOptions()
		change(&o)
		if _, err := Assess(t.Context(), a, o); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: error %v", name, err)
		}
	}
}

// By hand: a bare elbow of 45 mm radius and 30 deg half-angle in a hole 114.3 mm high:
// half-width 57.15 > 45 cos 30 = 38.97, so 45/2 + (57.15 - 38.97) / tan 30 = 53.99 mm.
func TestElbowByHand(t *testing.T) {
	for _, r := range Through(opening(t, 139.7, 114.3, 0)) {
		switch r.What {
		case "elbow, bare":
			want := 22.5 + (57.15-45*math.Cos(math.Pi/6))/math.Tan(math.Pi/6)
			if !r.Passes || math.Abs(r.Past.Millimetres()-want) > 1e-9 {
				t.Errorf("%+v, want %.3f mm", r, want)
			}
		case "elbow, padded": // 57.15 < 70 cos 30 = 60.62: the round tip, 70 - sqrt(70^2 - 57.15^2)
			want := 70 - math.Sqrt(70*70-57.15*57.15)
			if !r.Passes || math.Abs(r.Past.Millimetres()-want) > 1e-9 {
				t.Errorf("%+v, want %.3f mm", r, want)
			}
		}
	}
	for _, r := range Through(opening(t, 30, 30, 12)) {
		if r.Passes {
			t.Errorf("a hole of 30 mm lets %s through by %.1f mm", r.What, r.Past.Millimetres())
		}
	}
}

func BenchmarkAssess(b *testing.B) {
	a, o := demo(b), DefaultOptions()
	for b.Loop() {
		if _, err := Assess(b.Context(), a, o); err != nil {
			b.Fatal(err)
		}
	}
}

package puck

import (
	"math"
	"testing"

	"example.org/rinkpane/internal/measure/geom"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/survey/play"
)

// By hand, 40 deg along and 20 deg up: the flight rises tan 20 / cos 40 =
// 0.475129 per metre into the pane, so the flat puck's window is
// 139.7 - 12.7 tan 40 - 76.2 / cos 40 = 29.571399 mm by
// 114.3 - 12.7 x 0.475129 - 25.4 - 76.2 x 0.475129 = 46.660997 mm.
func TestFlatFlightByHand(t *testing.T) {
	got := usual(t).FlatFlight(Flight{Along: 40 * unit.Degree, Up: 20 * unit.Degree})
	if want := 29.571399 * 46.660997; math.Abs(got.AreaM2*1e6-want) > 1e-3 || got.Pass != 1 {
		t.Errorf("%.4f mm2, by hand %.4f", got.AreaM2*1e6, want)
	}
	if steep := usual(t).FlatFlight(Flight{Up: 60 * unit.Degree}); steep != (Window{}) {
		t.Errorf("a steep flat puck passes: %+v", steep)
	}
}

// The glass stands behind the boards' face; a flat pane in a corner faces as
// at its middle, a curved one as the boards do.
func TestFacing(t *testing.T) {
	a := demo(t)
	back := a.Boards.Setback.Or(0).Metres()
	if back == 0 {
		t.Fatal("the demo's glass has no setback")
	}
	corner := 90 * unit.Foot
	p := glass.Pane{From: corner, Width: 4 * unit.Foot, Height: 2}
	for _, curved := range []bool{true, false} {
		p.Curved = curved
		at := corner + unit.Foot
		got := facing(a, arena.Opening{Pane: unit.Known(p), Setback: arena.Fact{Value: a.Boards.Setback.Or(0)}})(at, 1.5)
		normalAt := at
		if !curved {
			normalAt = corner + 2*unit.Foot
		}
		n := a.Rink.Normal(normalAt)
		if got.normal != n || got.tangent != a.Rink.Tangent(normalAt) || got.height != 1.5 {
			t.Errorf("curved %v: %+v", curved, got)
		}
		if off := got.at.Sub(a.Rink.Point(at)); math.Abs(off.Len()-back) > 1e-12 || off.Dot(n) >= 0 {
			t.Errorf("curved %v: the glass stands %v off the boards", curved, off)
		}
	}
}

// The pane's share is the density summed over its area: three points each way
// against a fine grid.
func TestShareAtPaneAgainstGrid(t *testing.T) {
	a := demo(t)
	p := glass.Pane{From: 20, Width: 1.2, Height: 1.8}
	shots := []Shot{Stray().At(geom.Vec2{X: 19, Y: -6}, geom.Vec2{X: 22, Y: -12}, 3), Clearance().At(geom.Vec2{X: 17, Y: -4}, geom.Vec2{X: 24, Y: -12}, 1)}
	face := facing(a, arena.Opening{Pane: unit.Known(p), Setback: arena.Fact{Value: a.Boards.Setback.Or(0)}})
	const n = 60
	sum := 0.0
	for i := range n {
		for k := range n {
			at := face(p.From+p.Width*unit.Length(float64(i)+0.5)/n, a.Boards.Height+p.Height*unit.Length(float64(k)+0.5)/n)
			for _, s := range shots {
				s.arrivals(at, goals(a), func(v arrival) { sum += v.perM2 * s.Weight / 4 })
			}
		}
	}
	want := sum * 1.2 * 1.8 / (n * n)
	if got := atPane(a, p, shots, face); want < 1e-3 || math.Abs(got/want-1) > 0.02 {
		t.Errorf("share %.6f, grid %.6f", got, want)
	}
	if got := atPane(a, p, nil, face); got != 0 {
		t.Errorf("no shots: %g", got)
	}
}

// A puck that flies toward rising station leaves at a positive bearing.
func TestBearingsSign(t *testing.T) {
	a := demo(t)
	p := glass.Pane{ID: "p", From: 20, Width: 2, Height: 1.8, Thickness: unit.Known(12 * mm)}
	h := glass.Hole{ID: "h", Pane: "p", Station: 21, Height: 1.5, Size: unit.Size{W: 140 * mm, H: 114 * mm}}
	a.Panes, a.Holes = []glass.Pane{p}, []glass.Hole{h}
	for _, c := range []struct{ x, sign float64 }{{17, 1}, {25, -1}} {
		o := DefaultOptions()
		o.Shots = []Shot{Clearance().At(geom.Vec2{X: c.x, Y: -6}, geom.Vec2{X: 21, Y: -12.95}, 1)}
		g, err := Assess(t.Context(), a, o)
		if err != nil || !g[0].Sector.Passing {
			t.Fatal(g, err)
		}
		if b := g[0].Sector.From.Degrees() * c.sign; b < 20 || b > 40 {
			t.Errorf("struck from x = %g m: bearing %.1f deg", c.x, g[0].Sector.From.Degrees())
		}
	}
}

// Played shots keep their number and their places: each cell stands at the
// mean of its shots.
func TestPlayedKeepsTheShots(t *testing.T) {
	shots := []play.Shot{{X: 20.1, Y: 4.2, End: 1}, {X: 20.5, Y: 3.4, End: 1}, {X: 20.3, Y: -4.1, End: 1}, {X: -20.3, Y: 4.1, End: -1}, {X: 14, Y: 4, End: 1}}
	got := Played(shots, play.Layout{GoalX: 27})
	total := 0.0
	places := map[geom.Vec2]float64{}
	for _, s := range got {
		total += s.Weight
		places[s.From] += s.Weight
		if want := math.Copysign(27, s.From.X); s.Aim != (geom.Vec2{X: want}) {
			t.Errorf("shot from %v aims at %v", s.From, s.Aim)
		}
	}
	if math.Abs(total-5) > 1e-12 || len(places) != 4 || len(got) != 12 {
		t.Errorf("%d shots at %d places, weight %g", len(got), len(places), total)
	}
	for at, w := range map[geom.Vec2]float64{{X: 20.3, Y: 3.8}: 2, {X: 20.3, Y: -4.1}: 1, {X: -20.3, Y: 4.1}: 1, {X: 14, Y: 4}: 1} {
		found := 0.0
		for p, got := range places {
			if p.Sub(at).Len() < 1e-9 {
				found = got
			}
		}
		if math.Abs(found-w) > 1e-12 {
			t.Errorf("weight %g at %v, want %g", found, at, w)
		}
	}
}

// By hand at the common hole in a half-inch pane: the blade upright is 40 mm
// wide, so it passes up to acos(40/140.276) - atan(12.7/139.7) = 68.2376 deg and
// stands out by 63 in - 600 mm - 12.7 mm = 987.5 mm; the arm of 650 mm by 637.3 mm.
func TestReachByHand(t *testing.T) {
	for _, r := range Through(usual(t)) {
		switch r.What {
		case "stick blade":
			if q := r.Limit.Or(0).Degrees(); math.Abs(q-68.23764) > 1e-4 || math.Abs(r.Past.Millimetres()-987.5) > 1e-9 || r.Toward != "stand" {
				t.Errorf("%+v, limit %.5f", r, q)
			}
		case "hand and arm":
			if math.Abs(r.Past.Millimetres()-637.3) > 1e-9 || r.Toward != "ice" {
				t.Errorf("%+v", r)
			}
		}
	}
	// A slot takes the hand, but the forearm stops: 200 - 12.7 mm.
	slot := hand(opening(t, 139.7, 60, 12.7))
	if !slot.Passes || math.Abs(slot.Past.Millimetres()-187.3) > 1e-9 {
		t.Errorf("slot: %+v", slot)
	}
	// Turned on its side where it does not go upright.
	if flat := stick(opening(t, 139.7, 60, 12.7)); !flat.Passes {
		t.Errorf("the blade lies flat in a slot: %+v", flat)
	}
}

// Landing distances count from the glass, not from the shot.
func TestLandingCountsFromTheGlass(t *testing.T) {
	s := Clearance().At(geom.Vec2{}, geom.Vec2{X: 1}, 1)
	s.SpeedSD = 0 // else the farthest lies beyond that of the mean speed
	p := place{at: geom.Vec2{X: 12}, normal: geom.Vec2{X: -1}, tangent: geom.Vec2{Y: 1}, height: 1.5}
	sum := newTally(usual(t), NewOrientations(64))
	sum.add([]Shot{s}, p, goalFrames{})
	far := 0.0
	for _, v := range sum.passes {
		m := Struck(1.5, v.motion.Speed(), v.motion.Up())
		far = max(far, FlatBody().Land(m, 0.2).Distance.Metres())
	}
	got := sum.sector(1.5, 0.2, usual(t).AnyLimit(), DefaultOptions().GameShots)
	if len(sum.passes) < 4 || math.Abs(got.Farthest.Metres()-far) > 0.01 || far < 5 {
		t.Errorf("%d ways through, farthest %.3f m, want %.3f", len(sum.passes), got.Farthest.Metres(), far)
	}
}

// One puck in 40 hours, open for 80 minutes: 1/30 expected, 1 - exp(-1/30) = 0.0327839.
// Twice as many at most: 1 - exp(-1/15) = 0.0644930.
func TestExpectByHand(t *testing.T) {
	p := expect(0.025, 0.05, 80)
	if math.Abs(p.Expected-1.0/30) > 1e-15 || math.Abs(p.AtLeastOne-0.0327839) > 1e-7 || p.PerHour != 0.025 || p.PerHourHigh != 0.05 || math.Abs(p.ExpectedHigh-1.0/15) > 1e-15 || math.Abs(p.AtLeastOneHigh-0.0644930) > 1e-7 || p.Minutes != 80 {
		t.Errorf("%+v", p)
	}
}

// Beside a hundred shots at the goal stand 55 clearances and dump-ins; they
// start on the ice, in or before the attacking zone.
func TestDefaultShotsKeepTheirShares(t *testing.T) {
	r := demo(t).Rink
	shots, err := DefaultShots(t.Context(), r, play.Game{})
	if err != nil {
		t.Fatal(err)
	}
	atGoal, cleared := 0.0, 0.0
	for _, s := range shots {
		if !r.Contains(s.From) {
			t.Errorf("a shot from %v, off the ice", s.From)
		}
		if s.SideSD == Clearance().SideSD {
			cleared += s.Weight
			if x := math.Abs(s.From.X); x < r.GoalX()-24 || x > r.GoalX() {
				t.Errorf("a clearance from %v", s.From)
			}
			continue
		}
		atGoal += s.Weight
	}
	if math.Abs(cleared/atGoal-0.55) > 1e-9 || atGoal < 100 {
		t.Errorf("%g clearances beside %g shots", cleared, atGoal)
	}
}

// Shots of small games across the ice go at the nets at the side boards.
func TestShotsOfGamesAcrossTheIce(t *testing.T) {
	a := demo(t)
	a.Game.CrossIce = true
	shots, err := DefaultShots(t.Context(), a.Rink, a.Game)
	if err != nil || len(shots) < 40 {
		t.Fatalf("%d shots, %v", len(shots), err)
	}
	nets := goals(a).nets
	if len(nets) != 4 {
		t.Fatalf("%d nets, expected 4", len(nets))
	}
	for _, s := range shots {
		near := false
		for _, n := range nets {
			near = near || s.Aim.Sub(n.Line).Len() < 1e-9
		}
		if !near || math.Abs(s.Aim.Y) < 8 {
			t.Fatalf("a shot from %v aims at %v, where no net of the game stands", s.From, s.Aim)
		}
	}
}

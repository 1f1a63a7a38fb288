package rules_test

import (
	"math"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/rink"
)

const ownStretches = `
- kind: stretches
  stretches:
    - {landmark: goal-line, from: -5 ft, to: 0 ft}
    - {name: top, landmark: circle-top, from: -3 ft, to: 3 ft}
`

// TestStretches places a hole beside the landmarks of every corner: the ends
// belong to the stretch, and the sentence leads back to it.
func TestStretches(t *testing.T) {
	cases := []struct {
		landmark rink.Landmark
		offset   unit.Length
		margin   unit.Length
		message  string // of a hole h in corner B-box
	}{
		{rink.GoalLine, -5 * unit.Foot, 0, "Nothing to do: hole h stands on the stretch goal-line of corner B-box, 0 mm from its nearer end."},
		{rink.GoalLine, 0, 0, ""},
		{rink.GoalLine, -2 * unit.Foot, 2 * unit.Foot, "Nothing to do: hole h stands on the stretch goal-line of corner B-box, 610 mm from its nearer end."},
		{rink.GoalLine, -6 * unit.Foot, -1 * unit.Foot, "Move hole h 305 mm or more toward centre ice, onto the stretch goal-line of corner B-box, or close it: it stands outside every permitted stretch."},
		{rink.GoalLine, 1 * unit.Foot, -1 * unit.Foot, "Move hole h 305 mm or more toward the middle of the end boards, onto the stretch goal-line of corner B-box, or close it: it stands outside every permitted stretch."},
		{rink.CircleTop, 3 * unit.Foot, 0, ""},
		{rink.CircleTop, 5 * unit.Foot, -2 * unit.Foot, "Move hole h 610 mm or more toward the middle of the end boards, onto the stretch top of corner B-box, or close it: it stands outside every permitted stretch."},
	}
	for _, standard := range []string{"north-american", "international"} {
		a := testArena(t, standard)
		for _, corner := range rink.Corners() {
			for _, c := range cases {
				rep := set(t, ownStretches).Check(with(a, at(t, a, "h", corner, c.landmark, c.offset)))
				f := rep.Findings[0]
				if (f.Status == rules.Pass) != (c.margin >= 0) || math.Abs(number(f.Margin)-c.margin.Metres()) > 1e-9 {
					t.Errorf("%s, %s, %s %v: %s, margin %v, want %v", standard, corner, c.landmark, c.offset, f.Status, number(f.Margin), c.margin)
				}
				if math.Abs(math.Abs(number(f.Measured)-number(f.Limit))-math.Abs(number(f.Margin))) > 1e-9 {
					t.Errorf("measured %v, limit %v, margin %v", number(f.Measured), number(f.Limit), number(f.Margin))
				}
				if corner == rink.BBox && c.message != "" && f.Say(unit.Metric) != c.message {
					t.Errorf("%s: said %q\nwant %q", standard, f.Say(unit.Metric), c.message)
				}
			}
		}
	}
}

func TestOneHoleOnEachStretch(t *testing.T) {
	a := testArena(t, "north-american")
	h, k := at(t, a, "h", rink.ABox, rink.GoalLine, -1), at(t, a, "k", rink.ABox, rink.GoalLine, -1.2)
	rep := set(t, ownStretches).Check(with(a, h, k))
	f := rep.Findings[len(rep.Findings)-1]
	if want := "Close or move 1 of h and k: stretch goal-line of corner A-box holds 2, at most 1 may be there."; f.Status != rules.Fail || f.Say(unit.Metric) != want {
		t.Errorf("%s %q, want %q", f.Status, f.Say(unit.Metric), want)
	}
	other := at(t, a, "k", rink.ABench, rink.GoalLine, -1)
	if rep := set(t, ownStretches).Check(with(a, h, other)); rep.Verdict != rules.Pass {
		t.Errorf("two corners: %+v", rep)
	}
}

func TestStretchesOfARinkWithoutMarkings(t *testing.T) {
	a := testArena(t, "north-american")
	var err error
	if a.Rink, err = rink.New(rink.Dimensions{Length: 60, Width: 28, CornerRadius: 8}); err != nil {
		t.Fatal(err)
	}
	rep := set(t, ownStretches).Check(with(a, holeAt(t, a, "h", 12)))
	if rep.Verdict != rules.Unknown || !strings.Contains(rep.Findings[0].Say(unit.Metric), "goal line") {
		t.Errorf("%+v", rep)
	}
}

func TestForbiddenZones(t *testing.T) {
	a := testArena(t, "north-american")
	per := a.Rink.Perimeter()
	a.Zones = []arena.Zone{
		{ID: "home", Kind: "bench", From: per - 2, To: 3}, // over the station 0
		{ID: "tv", Kind: "broadcast", From: 20, To: 22},
		{ID: "gone", Kind: "keep-out", From: 40, To: 41},
	}
	a.Panes[50].Gate = "ice machine"
	gate := a.Panes[50]
	cases := []struct {
		station unit.Length
		margin  unit.Length
		says    string
	}{
		{8, 8 - 3 - 0.06985 - 0.5, "4.93 m clear of zone home (bench)"},
		{per - 1, -(1 + 0.06985 + 0.5), "Move hole h 1.57 m or more toward end A, out of zone home (bench), or close it."},
		{2, -(1 + 0.06985 + 0.5), "toward end B, out of zone home (bench)"},
		{22.3, 0.3 - 0.06985 - 0.5, "toward the middle of the end boards, out of zone tv (broadcast)"},
		{gate.From, -0.06985 - 0.5, "out of gate " + gate.ID + " (ice machine)"},
		{40.5, 40.5 - 22 - 0.06985 - 0.5, "clear of zone tv"}, // keep-out is not forbidden by this rule
	}
	s := set(t, "- {kind: forbidden-zones, zones: [bench, gate, broadcast], clearance: 50 cm}")
	for _, c := range cases {
		f := s.Check(with(a, holeAt(t, a, "h", c.station))).Findings[0]
		if math.Abs(number(f.Margin)-c.margin.Metres()) > 1e-9 || !strings.Contains(f.Say(unit.Metric), c.says) {
			t.Errorf("station %v: margin %v, want %v; said %q, want %q", c.station, number(f.Margin), c.margin, f.Say(unit.Metric), c.says)
		}
	}
	bare := testArena(t, "north-american")
	if rep := s.Check(with(bare, holeAt(t, bare, "h", 10))); rep.Verdict != rules.Pass || known(rep.Findings[0].Measured) {
		t.Errorf("no zones: %+v", rep.Findings)
	}
}

func TestSeparation(t *testing.T) {
	a := testArena(t, "north-american")
	per := a.Rink.Perimeter()
	h, k, l := holeAt(t, a, "h", 0.5), holeAt(t, a, "k", per-1), holeAt(t, a, "l", 2.5)
	rep := set(t, "- {kind: least-separation, least: 2 m}").Check(with(a, h, k, l))
	if len(rep.Findings) != 3 || rep.Verdict != rules.Fail {
		t.Fatalf("%+v", rep)
	}
	want := "Move hole h or k so that they are 500 mm farther apart, or close one: they are 1.5 m apart along the boards, centre to centre, at least 2 m is due."
	if f := rep.Findings[0]; f.Say(unit.Metric) != want || math.Abs(number(f.Margin)+0.5) > 1e-9 {
		t.Errorf("%v %q", number(f.Margin), f.Say(unit.Metric))
	}
	if f := rep.Findings[1]; f.Status != rules.Pass || number(f.Margin) != 0 { // exactly 2 m
		t.Errorf("%s %v", f.Status, number(f.Margin))
	}
	rims := set(t, "- {kind: least-separation, least: 2 m, between: rims}").Check(with(a, h, l)).Findings[0]
	if math.Abs(number(rims.Margin)+5.5*0.0254) > 1e-9 {
		t.Errorf("rim to rim: margin %v", number(rims.Margin))
	}
}

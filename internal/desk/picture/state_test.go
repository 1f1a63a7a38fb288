package picture

import (
	"math"
	"net/url"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/rinkpane/internal/answer/frame"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
)

func demo(t testing.TB) (arena.Arena, kit.Kit) {
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
	return a, k
}

// TestAddressesGiveTheSameState writes states as addresses and reads them back.
func TestAddressesGiveTheSameState(t *testing.T) {
	a, k := demo(t)
	rapid.Check(t, func(t *rapid.T) {
		q := url.Values{}
		q.Set("hole", rapid.SampledFrom(a.Openings()).Draw(t, "hole"))
		q.Set("lens", rapid.SampledFrom(k.Lenses).Draw(t, "lens").ID)
		q.Set("shutter", rapid.SampledFrom(Shutters()).Draw(t, "shutter").Format())
		q.Set("moment", rapid.SampledFrom([]string{"0", "7", "59"}).Draw(t, "moment"))
		for _, name := range []string{"pan", "focus", "focal", "stop", "hold", "planes"} {
			if rapid.Bool().Draw(t, name) {
				q.Set(name, rapid.SampledFrom([]string{"1", "11", "44.5"}).Draw(t, name+" value"))
			}
		}
		q.Set("through", rapid.SampledFrom([]string{"", "pane"}).Draw(t, "through"))
		s, err := Read(q, a, k)
		if err != nil {
			t.Fatal(err)
		}
		again, err := Read(s.Query(), a, k)
		if err != nil || again.Query().Encode() != s.Query().Encode() {
			t.Fatalf("%v read back is %v (%v)", s.Query(), again.Query(), err)
		}
	})
}

// TestTheSubjectIsInTheMiddleAndSharp: without pan and focus the moment's subject
// is aimed at; with the pan and tilt that this gives, the numbers stay.
func TestTheSubjectIsInTheMiddleAndSharp(t *testing.T) {
	a, k := demo(t)
	moments, err := Sample(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	s, err := Read(url.Values{"hole": {"B1"}, "focal": {"100"}}, a, k)
	if err != nil {
		t.Fatal(err)
	}
	s.Moment = frame.BestMoment(a, moments, "B1", nil)
	shot, err := s.Shot(a, moments)
	if err != nil {
		t.Fatal(err)
	}
	n, err := s.Numbers(shot, a, unit.Metric)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(n.Focus-shot.Aim.Distance.Metres()) > 0.02 || math.Abs(n.Pan) > 35 {
		t.Errorf("focus %.2f m, subject %.2f m away, pan %.1f", n.Focus, shot.Aim.Distance.Metres(), n.Pan)
	}
	feet, err := s.Numbers(shot, a, unit.Imperial)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range feet.Facts {
		if strings.HasSuffix(f.Value, " lx") || strings.HasSuffix(f.Value, " m") {
			t.Errorf("%s is %s to somebody who reads feet and foot-candles", f.Name, f.Value)
		}
	}
	s.Pan, s.Tilt = unit.Known(n.Pan), unit.Known(n.Tilt)
	turned, err := s.Shot(a, moments)
	if err != nil {
		t.Fatal(err)
	}
	again, err := s.Numbers(turned, a, unit.Metric)
	if err != nil {
		t.Fatal(err)
	}
	compared := 0
	for i, f := range n.Facts {
		if f != again.Facts[i] {
			t.Errorf("%s is %q aimed at the subject, %q turned there", f.ID, f.Value, again.Facts[i].Value)
		}
		compared++
	}
	if compared < 10 {
		t.Errorf("only %d facts", compared)
	}
}

func TestLossInWords(t *testing.T) {
	for share, want := range map[float64]string{1: "nothing", 0.5: "1.0 stops", 0.25: "2.0 stops", 0: "all of it: dark"} {
		if got := lost(share); got != want {
			t.Errorf("a share of %g is lost as %q, want %q", share, got, want)
		}
	}
}

// TestPrintedWindowTellsItsClearPatch: the more the camera is turned, the wider
// the patch that it needs; a hole has none.
func TestPrintedWindowTellsItsClearPatch(t *testing.T) {
	a, k := demo(t)
	a.Windows[0].Open, a.Windows[0].Printed = false, true
	s, err := Read(url.Values{"hole": {a.Windows[0].ID}, "lens": {"70-200"}}, a, k)
	if err != nil {
		t.Fatal(err)
	}
	moments, err := Sample(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	patch := func(pan, tilt float64) (string, string) {
		s.Pan, s.Tilt = unit.Known(pan), unit.Known(tilt)
		shot, err := s.Shot(a, moments)
		if err != nil {
			t.Fatal(err)
		}
		return s.patch(shot, a, unit.Metric)
	}
	straight, _ := patch(0, 0)
	turned, _ := patch(20, 0)
	tilted, _ := patch(0, 15)
	if straight == "" || turned == "" || straight == turned || tilted == straight || tilted == turned {
		t.Errorf("straight %q, turned %q, tilted %q", straight, turned, tilted)
	}
	if _, note := patch(80, 0); note == "" {
		t.Error("turned by 80 degrees nothing is said")
	}
	s.Hole = "B1"
	if none, _ := patch(0, 0); none != "" {
		t.Errorf("a hole needs a patch of %s", none)
	}
}

// TestThroughThePane: the address asks for the pane instead of the hole; the
// numbers then say what the pane leaves, and light is the pane's.
func TestThroughThePane(t *testing.T) {
	a, k := demo(t)
	moments, err := Sample(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	fact := func(through, id string) string {
		s, err := Read(url.Values{"hole": {"B1"}, "moment": {"3"}, "through": {through}}, a, k)
		if err != nil {
			t.Fatal(err)
		}
		shot, err := s.Shot(a, moments)
		if err != nil {
			t.Fatal(err)
		}
		n, err := s.Numbers(shot, a, unit.Metric)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range n.Facts {
			if f.ID == id {
				return f.Value
			}
		}
		return ""
	}
	if got := fact("pane", "pane"); !strings.Contains(got, "of a dark jersey's contrast") {
		t.Errorf("the pane leaves %q", got)
	}
	if got := fact("", "pane"); got != "not in the way" {
		t.Errorf("through a hole the pane is %q", got)
	}
	if hole, pane := fact("", "centre"), fact("pane", "centre"); hole == pane {
		t.Errorf("hole and pane take the same light, %s", hole)
	}
}

// TestFocusInFeet: what is typed in feet is kept in metres.
func TestFocusInFeet(t *testing.T) {
	a, k := demo(t)
	s, err := Read(url.Values{"hole": {"B1"}, "focus-ft": {"30"}}, a, k)
	if f, ok := s.Focus.Get(); err != nil || !ok || math.Abs(f-9.144) > 1e-9 || s.Query().Get("focus") != "9.14" {
		t.Errorf("%v, %v: %s", s.Focus, err, s.Query().Encode())
	}
	if _, err := Read(url.Values{"hole": {"B1"}, "focus-ft": {"far"}}, a, k); err == nil || !strings.Contains(err.Error(), "focus in feet") {
		t.Errorf("%v", err)
	}
}

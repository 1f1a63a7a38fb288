package wire_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/kit"
	"example.org/rinkpane/internal/tell/wire"
)

// demo is the plan of the demo arena, which is surveyed in feet and inches.
func demo(t testing.TB) plan.Plan {
	t.Helper()
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
	doc, err := arena.Demo()
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Maker{Kit: k, Rules: sets}.Make(t.Context(), doc)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestJSONKeepsTheContract reads plan.json as a script would.
func TestJSONKeepsTheContract(t *testing.T) {
	data, err := wire.JSON(wire.PlanOf(demo(t), unit.Metric))
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Verdict  string
		Findings []struct{ Rule, Status, Message string }
		Holes    []struct {
			ID   string
			Fits []map[string]any
			// the light table and the reach
			Light []map[string]any
			Reach map[string]any
		}
	}
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	if got.Verdict == "" || len(got.Findings) == 0 || len(got.Holes) == 0 {
		t.Fatalf("plan.json lacks verdict, findings or holes: %.300s", data)
	}
	hole := got.Holes[0]
	for _, name := range []string{"fits", "pan_body_deg", "pan_camera_deg", "pan_clear_deg", "pan_usable_deg", "tilt_body_deg", "tilt_clear_deg", "tilt_usable_deg"} {
		if _, ok := hole.Fits[0][name]; !ok {
			t.Errorf("a fit lacks %s: %v", name, hole.Fits[0])
		}
	}
	for _, name := range []string{"ev100", "iso", "iso_nominal", "shutter_s", "stop"} {
		if _, ok := hole.Light[0][name]; !ok {
			t.Errorf("a light row lacks %s: %v", name, hole.Light[0])
		}
	}
	for _, name := range []string{"reach_share", "reach_face_share", "blind_strip_m"} {
		if _, ok := hole.Reach[name]; !ok {
			t.Errorf("the reach lacks %s: %v", name, hole.Reach)
		}
	}
}

// TestPlanSpeaksTheReadersUnits: a plan of an arena in inches, told in metric,
// has no inch in its findings. Package folder asks the same of every file.
func TestPlanSpeaksTheReadersUnits(t *testing.T) {
	p := demo(t)
	inches := func(text string) bool {
		return slices.Contains(strings.Fields(text), "in,") || strings.Contains(text, " in is due")
	}
	imperial := 0
	for i, f := range wire.Findings(p.Findings, unit.Metric) {
		if inches(f.Message) {
			t.Errorf("%s: %s", f.Rule, f.Message)
		}
		if inches(p.Findings[i].Say(unit.Imperial)) {
			imperial++
		}
	}
	if imperial == 0 {
		t.Fatal("no finding of the demo names a length")
	}
}

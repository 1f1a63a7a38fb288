package words

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/answer/light"
	"example.org/rinkpane/internal/answer/optics"
	"example.org/rinkpane/internal/answer/puck"
	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
)

// Verdict says how a list of findings ends: "every rule is kept", "2 rules
// broken, 1 rule with a number missing".
func Verdict(findings []rules.Finding) string {
	in := map[rules.Status]map[string]bool{rules.Fail: {}, rules.Unknown: {}, rules.Pass: {}}
	for _, f := range findings {
		in[f.Status][f.Rule] = true
	}
	var parts []string
	if n := len(in[rules.Fail]); n > 0 {
		parts = append(parts, say.Count(n, "rule")+" broken")
	}
	if n := len(in[rules.Unknown]); n > 0 {
		parts = append(parts, say.Count(n, "rule")+" with a number missing")
	}
	switch {
	case len(parts) > 0:
		return strings.Join(parts, ", ")
	case len(findings) == 0:
		return "no rule applies"
	}
	return "every rule is kept"
}

// Status says a rule's answer in plain words; "" is a rule not asked.
func Status(s rules.Status) string {
	switch s {
	case rules.Pass:
		return "kept"
	case rules.Fail:
		return "broken"
	case rules.Unknown:
		return "not known"
	}
	return "not asked"
}

// MarginOrCure says what a rule leaves to spare, or what to do.
func MarginOrCure(f rules.Finding, sys unit.System) string {
	if f.Status != rules.Pass {
		return f.Say(sys)
	}
	if w := f.Spare().In(sys); w != "" {
		return w
	}
	return "kept"
}

// Rule says how a rule stands over the whole arena: "kept; tightest A1: 18 in to
// spare".
func Rule(s plan.RuleSummary, sys unit.System) string {
	var parts []string
	if len(s.Broken) > 0 {
		parts = append(parts, "broken by "+strings.Join(s.Broken, ", "))
	}
	if len(s.Unknown) > 0 {
		parts = append(parts, "not known for "+strings.Join(s.Unknown, ", "))
	}
	if len(parts) == 0 {
		parts = append(parts, "kept")
	}
	if words := s.Tightest.Spare().In(sys); words != "" {
		who := ""
		if s.Findings > 1 {
			who = "tightest " + strings.Join(s.Tightest.Holes, ", ") + ": "
		}
		parts = append(parts, who+words)
	}
	return strings.Join(parts, "; ")
}

// Size prints the ice's length and width.
func Size(s plan.Survey, sys unit.System) string {
	return s.Ice.Length.Format(sys) + " by " + s.Ice.Width.Format(sys)
}

// Lens names a lens and the end of its range: "70-200 at 70 mm".
func Lens(f plan.LensFit) string {
	return fmt.Sprintf("%s at %s mm", f.Lens.ID, plain(f.Focal.Millimetres()))
}

// Best names the recommended lens of a hole, or says that there is none.
func Best(h plan.Hole) string {
	if f, ok := h.BestFit(); ok {
		return Lens(f)
	}
	return "none fits"
}

// Far prints a distance over the ice as one judges it by eye: "48.1 m", "158 ft".
func Far(l unit.Length, sys unit.System) string {
	if sys == unit.Imperial {
		return fmt.Sprintf("%.0f ft", l.Feet())
	}
	return fmt.Sprintf("%.1f m", l.Metres())
}

// outward rounds up, but for what is only a sum's rounding.
func outward(x float64) float64 { return math.Ceil(x - 1e-6) }

// Within prints how far something reaches at most: rounded up, to feet or
// tenths of a metre.
func Within(l unit.Length, sys unit.System) string {
	if sys == unit.Imperial {
		return fmt.Sprintf("%.0f ft", outward(l.Feet()))
	}
	return fmt.Sprintf("%.1f m", outward(10*l.Metres())/10)
}

// Bearings prints a sector's angles from the pane's normal, rounded outward to 5 degrees:
// another sample of shots moves a bound by up to 2.
func Bearings(s puck.Sector) string {
	const step = 5
	out := func(a unit.Angle) float64 { return step * outward(a.Degrees()/step) }
	return fmt.Sprintf("%.0f to %.0f deg", 0-out(-s.From), out(s.To))
}

// Percent prints a share from 0 to 1.
func Percent(share float64) string { return fmt.Sprintf("%.0f %%", 100*share) }

// Turn prints a limit in degrees, "-" where its mark already fails straight ahead.
func Turn(a unit.Maybe[unit.Angle]) string {
	if v, ok := a.Get(); ok {
		return fmt.Sprintf("%.1f", v.Degrees())
	}
	return "-"
}

// ISO prints a row's ISO as a camera is set, with ? where the light is mostly a
// guess and ! where the body's limit is passed.
func ISO(l light.Row) string { return marked(l, l.Exposure, l.OverISO) }

// FaceISO is [ISO] for upright faces: the one to take a player's picture by.
func FaceISO(l light.Row) string { return marked(l, l.Faces, l.OverISOFaces) }

func marked(l light.Row, x optics.Exposure, over bool) string {
	out := plain(x.ISOMark())
	if over {
		out += "!"
	}
	if l.Guessed() {
		out += "?"
	}
	return out
}

// What the signs behind an ISO mean.
const (
	guessNote = "?: mostly outside the readings, a guess."
	overNote  = "!: above the ISO that the body's user accepts."
)

// Faces says what the ISO for faces rests on.
func Faces(p plan.Plan, sys unit.System) string {
	return "ISO: " + light.FaceNote(p.Arena).In(sys) + "."
}

// ISONotes tells what the signs that [ISO] puts behind the rows' ISO mean:
// nothing when no row has one.
func ISONotes(rows []light.Row) []string {
	var out []string
	if slices.ContainsFunc(rows, light.Row.Guessed) {
		out = append(out, guessNote)
	}
	if slices.ContainsFunc(rows, func(l light.Row) bool { return l.OverISO || l.OverISOFaces }) {
		out = append(out, overNote)
	}
	return out
}

// plain prints a number in full and no longer.
func plain(x float64) string { return strconv.FormatFloat(math.Round(x*1e6)/1e6, 'f', -1, 64) }

package words

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/decide/plan"
	"example.org/rinkpane/internal/measure/say"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/arena"
	"example.org/rinkpane/internal/survey/glass"
	"example.org/rinkpane/internal/tell/table"
)

// Summary is the plan in a few lines, as a photographer wants to read it.
func Summary(p plan.Plan, sys unit.System) string {
	var b strings.Builder
	name := p.Survey.Name
	if p.Survey.Place != "" {
		name += ", " + p.Survey.Place
	}
	b.WriteString(table.Wrap(name, ""))
	b.WriteString(table.Wrap(fmt.Sprintf("%s, %s, %s", Size(p.Survey, sys), say.Count(p.Survey.Panes, "pane"), say.Count(p.Survey.Holes, "working hole")), ""))
	b.WriteString(table.Wrap(fmt.Sprintf("Rules: %s (%s)", Verdict(p.Findings), strings.Join(p.RuleSets, ", ")), "  "))
	b.WriteString(table.Wrap(ApprovalSentence(p.Approval), "  "))
	for _, r := range p.Remarks {
		b.WriteString(table.Wrap(r.In(sys), "  "))
	}
	turns := Holes().Pick("hole_marked", "where", "best_lens", "best_focal_mm", "pan_clear_deg", "pan_usable_deg").Of("", p.Holes, sys)
	sees := Holes().Pick("hole_marked", "framing_share", "reach_share", "reach_whole_share", "face_iso_nominal", "iso_nominal").Of("", p.Holes, sys)
	b.WriteString("\n" + turns.Text() + "\n" + table.Wrap(turns.Keys(), "") + "\n" + sees.Text() + "\n" + table.Wrap(sees.Keys(), ""))
	if p.Light.Known {
		b.WriteString(table.Wrap(Faces(p, sys), ""))
	}
	if mend := mendText(p.Findings, sys); mend != "" {
		b.WriteString("\n" + mend)
	}
	return b.String()
}

// mendText lists what is broken and what is not known, with what to do.
func mendText(findings []rules.Finding, sys unit.System) string {
	var b strings.Builder
	for _, part := range []struct {
		status rules.Status
		head   string
	}{{rules.Fail, "Broken:\n"}, {rules.Unknown, "A number is missing:\n"}} {
		for _, f := range findings {
			if f.Status == part.status {
				b.WriteString(part.head + table.Wrap("  "+f.Rule+": "+f.Say(sys), "    "))
				part.head = ""
			}
		}
	}
	return b.String()
}

// Cautions are the cautions as a list.
func Cautions() string {
	text := "Cautions\n"
	for _, c := range glass.Cautions() {
		text += table.Wrap("- "+c, "  ")
	}
	return text
}

// shortRevision is how many figures of a revision people read.
const shortRevision = 12

// heading stands above every text of a plan's folder.
func heading(p plan.Plan, title string) string {
	return fmt.Sprintf("%s: %s\nrevision %s\n\n", p.Survey.Name, title, p.Revision[:shortRevision])
}

// HolesText is each hole's place and size, then what it sees.
func HolesText(p plan.Plan, sys unit.System) string {
	places := Holes().Pick("hole", "pane", "where", "station_m", "height_m", "size").Of("", p.Holes, sys)
	reach := Holes().Pick("hole", "reach_puck_share", "reach_face_share", "reach_whole_puck_share", "reach_whole_face_share", "blind_strip_m", "blind_strip_mean_m", "state", "assumed").Of("", p.Holes, sys)
	var assumed strings.Builder
	head := "\nAssumed, since the survey does not say:\n"
	for _, h := range p.Holes {
		for _, reason := range arena.Reasons(h.Reach.Assumed, sys) {
			assumed.WriteString(head + table.Wrap(h.ID+": "+reason, "  "))
			head = ""
		}
	}
	return heading(p, "Holes") + places.Text() +
		"\n" + table.Wrap("At the height of a puck and of a face: centre: "+CentreKey+"; whole frame: "+WholeKey+". Then the width of "+
		"the strip along the near boards that no lens can be aimed at: straight ahead, and its mean.", "") + reach.Text() + assumed.String()
}

// FindingsText is every rule over the whole arena, then what is to be mended.
func FindingsText(p plan.Plan, sys unit.System) string {
	out := heading(p, "Findings") + Rules().Of("", plan.ByRule(p.Findings), sys).Text()
	if mend := mendText(p.Findings, sys); mend != "" {
		out += "\n" + mend
	}
	for _, n := range p.Notes {
		out += "\n" + table.Wrap("Note: "+n, "  ")
	}
	return out
}

// FitText is the fit table of every hole: each lens at each end of its range.
// Holes whose tables are the same stand together.
func FitText(p plan.Plan, sys unit.System) string {
	names, order := map[string][]string{}, []string{}
	for _, h := range p.Holes {
		of := table.Wrap(fmt.Sprintf(": %s, %s pane", h.Size.Format(sys), h.Opening.Thick.Value.Format(sys)), "  ") + fitTable(h, sys)
		if names[of] == nil {
			order = append(order, of)
		}
		names[of] = append(names[of], h.ID)
	}
	out := heading(p, "Which lens works in which hole") + table.Wrap(AnglesKey, "")
	for _, of := range order {
		noun := "Hole "
		if len(names[of]) > 1 {
			noun = "Holes "
		}
		head, rest, _ := strings.Cut(of, "\n")
		out += "\n" + table.Wrap(noun+strings.Join(names[of], ", ")+head, "  ") + rest
	}
	return out
}

func fitTable(h plan.Hole, sys unit.System) string {
	return Fits(h).Pick("lens", "focal_mm", "pan_clear_deg", "pan_usable_deg", "pan_body_deg", "pan_camera_deg", "tilt_clear_deg", "tilt_usable_deg", "tilt_body_deg", "tilt_camera_deg", "remark").
		Of("", h.Fits, sys).Text()
}

// LightText is the light table of every hole.
func LightText(p plan.Plan, sys unit.System) string {
	out := heading(p, "Light and ISO")
	if p.Survey.Readings == 0 {
		return out + table.Wrap(NoLight, "")
	}
	var b strings.Builder
	for _, h := range p.Holes {
		lens := ""
		if f, ok := h.BestFit(); ok {
			lens = ", " + Lens(f)
		}
		fmt.Fprintf(&b, "\nHole %s%s\n%s", h.ID, lens, Light().Of("", h.Light, sys).Text())
	}
	return out + guessNote + " " + overNote + "\n" + table.Wrap(Faces(p, sys)+" flat: the ISO by a flat meter.", "") + b.String()
}

// NoLight says why a light table is empty.
const NoLight = "The survey has no light reading: add lux readings to the arena's file under light."

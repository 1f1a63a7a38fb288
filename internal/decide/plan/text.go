package plan

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
)

// Summary is the plan in a few lines, as a photographer wants to read it.
func (p Plan) Summary(sys unit.System) string {
	var b strings.Builder
	name := p.Survey.Name
	if p.Survey.Place != "" {
		name += ", " + p.Survey.Place
	}
	b.WriteString(wrap(name, ""))
	b.WriteString(wrap(fmt.Sprintf("%s, %s, %s", p.Survey.Size(sys), Count(p.Survey.Panes, "pane"), Count(p.Survey.Holes, "working hole")), ""))
	b.WriteString(wrap(fmt.Sprintf("Rules: %s (%s)", VerdictWords(p.Findings), strings.Join(p.RuleSets, ", ")), "  "))
	b.WriteString("\n")
	b.WriteString(p.holesTable(sys).String())
	b.WriteString("\n" + wrap(summaryKey, ""))
	if n := p.toMend(); n > 0 {
		b.WriteString("\n" + p.mendText(sys))
	}
	return b.String()
}

// summaryKey explains the columns of the summary's table.
const summaryKey = "clean, half: degrees from straight ahead to either side with every corner of the picture clean, and " +
	"until half the light is lost. " +
	"frames: ice on which the lens, zoomed as needed, fills a quarter to all of the frame's height with a player. " +
	"sees: ice that some lens can be aimed at. ISO: at 1/1000 s, wide open, in the slot of the hole's own end."

// holesTable has one line a hole: where, best lens and how far it turns, what
// it sees, and the ISO for the slot.
func (p Plan) holesTable(sys unit.System) *table {
	t := newTable("hole", "where", "best lens", ">mm", ">clean", ">half", ">frames", ">sees", ">ISO at slot")
	for _, h := range p.Holes {
		lens, mm, clean, half, frames := "none fits", "", "", "", ""
		if f, ok := h.BestFit(); ok {
			lens, mm, clean, half, frames = f.Lens, millimetres(f.Focal), bare(f.PanClear), bare(f.PanUsable), percent(f.Framing)
		}
		iso := "no reading"
		if l, ok := h.SlotLight(); ok {
			iso = ISOWords(l)
		}
		t.row(h.ID+statusMark(h.Status), h.brief(sys), lens, mm, clean, half, frames, percent(h.Reach.Share), iso)
	}
	return t
}

// brief says where a hole is in few letters: "B-box circle-top +18 in".
func (h Hole) brief(sys unit.System) string {
	if h.Landmark == "" {
		return "at " + unit.Length(h.Station).Format(sys)
	}
	offset := unit.Length(h.Offset)
	switch {
	case offset > atLandmark:
		return h.Corner + " " + h.Landmark + " +" + offset.Format(sys)
	case offset < -atLandmark:
		return h.Corner + " " + h.Landmark + " -" + (-offset).Format(sys)
	}
	return h.Corner + " " + h.Landmark
}

// Short names the lens and the end of its range: "70-200 at 70 mm".
func (f LensFit) Short() string {
	return fmt.Sprintf("%s at %s mm", f.Lens, millimetres(f.Focal))
}

func statusMark(s rules.Status) string {
	switch s {
	case rules.Fail:
		return " x"
	case rules.Unknown:
		return " ?"
	}
	return ""
}

func millimetres(focal float64) string { return strconv.FormatFloat(focal, 'f', -1, 64) }

func percent(share float64) string { return strconv.FormatFloat(100*share, 'f', 0, 64) + " %" }

func (p Proof) toMend() int {
	n := 0
	for _, f := range p.Findings {
		if f.Status != rules.Pass {
			n++
		}
	}
	return n
}

// mendText lists what is broken and what is not known, with what to do.
func (p Proof) mendText(sys unit.System) string {
	var b strings.Builder
	for _, part := range []struct {
		status rules.Status
		head   string
	}{{rules.Fail, "Broken:"}, {rules.Unknown, "A number is missing:"}} {
		var lines strings.Builder
		for _, f := range p.Findings {
			if f.Status == part.status {
				lines.WriteString(wrap("  "+f.Rule+": "+f.Say(sys), "    "))
			}
		}
		if lines.Len() > 0 {
			b.WriteString(part.head + "\n" + lines.String())
		}
	}
	return b.String()
}

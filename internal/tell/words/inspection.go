package words

import (
	"fmt"
	"strings"

	"example.org/rinkpane/internal/decide/custody"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// InspectionText tells what an inspection proves.
func InspectionText(j custody.Judged, sys unit.System) string {
	p := page{sys: sys}
	p.say("hole %s: %s\n\n%s", j.Hole, InspectionVerdict(j), Inspection().Of("", j.Findings, sys).Text())
	for _, s := range j.Seen {
		p.lines(Seen(s))
	}
	for _, s := range Instead(j.Findings, sys) {
		p.lines(s)
	}
	p.say("\n")
	p.lines(DecisionRule())
	return p.String()
}

// DecisionRule says how measurements are judged.
func DecisionRule() string {
	return "Judged by ISO 14253-1: accepted within the drawing's limits reduced by the expanded uncertainty U (k = 2), refused outside the limits grown by it, neither between."
}

// InspectionVerdict says an inspection's verdict in a sentence's part.
func InspectionVerdict(j custody.Judged) string {
	switch j.Verdict {
	case custody.Accepted:
		return "accepted, as drawn"
	case custody.Rejected:
		return "refused: not as drawn"
	}
	if len(j.Findings) == 0 {
		return "not proved: nothing was measured that the drawing bounds"
	}
	return "not proved by these instruments"
}

// Seen says what was found by looking.
func Seen(s custody.Seen) string {
	yes := map[custody.Sight]string{custody.NoCracks: "No cracks and no crazing.", custody.Snug: "The cover sits fast.", custody.Tethered: "The cover is tethered."}
	no := map[custody.Sight]string{custody.NoCracks: "CRACKS OR CRAZING: take the pane out of service.", custody.Snug: "THE COVER IS LOOSE.", custody.Tethered: "THE COVER HAS NO TETHER."}
	if s.Right {
		return yes[s.What]
	}
	return no[s.What]
}

// Instead says for what is not proved which instrument would do, if it reads the same.
func Instead(all []custody.Finding, sys unit.System) []string {
	var out []string
	for _, f := range all {
		switch {
		case f.Verdict != custody.Unproved:
		case f.Would != nil:
			out = append(out, fmt.Sprintf("%s: not proved by ±%s; a %s (±%s) would do, if it reads the same.", Quantity(f.What), gauged(f.U, sys), f.Would.Name, gauged(f.Would.U, sys)))
		default:
			out = append(out, fmt.Sprintf("%s: not proved by ±%s, and too near its limit for the usual instruments.", Quantity(f.What), gauged(f.U, sys)))
		}
	}
	return out
}

// Inspection are the columns of what was measured.
func Inspection() table.Fields[custody.Finding] {
	length := func(head string, of func(custody.Finding) unit.Maybe[unit.Length]) table.Field[custody.Finding] {
		return inUnits(head, "", true, func(f custody.Finding, sys unit.System) table.Cell {
			l, known := of(f).Get()
			if !known {
				return table.None()
			}
			return table.Words(gauged(l, sys))
		})
	}
	return table.Fields[custody.Finding]{
		left("what", "", func(f custody.Finding) string { return Quantity(f.What) }),
		length("measured", func(f custody.Finding) unit.Maybe[unit.Length] { return unit.Known(f.Value) }),
		length("± U", func(f custody.Finding) unit.Maybe[unit.Length] { return unit.Known(f.U) }),
		length("from", func(f custody.Finding) unit.Maybe[unit.Length] { return f.Low }),
		length("to", func(f custody.Finding) unit.Maybe[unit.Length] { return f.High }),
		numbered("conforms", "", func(f custody.Finding) string { return surely(f.Conformance()) }),
		left("verdict", "", func(f custody.Finding) string { return string(f.Verdict) }),
	}
}

// Limits says what a drawing allows: "139.20 mm to 140.20 mm".
func Limits(l custody.Limits, sys unit.System) string {
	low, bounded := l.Low.Get()
	high, above := l.High.Get()
	switch {
	case bounded && above:
		return gauged(low, sys) + " to " + gauged(high, sys)
	case bounded:
		return gauged(low, sys) + " or more"
	case above:
		return gauged(high, sys) + " or less"
	}
	return "anything"
}

// surely prints a probability without claiming certainty.
func surely(p float64) string {
	switch {
	case p > 0.999:
		return "> 99.9 %"
	case p < 0.001:
		return "< 0.1 %"
	}
	return fmt.Sprintf("%.1f %%", 100*p)
}

// Quantity says what is measured in plain words.
func Quantity(q custody.Quantity) string { return strings.ReplaceAll(string(q), "-", " ") }

// gauged prints a length as an instrument shows it: hundredths of a millimetre, or
// thousandths of an inch.
func gauged(l unit.Length, sys unit.System) string {
	if sys == unit.Imperial {
		return fmt.Sprintf("%.3f in", l.Inches())
	}
	return fmt.Sprintf("%.2f mm", l.Millimetres())
}

package plan

import (
	"fmt"
	"slices"
	"strings"

	"example.org/rinkpane/internal/decide/choose"
	"example.org/rinkpane/internal/measure/unit"
)

// Text tells the choice: what is best and why, what is there today, the next
// best sets, the prices of the rules, and the panes left out.
func (c Choice) Text(sys unit.System) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s, %d moments (seed %d)\n", c.arena.Name, Count(c.Candidates, "candidate place"), c.Moments, c.Seed)
	if len(c.Holes) == 0 {
		c.none(&b)
	} else {
		c.best(&b, sys)
		c.standing(&b)
		c.alternatives(&b)
		c.prices(&b)
	}
	c.excluded(&b)
	return b.String()
}

// none says why there is no answer.
func (c Choice) none(b *strings.Builder) {
	switch {
	case c.Status == choose.Stopped:
		b.WriteString("Stopped before a set of holes was found.\n")
	case c.Candidates == 0:
		b.WriteString("No pane may hold a hole.\n")
	case c.Status == choose.Optimal:
		b.WriteString("The best set is empty: what is forbidden leaves no place that sees anything.\n")
	default:
		b.WriteString("No set of holes keeps the rules and wishes.\n")
	}
	if len(c.Clash) > 0 {
		b.WriteString("These clash; give up one of them:\n")
		for _, k := range c.Clash {
			b.WriteString("  " + wrap("- "+k, "    "))
		}
	}
	b.WriteString("\n")
}

func (c Choice) best(b *strings.Builder, sys unit.System) {
	if c.Status == choose.Optimal {
		fmt.Fprintf(b, "Best set: %s, value %.4f; proved: no legal set is worth more than %.4f.\n", Count(len(c.Holes), "hole"), c.Value, c.Bound)
	} else {
		fmt.Fprintf(b, "Best set so far: %s, value %.4f; none is worth more than %.4f (gap %.2f %%).\n", Count(len(c.Holes), "hole"), c.Value, c.Bound, 100*c.Gap)
	}
	b.WriteString("A value of 1 sees every moment perfectly once.")
	if c.Seconds > 0 {
		fmt.Fprintf(b, " Took %.1f s.", c.Seconds)
	}
	b.WriteString("\n")
	if len(c.Unfinished) > 0 {
		fmt.Fprintf(b, "Stopped before these were complete: %s.\n", strings.Join(c.Unfinished, ", "))
	}
	b.WriteString("\n")
	t := newTable("hole", "pane", "corner", ">station", ">height", "state", ">worth", ">loss", ">best view")
	for _, h := range c.Holes {
		loss := "-"
		if h.Loss != nil {
			loss = fmt.Sprintf("%.4f", *h.Loss)
		}
		t.row(h.ID, h.Pane, dash(h.Corner), unit.Length(h.Station).Format(sys), unit.Length(h.Height).Format(sys), h.State,
			fmt.Sprintf("%.4f", h.Worth), loss, fmt.Sprintf("%.0f %%", 100*h.Best))
	}
	b.WriteString(t.String())
	b.WriteString("worth: value lost without it; loss: when its pane stays whole and the rest is chosen anew\n\n")
	for _, h := range c.Holes {
		b.WriteString(wrap(h.ID+": "+h.Why, "  "))
	}
	b.WriteString("\n")
}

func dash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

// standing compares with what is there.
func (c Choice) standing(b *strings.Builder) {
	say := func(what string, s choose.Standing) {
		if len(s.Holes) > 0 && c.Value > 0 {
			fmt.Fprintf(b, "%s: %s, value %.4f, %.0f %% of the best (rules: %s)\n", what, Count(len(s.Holes), "hole"), s.Value, 100*s.Value/c.Value, s.Verdict)
		}
	}
	say("Cut today", c.Today)
	if len(c.Drawn.Holes) != len(c.Today.Holes) {
		say("Cut and planned", c.Drawn)
	}
	if len(c.Drawn.Holes) > 0 {
		b.WriteString("\n")
	}
}

func (c Choice) alternatives(b *strings.Builder) {
	if len(c.Alternatives) == 0 {
		return
	}
	var best []string
	for _, h := range c.Holes {
		best = append(best, h.ID)
	}
	t := newTable("next best", ">value", ">lost", "without", "with instead")
	for k, alt := range c.Alternatives {
		var ids []string
		for _, h := range alt.Holes {
			ids = append(ids, h.ID)
		}
		t.row(fmt.Sprint(k+1), valueWords(alt.Value, alt.Bound), fmt.Sprintf("%.4f", alt.Lost), shorten(minus(best, ids)), shorten(minus(ids, best)))
	}
	b.WriteString(t.String() + "\n")
}

func (c Choice) prices(b *strings.Builder) {
	if len(c.Prices) == 0 {
		return
	}
	t := newTable("if this were lifted", ">value", ">gain", ">holes")
	for _, p := range c.Prices {
		t.row(p.Rule, valueWords(p.Value, p.Bound), fmt.Sprintf("%+.4f", p.Gain), fmt.Sprint(len(p.Holes)))
	}
	b.WriteString(t.String())
	b.WriteString(wrap("A pane that only the lifted rule bars is tried at its middle; another place on it may be better.", "") + "\n")
}

// valueWords is a value, or the range in which it lies when its search was cut
// short.
func valueWords(value, bound float64) string {
	if bound-value > 10*choose.Tolerance {
		return fmt.Sprintf("%.4f to %.4f", value, bound)
	}
	return fmt.Sprintf("%.4f", value)
}

func (c Choice) excluded(b *strings.Builder) {
	if len(c.Excluded) == 0 {
		return
	}
	t := newTable("panes without a place, because of", ">panes", "")
	for _, x := range c.Excluded {
		t.row(x.Cause, fmt.Sprint(x.Count), shorten(x.Panes))
	}
	b.WriteString(t.String())
}

// namesWidth is how wide a column of names may be.
const namesWidth = 30

func minus(a, b []string) []string {
	return slices.DeleteFunc(slices.Clone(a), func(s string) bool { return slices.Contains(b, s) })
}

// shorten joins names as far as a column is wide and counts the rest.
func shorten(names []string) string {
	for k := len(names); k > 0; k-- {
		s := strings.Join(names[:k], ", ")
		if k < len(names) {
			s += fmt.Sprintf(" and %d more", len(names)-k)
		}
		if len(s) <= namesWidth || k == 1 {
			return s
		}
	}
	return "-"
}

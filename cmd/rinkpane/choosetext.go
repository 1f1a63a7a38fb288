package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.org/rinkpane/choose"
	"example.org/rinkpane/unit"
)

// chooseText prints an answer for people.
type chooseText struct {
	w     io.Writer
	units unit.System
}

func (t chooseText) answer(name string, ans choose.Answer) {
	fmt.Fprintf(t.w, "%s: %d candidate places, %d moments (seed %d)\n", name, ans.Candidates, ans.Moments, ans.Seed)
	if len(ans.Holes) == 0 {
		t.none(ans)
		return
	}
	switch {
	case ans.Status == choose.Optimal:
		fmt.Fprintf(t.w, "Best set: %d holes, value %.4f; proved: no legal set is worth more than %.4f.\n", len(ans.Holes), ans.Value, ans.Bound)
	default:
		fmt.Fprintf(t.w, "Best set so far: %d holes, value %.4f; none is worth more than %.4f (gap %.2f %%).\n", len(ans.Holes), ans.Value, ans.Bound, 100*ans.Gap)
	}
	fmt.Fprintf(t.w, "A value of 1 sees every moment perfectly once. Took %.1f s.\n\n", ans.Seconds)
	t.holes(ans)
	t.standing(ans)
	t.alternatives(ans)
	t.prices(ans)
	t.excluded(ans)
}

// none says why there is no answer.
func (t chooseText) none(ans choose.Answer) {
	if ans.Status == choose.Stopped {
		fmt.Fprintf(t.w, "Stopped before a set of holes was found.\n")
		return
	}
	if ans.Candidates == 0 {
		fmt.Fprintf(t.w, "No pane may hold a hole.\n")
	} else {
		fmt.Fprintf(t.w, "No set of holes keeps the rules and wishes.\n")
	}
	if len(ans.Clash) > 0 {
		fmt.Fprintf(t.w, "These clash; give up one of them:\n")
		for _, c := range ans.Clash {
			fmt.Fprintf(t.w, "  - %s\n", c)
		}
	}
	t.excluded(ans)
}

func (t chooseText) holes(ans choose.Answer) {
	var rows [][]string
	for _, h := range ans.Holes {
		rows = append(rows, []string{
			h.ID, h.Pane, dash(h.Corner), t.length(h.Station), t.length(h.Height), h.State,
			fmt.Sprintf("%.4f", h.Worth), lossText(h.Loss), fmt.Sprintf("%.0f %%", 100*h.Best),
		})
	}
	writeTable(t.w, []string{"hole", "pane", "corner", "station", "height", "state", "worth", "loss", "best view"}, rows)
	fmt.Fprintf(t.w, "worth: value lost without it; loss: when its pane stays whole and the rest is chosen anew\n\n")
	for _, h := range ans.Holes {
		wrapText(t.w, h.ID+": ", h.Why)
	}
	fmt.Fprintln(t.w)
}

func lossText(loss *float64) string {
	if loss == nil {
		return "-"
	}
	return fmt.Sprintf("%.4f", *loss)
}

func dash(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

func (t chooseText) length(m float64) string { return unit.Length(m).Format(t.units) }

// standing compares with what is there.
func (t chooseText) standing(ans choose.Answer) {
	line := func(what string, s choose.Standing) {
		if len(s.Holes) > 0 {
			fmt.Fprintf(t.w, "%s: %d holes, value %.4f, %.0f %% of the best (rules: %s)\n", what, len(s.Holes), s.Value, 100*s.Value/ans.Value, s.Verdict)
		}
	}
	line("Cut today", ans.Today)
	if len(ans.Drawn.Holes) != len(ans.Today.Holes) {
		line("Cut and planned", ans.Drawn)
	}
	if len(ans.Drawn.Holes) > 0 {
		fmt.Fprintln(t.w)
	}
}

func (t chooseText) alternatives(ans choose.Answer) {
	if len(ans.Alternatives) == 0 {
		return
	}
	best := idsOf(ans.Holes, func(h choose.Choice) string { return h.ID })
	var rows [][]string
	for k, alt := range ans.Alternatives {
		ids := idsOf(alt.Holes, func(p choose.Place) string { return p.ID })
		rows = append(rows, []string{
			fmt.Sprint(k + 1), valueText(alt.Value, alt.Bound), fmt.Sprintf("%.4f", alt.Lost),
			shorten(minus(best, ids), idColumn), shorten(minus(ids, best), idColumn),
		})
	}
	writeTable(t.w, []string{"next best", "value", "lost", "without", "with instead"}, rows)
	fmt.Fprintln(t.w)
}

func (t chooseText) prices(ans choose.Answer) {
	if len(ans.Prices) == 0 {
		return
	}
	var rows [][]string
	for _, p := range ans.Prices {
		rows = append(rows, []string{p.Rule, valueText(p.Value, p.Bound), fmt.Sprintf("%+.4f", p.Gain), fmt.Sprint(len(p.Holes))})
	}
	writeTable(t.w, []string{"if this were lifted", "value", "gain", "holes"}, rows)
	fmt.Fprintln(t.w)
}

// valueText is a value, or the range in which it lies when its search was cut
// short.
func valueText(value, bound float64) string {
	if bound-value > 10*choose.Tolerance {
		return fmt.Sprintf("%.4f to %.4f", value, bound)
	}
	return fmt.Sprintf("%.4f", value)
}

func (t chooseText) excluded(ans choose.Answer) {
	if len(ans.Excluded) == 0 {
		return
	}
	var rows [][]string
	for _, c := range ans.Excluded {
		rows = append(rows, []string{c.Cause, fmt.Sprint(c.Count), shorten(c.Panes, paneColumn)})
	}
	writeTable(t.w, []string{"panes without a place, because of", "panes", ""}, rows)
}

// Columns that would not fit are cut.
const (
	idColumn   = 30
	paneColumn = 30
)

func idsOf[T any](list []T, id func(T) string) []string {
	var out []string
	for _, x := range list {
		out = append(out, id(x))
	}
	return out
}

func minus(a, b []string) []string {
	return slices.DeleteFunc(slices.Clone(a), func(s string) bool { return slices.Contains(b, s) })
}

// shorten joins names as far as a column is wide and counts the rest.
func shorten(names []string, width int) string {
	for k := len(names); k > 0; k-- {
		s := strings.Join(names[:k], ", ")
		if k < len(names) {
			s += fmt.Sprintf(" and %d more", len(names)-k)
		}
		if len(s) <= width || k == 1 {
			return s
		}
	}
	return "-"
}

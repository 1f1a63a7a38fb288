package choosing

import (
	"errors"
	"fmt"
	"net/url"
	"strconv"
	"strings"

	"example.org/rinkpane/internal/decide/cost"
	"example.org/rinkpane/internal/measure/form"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/survey/glass"
)

// costField is a field of the form for a field of a costs file, named by its path
// in it, as messages name it: "panes.acrylic.each", "closure".
type costField struct{ Path, Label, Value string }

// costFields are the fields with the invented costs in them: what is bought, what
// work costs, and the panes by material, their size in the system's units.
func costFields(sys unit.System) (work, panes []costField) {
	c := cost.Default()
	money := func(x float64) string { return strings.TrimSuffix(strconv.FormatFloat(x, 'f', 2, 64), ".00") }
	hours := func(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
	work = []costField{
		{"currency", "Currency, three letters", c.Currency},
		{"cutting", "Cutting one hole on site", money(c.Cutting)}, {"cover", "One cover with its tether", money(c.Cover)},
		{"call-out", "Coming at all, once", money(c.CallOut)}, {"labour", "Labour, an hour", money(c.Labour)},
		{"closure", "Ice closed, an hour", money(c.Closure)},
		{"hours.cut", "Hours to cut a hole", hours(c.CutHours)}, {"hours.fit", "Hours to fit a pane", hours(c.FitHours)},
		{"hours.day", "Hours of work in a day", hours(c.DayHours)},
	}
	area, per, scale := "per-m2", "a square metre", 1.0
	if sys == unit.Imperial {
		area, per, scale = "per-ft2", "a square foot", (unit.Foot.Metres() * unit.Foot.Metres())
	}
	for _, m := range glass.Materials() {
		p, path := c.Panes[m], "panes."+string(m)+"."
		panes = append(panes, costField{path + "each", string(m) + ": a pane", money(p.Each)}, costField{path + area, string(m) + ": and " + per, money(p.PerSquareMetre * scale)})
	}
	return work, panes
}

// costWishes is what was typed of costs.
type costWishes struct {
	Fields map[string]string // by path
	File   string            // a pasted costs file, which counts in place of the fields
}

// costPrefix stands before a cost's path in the form.
const costPrefix = "cost."

func readCosts(q url.Values) costWishes {
	w := costWishes{map[string]string{}, strings.TrimSpace(q.Get("costs"))}
	for name, values := range q {
		if path, ok := strings.CutPrefix(name, costPrefix); ok {
			w.Fields[path] = strings.TrimSpace(values[0])
		}
	}
	return w
}

// filled returns fields with what was typed in place of what is invented.
func (w costWishes) filled(fields []costField) []costField {
	for i, f := range fields {
		if typed, ok := w.Fields[f.Path]; ok {
			fields[i].Value = typed
		}
	}
	return fields
}

// invented reports that nothing was given: no file, and no field but what the
// form began with, in either unit system.
func (w costWishes) invented() bool {
	if w.File != "" {
		return false
	}
	shipped := map[string]string{}
	for _, sys := range []unit.System{unit.Imperial, unit.Metric} {
		work, panes := costFields(sys)
		for _, f := range append(work, panes...) {
			shipped[f.Path] = f.Value
		}
	}
	for path, typed := range w.Fields {
		if shipped[path] != typed {
			return false
		}
	}
	return true
}

// costs reads what was typed; the field that is wrong is named by its name in
// the form.
func (w costWishes) costs() (c cost.Costs, field string, err error) {
	if w.invented() {
		return cost.Default(), "", nil
	}
	text := w.File
	if text == "" {
		text = w.document()
	}
	c, err = cost.Read("costs", strings.NewReader(text))
	var at *form.Problem
	switch {
	case err == nil:
		return c, "", nil
	case !errors.As(err, &at):
		return c, "costs", err
	case w.File == "":
		return c, costPrefix + at.Field, errors.New(at.Text)
	case at.Line > 0:
		return c, "costs", fmt.Errorf("line %d: %s: %s", at.Line, at.Field, at.Text)
	}
	return c, "costs", errors.New(at.Field + ": " + at.Text)
}

// document writes the fields as a costs file; an empty one is left out.
func (w costWishes) document() string {
	var b strings.Builder
	fmt.Fprintf(&b, "rinkpane: %s\n", cost.Kind)
	put := func(indent, name, path string) {
		if v := w.Fields[path]; v != "" {
			fmt.Fprintf(&b, "%s%s: %q\n", indent, name, v)
		}
	}
	for _, name := range []string{"currency", "cutting", "cover", "call-out", "labour", "closure"} {
		put("", name, name)
	}
	group := func(indent, name, path string, fields ...string) {
		var some bool
		for _, f := range fields {
			some = some || w.Fields[path+f] != ""
		}
		if !some {
			return
		}
		fmt.Fprintf(&b, "%s%s:\n", indent, name)
		for _, f := range fields {
			put(indent+"  ", f, path+f)
		}
	}
	group("", "hours", "hours.", "cut", "fit", "day")
	b.WriteString("panes:\n")
	start := b.Len()
	for _, m := range glass.Materials() {
		group("  ", string(m), "panes."+string(m)+".", "each", "per-m2", "per-ft2")
	}
	if b.Len() == start {
		return strings.TrimSuffix(b.String(), "panes:\n")
	}
	return b.String()
}

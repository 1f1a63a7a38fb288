package main

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// checkText writes a report for people: the verdict, what is broken, unknown
// and kept, and last what the sets in force are.
type checkText struct {
	w       io.Writer
	units   unit.System
	all     bool
	several bool // several rule sets were named: rules are told with their set
}

func (t checkText) report(name string, sets rules.Sets, rep rules.Report) {
	by := map[rules.Status][]rules.Finding{}
	for _, f := range rep.Findings {
		by[f.Status] = append(by[f.Status], f)
	}
	t.several = len(rep.RuleSets) > 2 // besides the trade's
	words := map[rules.Status]string{
		rules.Pass:    "PASS: every rule is kept",
		rules.Fail:    "FAIL: rules are broken",
		rules.Unknown: "UNKNOWN: nothing is broken, but the survey lacks something",
	}
	wrapText(t.w, "", fmt.Sprintf("%s - %s", name, words[rep.Verdict]))
	fmt.Fprintf(t.w, "%d broken, %d unknown, %d kept\n", len(by[rules.Fail]), len(by[rules.Unknown]), len(by[rules.Pass]))
	wrapText(t.w, "by the rules of ", strings.Join(rep.RuleSets, ", "))
	t.open("Broken", by[rules.Fail])
	t.open("Unknown: the survey lacks something", by[rules.Unknown])
	for _, id := range rep.RuleSets {
		t.kept(id, by[rules.Pass])
	}
	for _, n := range rep.Notes {
		fmt.Fprintln(t.w)
		wrapText(t.w, "Note: ", n)
	}
	for _, s := range sets.All() {
		t.set(s)
	}
}

func (t checkText) set(s rules.Set) {
	fmt.Fprintln(t.w)
	wrapText(t.w, "Rule set ", fmt.Sprintf("%s: %s", s.ID, s.Name))
	wrapText(t.w, "  status: ", s.Status)
	if s.Source != "" {
		wrapText(t.w, "  source: ", s.Source)
	}
	if len(s.Assumptions) > 0 {
		wrapText(t.w, "  assumed: ", strings.Join(s.Assumptions, " "))
	}
}

// open lists findings that ask for something to be done. What is said of
// several holes in the same words is said once.
func (t checkText) open(title string, list []rules.Finding) {
	if len(list) == 0 {
		return
	}
	fmt.Fprintf(t.w, "\n%s\n", title)
	said := map[string]int{}
	var firsts []rules.Finding
	var same [][]string
	for _, f := range list {
		name := strings.Join(f.Holes, " ")
		words := f.Set + " " + f.Rule + strings.NewReplacer("hole "+name+" ", "\x00", "hole "+name+",", "\x00,").Replace(f.Say(t.units))
		if i, ok := said[words]; ok && len(f.Holes) == 1 {
			same[i] = append(same[i], name)
			continue
		}
		said[words] = len(firsts)
		firsts, same = append(firsts, f), append(same, nil)
	}
	for i, f := range firsts {
		text, head := f.Say(t.units), fmt.Sprintf("  %-16s ", f.Rule)
		if len(same[i]) > 0 {
			text += " The same for " + strings.Join(same[i], ", ") + "."
		}
		if t.several {
			fmt.Fprintf(t.w, "  %s, of %s\n", f.Rule, f.Set)
			head = "    "
		}
		wrapText(t.w, head, text)
	}
}

// kept tables what passes of one set: for each rule the finding with the least
// margin, or every finding.
func (t checkText) kept(set string, list []rules.Finding) {
	list = slices.DeleteFunc(slices.Clone(list), func(f rules.Finding) bool { return f.Set != set })
	if len(list) == 0 {
		return
	}
	title := "Kept"
	if t.several || set == rules.Trade {
		title += " of " + set
	}
	rows, columns := make([]findingRow, 0, len(list)), []string{"rule", "findings", "holes", "measured", "limit", "margin"}
	if t.all {
		columns = slices.Delete(columns, 1, 2)
		for _, f := range list {
			rows = append(rows, findingRow{f, 1})
		}
	} else {
		for _, group := range byRule(list) {
			rows = append(rows, findingRow{tightest(group), len(group)})
		}
	}
	kept := findingFields.Pick(columns...).Of(title, rows, t.units)
	if !t.all {
		kept.Columns[2].Head = "tightest at"
	}
	fmt.Fprintf(t.w, "\n%s\n", title)
	for line := range strings.Lines(kept.Text()) {
		fmt.Fprint(t.w, "  "+line)
	}
	if !t.all {
		fmt.Fprintln(t.w, "  (--all lists every finding)")
	}
}

// findingRow is a finding in a table.
type findingRow struct {
	rules.Finding
	of int // how many findings it stands for
}

// findingFields are the columns of a table of findings.
var findingFields = table.Fields[findingRow]{
	word("rule", func(r findingRow, _ unit.System) string { return r.Rule }),
	word("findings", func(r findingRow, _ unit.System) string { return fmt.Sprint(r.of) }),
	word("holes", func(r findingRow, _ unit.System) string { return holesText(r.Holes) }),
	word("measured", func(r findingRow, sys unit.System) string { return amountText(r.Measured, sys) }),
	word("limit", func(r findingRow, sys unit.System) string { return amountText(r.Limit, sys) }),
	word("margin", func(r findingRow, sys unit.System) string { return amountText(r.Margin, sys) }),
}

func word(name string, of func(findingRow, unit.System) string) table.Field[findingRow] {
	return table.Field[findingRow]{Column: table.Column{Head: name, Name: name}, Cell: func(r findingRow, sys unit.System) table.Cell {
		return table.Words(of(r, sys))
	}}
}

func amountText(m unit.Maybe[rules.Amount], sys unit.System) string {
	a, ok := m.Get()
	if !ok {
		return "-"
	}
	switch a.Of {
	case rules.HoleCount:
		return fmt.Sprintf("%.0f", a.N)
	case rules.Share:
		return fmt.Sprintf("%.3f", a.N)
	}
	return a.Say(sys)
}

// mostHolesShown is how many holes a row names.
const mostHolesShown = 4

func holesText(names []string) string {
	if len(names) > mostHolesShown {
		return fmt.Sprintf("%s +%d", strings.Join(names[:mostHolesShown], " "), len(names)-mostHolesShown)
	}
	return strings.Join(names, " ")
}

// byRule splits a set's findings by rule and quantity, their order kept.
func byRule(list []rules.Finding) [][]rules.Finding {
	var out [][]rules.Finding
	at := map[string]int{}
	for _, f := range list {
		key := fmt.Sprintf("%s/%d", f.Rule, f.Of)
		i, ok := at[key]
		if !ok {
			i = len(out)
			at[key] = i
			out = append(out, nil)
		}
		out[i] = append(out[i], f)
	}
	return out
}

// tightest returns the finding with the least margin; one without a number
// only when none has one.
func tightest(list []rules.Finding) rules.Finding {
	margin := func(f rules.Finding) float64 { return f.Margin.Or(rules.Amount{N: math.Inf(1)}).N }
	return slices.MinFunc(list, func(f, g rules.Finding) int { return cmp.Compare(margin(f), margin(g)) })
}

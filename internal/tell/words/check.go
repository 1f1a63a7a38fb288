package words

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/rinkpane/internal/answer/rules"
	"example.org/rinkpane/internal/measure/unit"
	"example.org/rinkpane/internal/tell/table"
)

// checked is a report that is being written: the verdict, what is broken, unknown
// and kept, and last what the sets in force are.
type checked struct {
	page
	all     bool // list every finding that passes, not only each rule's tightest
	several bool // several rule sets were named: rules are told with their set
}

// Check tells an arena's findings under the sets in force; all lists every one that
// passes, not only each rule's tightest.
func Check(name string, sets rules.Sets, rep rules.Report, all bool, sys unit.System) string {
	by := map[rules.Status][]rules.Finding{}
	for _, f := range rep.Findings {
		by[f.Status] = append(by[f.Status], f)
	}
	t := checked{page: page{sys: sys}, all: all}
	t.several = len(rep.RuleSets) > 2 // besides the trade's
	t.hang("", "%s - %s", name, map[rules.Status]string{
		rules.Pass:    "PASS: every rule is kept",
		rules.Fail:    "FAIL: rules are broken",
		rules.Unknown: "UNKNOWN: nothing is broken, but the survey lacks something",
	}[rep.Verdict])
	t.say("%d broken, %d unknown, %d kept\n", len(by[rules.Fail]), len(by[rules.Unknown]), len(by[rules.Pass]))
	t.hang("by the rules of ", "%s", strings.Join(rep.RuleSets, ", "))
	t.open("Broken", by[rules.Fail])
	t.open("Unknown: the survey lacks something", by[rules.Unknown])
	for _, id := range rep.RuleSets {
		t.kept(id, by[rules.Pass])
	}
	for _, n := range rep.Notes {
		t.say("\n")
		t.hang("Note: ", "%s", n)
	}
	for _, s := range sets.All() {
		t.say("\n")
		t.hang("Rule set ", "%s: %s", s.ID, s.Name)
		t.hang("  status: ", "%s", s.Status)
		if s.Source != "" {
			t.hang("  source: ", "%s", s.Source)
		}
		if len(s.Assumptions) > 0 {
			t.hang("  assumed: ", "%s", strings.Join(s.Assumptions, " "))
		}
	}
	return t.String()
}

// open lists findings that ask for something to be done. What is said of
// several holes in the same words is said once.
func (t *checked) open(title string, list []rules.Finding) {
	if len(list) == 0 {
		return
	}
	t.say("\n%s\n", title)
	said := map[string]int{}
	var firsts []rules.Finding
	var same [][]string
	for _, f := range list {
		name := strings.Join(f.Holes, " ")
		words := f.Set + " " + f.Rule + strings.NewReplacer("hole "+name+" ", "\x00", "hole "+name+",", "\x00,").Replace(f.Say(t.sys))
		if i, ok := said[words]; ok && len(f.Holes) == 1 {
			same[i] = append(same[i], name)
			continue
		}
		said[words] = len(firsts)
		firsts, same = append(firsts, f), append(same, nil)
	}
	for i, f := range firsts {
		text, head := f.Say(t.sys), fmt.Sprintf("  %-16s ", f.Rule)
		if len(same[i]) > 0 {
			text += " The same for " + strings.Join(same[i], ", ") + "."
		}
		if t.several {
			t.say("  %s, of %s\n", f.Rule, f.Set)
			head = "    "
		}
		t.hang(head, "%s", text)
	}
}

// kept tables what passes of one set: for each rule the finding with the least
// margin, or every finding.
func (t *checked) kept(set string, list []rules.Finding) {
	list = slices.DeleteFunc(slices.Clone(list), func(f rules.Finding) bool { return f.Set != set })
	if len(list) == 0 {
		return
	}
	title := "Kept"
	if t.several || set == rules.Trade {
		title += " of " + set
	}
	var rows []findingRow
	columns := findingFields
	if t.all {
		columns = slices.Delete(slices.Clone(columns), 1, 2)
		for _, f := range list {
			rows = append(rows, findingRow{f, 1})
		}
	} else {
		for _, group := range byRule(list) {
			rows = append(rows, findingRow{tightest(group), len(group)})
		}
	}
	kept := columns.Of(title, rows, t.sys)
	if !t.all {
		kept.Columns[2].Head = "tightest at"
	}
	t.say("\n%s\n", title)
	for line := range strings.Lines(kept.Text()) {
		t.WriteString("  " + line)
	}
	if !t.all {
		t.say("  (--all lists every finding)\n")
	}
}

// findingRow is a finding in a table.
type findingRow struct {
	rules.Finding
	of int // how many findings it stands for
}

// findingFields are the columns of what is kept.
var findingFields = table.Fields[findingRow]{
	left("rule", "rule", func(r findingRow) string { return r.Rule }),
	left("findings", "findings", func(r findingRow) string { return fmt.Sprint(r.of) }),
	left("holes", "holes", func(r findingRow) string {
		if n := len(r.Holes) - mostHolesShown; n > 0 {
			return fmt.Sprintf("%s +%d", strings.Join(r.Holes[:mostHolesShown], " "), n)
		}
		return strings.Join(r.Holes, " ")
	}),
	amount("measured", func(r findingRow) unit.Maybe[rules.Amount] { return r.Measured }),
	amount("limit", func(r findingRow) unit.Maybe[rules.Amount] { return r.Limit }),
	amount("margin", func(r findingRow) unit.Maybe[rules.Amount] { return r.Margin }),
}

// mostHolesShown is how many holes a row names.
const mostHolesShown = 4

func amount(name string, of func(findingRow) unit.Maybe[rules.Amount]) table.Field[findingRow] {
	return text(name, name, func(r findingRow, sys unit.System) string {
		a, ok := of(r).Get()
		switch {
		case !ok:
			return "-"
		case a.Of == rules.HoleCount:
			return fmt.Sprintf("%.0f", a.N)
		case a.Of == rules.Share:
			return fmt.Sprintf("%.3f", a.N)
		}
		return a.Say(sys)
	})
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
